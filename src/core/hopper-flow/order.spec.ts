import { describe, expect, it } from '@jest/globals';
import { exactMass } from './hopper-event.js';
import { orderForBounds, orderForLevelCheck } from './order-for-bounds.js';
import { orderLikely } from './order-likely.js';
import { runningTotal } from './running-total.js';
import { assertTimedPeriod, compareInstants, type TimedEvent } from './timed-event.js';

const tip = (id: string, earliestAt: number, likelyAt: number, latestAt: number, grams = 1000): TimedEvent<number> => ({
  event: { kind: 'addition', id, mass: exactMass(grams) },
  ...{ earliestAt, likelyAt, latestAt },
});
const packs = (id: string, earliestAt: number, latestAt: number, grams = 200): TimedEvent<number> => ({
  event: { kind: 'exit', id, mass: exactMass(grams) },
  ...{ earliestAt, likelyAt: latestAt, latestAt },
});
const seen = (id: string, earliestAt: number, latestAt: number, limits: [number, number]): TimedEvent<number> => ({
  event: { kind: 'level-seen', id, lowerGrams: limits[0], upperGrams: limits[1] },
  ...{ earliestAt, likelyAt: latestAt, latestAt },
});
const ids = (period: { readonly events: readonly { readonly id: string }[] }) => period.events.map(({ id }) => id);
const period = (...events: TimedEvent<number>[]) => ({ capacityGrams: null, events });

describe('the order that bounds rest on', () => {
  it('lets a tip in as early, and packs out as late, as each may have been', () => {
    const timed = period(packs('minute 1', 0, 10), packs('minute 2', 10, 20), tip('bag', 5, 12, 12));
    expect(ids(orderForBounds(timed))).toEqual(['bag', 'minute 1', 'minute 2']);
  });

  it('puts the addition first at the same instant, and keeps the order of equals', () => {
    const timed = period(packs('line 2', 0, 10), packs('line 1', 0, 10), tip('bag', 10, 10, 10));
    expect(ids(orderForBounds(timed))).toEqual(['bag', 'line 2', 'line 1']);
  });

  it('takes instants as text of fixed width', () => {
    const at = (text: string) => ({ earliestAt: text, likelyAt: text, latestAt: text });
    const events = [
      { event: packs('packs', 0, 0).event, ...at('2026-11-24T07:00:00.000Z') },
      { event: tip('bag', 0, 0, 0).event, ...at('2026-11-24T06:00:00.000Z') },
    ];
    expect(ids(orderForBounds({ capacityGrams: null, events }))).toEqual(['bag', 'packs']);
    expect(compareInstants('2026-11-24T06:00:00.000Z', '2026-11-24T07:00:00.000Z')).toBe(-1);
  });

  it('leaves a level as it was seen where nothing was under way', () => {
    const timed = period(tip('bag', 0, 0, 5), packs('packs', 5, 10), seen('ran down', 11, 12, [700, 900]));
    expect(orderForBounds(timed).events.at(-1)).toEqual({
      kind: 'level-seen',
      id: 'ran down',
      lowerGrams: 700,
      upperGrams: 900,
    });
  });

  it('raises a level seen by a tip that may have come after it', () => {
    const timed = period(tip('first', 0, 0, 0), seen('ran down', 10, 10, [0, 40]), tip('second', 8, 12, 12));
    expect(orderForBounds(timed).events.at(-1)).toMatchObject({ id: 'ran down', lowerGrams: 0, upperGrams: 1040 });
  });

  it('says the same of a level whether it is the only one or one of many', () => {
    const others = [tip('first', 0, 2, 4), packs('minute 1', 1, 5), tip('second', 4, 9, 14), packs('minute 2', 5, 13)];
    const levels = Array.from({ length: 12 }, (_, at) => seen(`level ${at}`, at, at + (at % 3), [500, 900 + at]));
    const together = orderForBounds(period(...others, ...levels)).events;
    for (const level of levels) {
      const alone = orderForBounds(period(...others, level)).events;
      const find = (events: typeof alone) => events.find(({ id }) => id === level.event.id);
      expect(find(together)).toEqual(find(alone));
      expect(find(alone)?.kind).toBe('level-seen');
    }
  });

  it('raises a level seen in the middle of a count by the packs of that count', () => {
    const timed = period(tip('bag', 0, 0, 0), packs('minute', 9, 11), seen('glass', 10, 10, [700, 900]));
    expect(ids(orderForBounds(timed))).toEqual(['bag', 'glass', 'minute']);
    expect(orderForBounds(timed).events[1]).toMatchObject({ lowerGrams: 700, upperGrams: 1100 });
  });

  it('lowers a level seen by packs that may have left after it', () => {
    const timed = period(tip('bag', 0, 0, 0), packs('minute', 9, 11), seen('glass', 10, 12, [700, 900]));
    expect(ids(orderForBounds(timed))).toEqual(['bag', 'minute', 'glass']);
    expect(orderForBounds(timed).events[2]).toMatchObject({ lowerGrams: 500, upperGrams: 900 });
  });

  it('puts the capacity only where it cuts, and not while something is under way', () => {
    const events = [tip('first', 0, 0, 1), packs('packs', 1, 5, 600), tip('second', 4, 6, 6)];
    // At 4 the second bag counts as inside and the packs have not left, but neither need be so: 2000 g are no contradiction.
    expect(ids(orderForBounds({ capacityGrams: 1400, events }))).toEqual(['first', 'second', 'packs']);
    expect(orderForBounds({ capacityGrams: 1400, events }).capacityGrams).toBeNull();
    expect(orderForBounds({ capacityGrams: 900, events: [tip('first', 0, 0, 0)] }).events[1]).toEqual({
      kind: 'ceiling',
      id: 'first',
      upperGrams: 900,
    });
  });

  it('shows the capacity after every instant where mistakes are to be tried out', () => {
    expect(orderForLevelCheck({ capacityGrams: 2000, events: [tip('bag', 5, 5, 5)] }).events[1]).toEqual({
      kind: 'ceiling',
      id: 'bag',
      upperGrams: 2000,
    });
  });

  it('refuses an interval whose likely instant lies outside', () => {
    expect(() => orderForBounds(period(tip('bag', 5, 4, 6)))).toThrow(/bag/);
    expect(() => orderForBounds(period(tip('bag', 5, 7, 6)))).toThrow(/bag/);
    expect(() => {
      assertTimedPeriod({ capacityGrams: null, events: [] });
    }).not.toThrow();
  });
});

describe('the likely order', () => {
  it('goes by the likely instants, additions first', () => {
    const timed = period(packs('packs', 0, 10), tip('second', 0, 12, 12), tip('first', 0, 10, 10));
    expect(ids(orderLikely(timed))).toEqual(['first', 'packs', 'second']);
  });

  it('brings a tip forward within its own interval where the hopper would be empty', () => {
    expect(ids(orderLikely(period(packs('packs', 0, 10), tip('late scan', 5, 30, 30))))).toEqual([
      'late scan',
      'packs',
    ]);
  });

  it('brings no tip forward that cannot have been there, and none that is not needed', () => {
    expect(ids(orderLikely(period(packs('packs', 0, 10), tip('next', 11, 12, 12))))).toEqual(['packs', 'next']);
    const enough = period(tip('first', 0, 0, 0), packs('packs', 0, 10), tip('next', 5, 12, 12));
    expect(ids(orderLikely(enough))).toEqual(['first', 'packs', 'next']);
  });

  it('keeps every event once', () => {
    const timed = period(
      packs('a', 0, 10, 1500),
      tip('1', 0, 20, 20),
      tip('2', 0, 21, 21),
      packs('b', 20, 22),
      seen('s', 0, 30, [0, 9]),
    );
    expect(ids(orderLikely(timed))).toEqual(['1', '2', 'a', 'b', 's']);
  });
});

describe('a running total along time', () => {
  it('counts what stands at an instant or not, as asked', () => {
    const total = runningTotal<number>([
      { at: 2, grams: 10 },
      { at: 1, grams: 5 },
      { at: 2, grams: 1 },
    ]);
    expect([total.before(2), total.through(2), total.before(0), total.through(9)]).toEqual([5, 16, 0, 16]);
    expect(runningTotal<number>([]).through(1)).toBe(0);
  });
});
