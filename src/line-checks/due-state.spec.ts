import { describe, expect, it } from '@jest/globals';
import type { CheckPlanRow } from './check-plan-rows.js';
import { dueState, minutesUntil, type DueFacts, type LastCheck } from './due-state.js';

const plan = (wishes: Partial<CheckPlanRow> = {}): CheckPlanRow => ({
  id: 'v1',
  planId: 'p1',
  siteId: 's',
  lineId: 'l',
  lineCode: '1',
  lineName: 'Line 1',
  formatId: null,
  formatName: null,
  kind: 'metal-detection',
  station: 'Detector',
  everyMinutes: 60,
  graceMinutes: 10,
  events: [],
  testPieces: [],
  needsSecondPerson: false,
  isInForce: true,
  validFrom: '2026-01-01T00:00:00.000Z',
  firstValidFrom: '2026-01-01T00:00:00.000Z',
  ...wishes,
});

const at = (time: string, on = '2026-03-12'): string => `${on}T${time}:00.000Z`;
const facts = (wishes: Partial<DueFacts> = {}): DueFacts => ({
  run: { formatId: 'f', startedAt: at('06:00') },
  shiftStartedAt: at('05:00'),
  codeChangedAt: [],
  filmFittedAt: [],
  ...wishes,
});
const good = (time: string, on?: string): LastCheck => ({ occurredAt: at(time, on), passed: true });

describe('a check by the clock', () => {
  it('is due an interval after the last good one, exactly then', () => {
    expect(dueState(plan(), facts(), good('07:00'), at('07:59'))).toEqual({
      word: 'later',
      dueAt: at('08:00'),
      because: 'interval',
    });
    expect(dueState(plan(), facts(), good('07:00'), at('08:00')).word).toBe('due');
  });

  it('is overdue when the plant’s own patience is over, exactly then', () => {
    expect(dueState(plan(), facts(), good('07:00'), at('08:09')).word).toBe('due');
    expect(dueState(plan(), facts(), good('07:00'), at('08:10')).word).toBe('overdue');
  });

  it('is due at once where nobody has checked since the run began, and since the plan was made', () => {
    expect(dueState(plan(), facts(), null, at('06:00')).dueAt).toBe(at('06:00'));
    expect(dueState(plan({ firstValidFrom: at('07:30') }), facts(), null, at('07:40')).dueAt).toBe(at('07:30'));
  });

  it('is due as the next run begins when its time ran out while nothing was packed', () => {
    const next = facts({ run: { formatId: 'f', startedAt: at('13:00') } });
    expect(dueState(plan(), next, good('07:00'), at('13:00')).dueAt).toBe(at('13:00'));
    expect(dueState(plan(), next, good('12:30'), at('13:00')).dueAt).toBe(at('13:30'));
  });

  it('counts real minutes when the clocks go back', () => {
    // 2026-10-25, Central Europe: 02:30 comes twice; an hour is an hour.
    const night = facts({ run: { formatId: 'f', startedAt: at('20:00', '2026-10-24') } });
    const last = good('00:30', '2026-10-25');
    expect(dueState(plan(), night, last, at('00:45', '2026-10-25')).dueAt).toBe(at('01:30', '2026-10-25'));
  });
});

describe('a check by events', () => {
  const byEvent = (event: CheckPlanRow['events'][number]): CheckPlanRow =>
    plan({ everyMinutes: null, events: [event] });

  it('is due as a run starts; one made a quarter of an hour before counts, an earlier one does not', () => {
    expect(dueState(byEvent('run-start'), facts(), null, at('06:05'))).toMatchObject({
      word: 'due',
      dueAt: at('06:00'),
    });
    expect(dueState(byEvent('run-start'), facts(), good('05:45'), at('06:05')).word).toBe('done');
    expect(dueState(byEvent('run-start'), facts(), good('05:44'), at('06:05')).word).toBe('due');
  });

  it('is due once a shift, however many runs the shift has', () => {
    const shift = facts({ shiftStartedAt: at('13:00') });
    expect(dueState(byEvent('shift-start'), shift, good('12:44'), at('13:05'))).toMatchObject({ dueAt: at('13:00') });
    expect(dueState(byEvent('shift-start'), shift, good('12:50'), at('13:05')).word).toBe('done');
    const later = facts({ shiftStartedAt: at('13:00'), run: { formatId: 'f', startedAt: at('15:00') } });
    expect(dueState(byEvent('shift-start'), later, good('13:10'), at('15:05')).word).toBe('done');
    expect(dueState(byEvent('shift-start'), later, null, at('15:05')).dueAt).toBe(at('15:00'));
  });

  it('is due at the first change of the code, or of the film, that nobody has checked after', () => {
    const changes = [at('06:00'), at('09:00'), at('10:00')];
    expect(dueState(byEvent('code-change'), facts({ codeChangedAt: changes }), good('07:00'), at('10:30'))).toEqual({
      word: 'overdue',
      dueAt: at('09:00'),
      because: 'code-change',
    });
    expect(dueState(byEvent('film-change'), facts({ filmFittedAt: changes }), good('10:00'), at('10:30')).word).toBe(
      'done',
    );
  });

  it('goes by what comes first when clock and event both ask', () => {
    const both = plan({ events: ['code-change'] });
    const changed = facts({ codeChangedAt: [at('07:20')] });
    expect(dueState(both, changed, good('07:00'), at('07:25'))).toMatchObject({ because: 'code-change' });
  });
});

describe('a check', () => {
  it('is due for nothing while no run is open, or one of another format', () => {
    expect(dueState(plan(), facts({ run: null }), null, at('09:00')).word).toBe('idle');
    expect(dueState(plan({ formatId: 'other' }), facts(), null, at('09:00')).word).toBe('idle');
  });

  it('stays due after it failed, until a good one', () => {
    const failed: LastCheck = { occurredAt: at('07:00'), passed: false };
    expect(dueState(plan(), facts(), failed, at('07:01'))).toEqual({
      word: 'failed',
      dueAt: at('07:00'),
      because: 'failed',
    });
  });

  it('that neither clock nor event asks for waits until somebody finds something', () => {
    expect(dueState(plan({ everyMinutes: null, kind: 'torn-bag' }), facts(), null, at('09:00')).word).toBe('on-demand');
  });
});

describe('the minutes until a check is due', () => {
  it('are whole ones, and negative once it is due', () => {
    expect(minutesUntil('2026-03-12T08:00:00.000Z', '2026-03-12T07:46:30.000Z')).toBe(13);
    expect(minutesUntil('2026-03-12T08:00:00.000Z', '2026-03-12T08:00:00.000Z')).toBe(0);
    expect(minutesUntil('2026-03-12T08:00:00.000Z', '2026-03-12T08:00:30.000Z')).toBe(-1);
  });
});
