import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { addDays } from './calendar-day.js';
import { instantOfMilliseconds, millisecondsOfInstant } from './instant.js';
import { instantOfLocalTime, instantsOfLocalTime, localMomentAt, localText } from './local-time.js';
import { isKnownTimeZone, offsetMillisecondsAt, offsetSecondsAt } from './time-zone.js';

const zones = [
  'UTC',
  'Europe/Berlin',
  'Europe/London',
  'America/New_York',
  'America/St_Johns',
  'America/Sao_Paulo',
  'Asia/Kolkata',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Africa/Cairo',
  'Africa/Casablanca',
  'Pacific/Apia',
  'Pacific/Kiritimati',
];
const anyZone = fc.constantFrom(...zones);
const anyInstant = fc
  .integer({ min: Date.parse('1995-01-01'), max: Date.parse('2040-01-01') })
  .map((milliseconds) => instantOfMilliseconds(milliseconds));

describe('a time zone', () => {
  it('is known or not', () => {
    expect(isKnownTimeZone('Europe/Berlin')).toBe(true);
    expect(isKnownTimeZone('Europe/Alder_Quay')).toBe(false);
  });

  it('is ahead of UTC by so many seconds', () => {
    expect(offsetSecondsAt('Europe/Berlin', '2026-10-25T00:30:00.000Z')).toBe(7200);
    expect(offsetMillisecondsAt('Asia/Kolkata', 0)).toBe(19800000);
    expect(offsetMillisecondsAt('America/New_York', -1)).toBe(-18000000);
    expect(() => offsetMillisecondsAt('Europe/Alder_Quay', 0)).toThrow(RangeError);
  });
});

describe('the plant’s clock', () => {
  it('shows a moment with its day, time and offset', () => {
    expect(localMomentAt('Europe/Berlin', '2026-10-25T00:30:00.000Z')).toEqual({
      on: '2026-10-25',
      time: '02:30:00.000',
      offsetSeconds: 7200,
    });
  });

  it('tells the hour that comes twice apart by its offset', () => {
    expect(localText('Europe/Berlin', '2026-10-25T00:30:00.000Z')).toBe('2026-10-25T02:30:00+02:00');
    expect(localText('Europe/Berlin', '2026-10-25T01:30:00.000Z')).toBe('2026-10-25T02:30:00+01:00');
    expect(localText('America/St_Johns', '2026-01-01T00:00:00.000Z')).toBe('2025-12-31T20:30:00-03:30');
  });

  it('shows most times once, some twice, some never', () => {
    expect(instantsOfLocalTime('Europe/Berlin', '2026-07-01', '02:30')).toEqual(['2026-07-01T00:30:00.000Z']);
    expect(instantsOfLocalTime('Europe/Berlin', '2026-10-25', '02:30')).toEqual([
      '2026-10-25T00:30:00.000Z',
      '2026-10-25T01:30:00.000Z',
    ]);
    expect(instantsOfLocalTime('Europe/Berlin', '2026-03-29', '02:30')).toEqual([]);
  });

  it('shows the edges of a jump once: the last second before it and the first after', () => {
    expect(instantsOfLocalTime('Europe/Berlin', '2026-03-29', '01:59:59.999')).toEqual(['2026-03-29T00:59:59.999Z']);
    expect(instantsOfLocalTime('Europe/Berlin', '2026-03-29', '02:00')).toEqual([]);
    expect(instantsOfLocalTime('Europe/Berlin', '2026-03-29', '03:00')).toEqual(['2026-03-29T01:00:00.000Z']);
  });

  it('takes a time that comes twice for its first coming, or its second when asked', () => {
    expect(instantOfLocalTime('Europe/Berlin', '2026-10-25', '02:30')).toBe('2026-10-25T00:30:00.000Z');
    expect(instantOfLocalTime('Europe/Berlin', '2026-10-25', '02:30', 'second')).toBe('2026-10-25T01:30:00.000Z');
    expect(instantOfLocalTime('Europe/Berlin', '2026-07-01', '02:30', 'second')).toBe('2026-07-01T00:30:00.000Z');
  });

  it('takes a time that it jumps over for the moment of the jump', () => {
    expect(instantOfLocalTime('Europe/Berlin', '2026-03-29', '02:30')).toBe('2026-03-29T01:00:00.000Z');
    expect(instantOfLocalTime('Europe/Berlin', '2026-03-29', '02:00')).toBe('2026-03-29T01:00:00.000Z');
    expect(instantOfLocalTime('Australia/Lord_Howe', '2026-10-04', '02:10')).toBe('2026-10-03T15:30:00.000Z');
  });

  it('left 30 December 2011 out in Samoa', () => {
    expect(instantsOfLocalTime('Pacific/Apia', '2011-12-30', '12:00')).toEqual([]);
    expect(instantOfLocalTime('Pacific/Apia', '2011-12-30', '12:00')).toBe('2011-12-30T10:00:00.000Z');
  });

  it.each([
    ['2026-13-01', '02:30'],
    ['2026-10-25', '24:00'],
    ['2026-10-25', '2:30'],
    ['2026-10-25', '02:60'],
  ])('refuses %s %s', (on, time) => {
    expect(() => instantsOfLocalTime('Europe/Berlin', on, time)).toThrow(RangeError);
  });

  it('brings every instant back from the day and time that it showed then', () => {
    fc.assert(
      fc.property(anyZone, anyInstant, (timeZone, at) => {
        const { on, time } = localMomentAt(timeZone, at);
        const instants = instantsOfLocalTime(timeZone, on, time);
        expect(instants).toContain(at);
        expect(instants.length).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('never lets a later time of day be taken for an earlier instant', () => {
    const minute = fc.integer({ min: 0, max: 2 * 1440 - 1 });
    const clockChanges = fc.constantFrom(
      '2026-03-29',
      '2026-10-25',
      '2026-11-01',
      '2011-12-30',
      '2010-11-07',
      '2026-04-24',
    );
    fc.assert(
      fc.property(anyZone, clockChanges, minute, minute, (timeZone, on, one, other) => {
        const [earlier, later] = [Math.min(one, other), Math.max(one, other)];
        expect(taken(timeZone, on, earlier) <= taken(timeZone, on, later)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

describeWithChecks('the plant’s clock against worked values', () => {
  const checks = () =>
    readChecks<{
      ambiguous_berlin_2026_10_25_0230: readonly string[];
      gap_berlin_2026_03_29_0230: readonly string[];
    }>('quality/shift_calendar_tests.json');

  it('agrees on the two instants of an hour that comes twice', () => {
    const instants = instantsOfLocalTime('Europe/Berlin', '2026-10-25', '02:30');
    const worked = checks().ambiguous_berlin_2026_10_25_0230;
    expect(instants.map(millisecondsOfInstant)).toEqual(worked.map((at) => Date.parse(at)));
  });

  it('agrees that neither offset makes an instant of a time that the clocks jump over', () => {
    const worked = checks().gap_berlin_2026_03_29_0230.map((at) => Date.parse(at));
    expect(worked).toHaveLength(2);
    for (const at of worked) {
      expect(localMomentAt('Europe/Berlin', instantOfMilliseconds(at)).time).not.toBe('02:30:00.000');
    }
    const taken = millisecondsOfInstant(instantOfLocalTime('Europe/Berlin', '2026-03-29', '02:30'));
    expect(taken).toBeGreaterThan(Math.min(...worked));
    expect(taken).toBeLessThan(Math.max(...worked));
  });
});

/** The instant taken for so many minutes after midnight, which may be of the next day. */
function taken(timeZone: string, on: string, minutes: number): string {
  const minuteOfDay = minutes % 1440;
  const time = [Math.floor(minuteOfDay / 60), minuteOfDay % 60].map((part) => String(part).padStart(2, '0')).join(':');
  return instantOfLocalTime(timeZone, addDays(on, Math.floor(minutes / 1440)), time);
}
