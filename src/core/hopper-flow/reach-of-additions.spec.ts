import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { boundGroupInTarget } from './bound-group-in-target.js';
import { wholeAdditions } from './group-content.js';
import { exactMass, massWithin } from './hopper-event.js';
import { orderForBounds } from './order-for-bounds.js';
import { possibleMass } from './possible-mass.js';
import { prepareHopperPeriod } from './prepare-period.js';
import { exitsIn } from './target-steps.js';
import type { TimedEvent, TimedHopperPeriod } from './timed-event.js';
import { withExtraEmpties } from './with-extra-empties.js';

const addition = (id: string, at: number, grams: number, limit = 0): TimedEvent<number> => ({
  event: { kind: 'addition', id, mass: massWithin(grams, limit) },
  ...{ earliestAt: at, likelyAt: at, latestAt: at },
});
const exit = (id: string, at: number, grams: number, limit = 0): TimedEvent<number> => ({
  event: { kind: 'exit', id, mass: massWithin(grams, limit) },
  ...{ earliestAt: at, likelyAt: at, latestAt: at },
});
const of = (...events: TimedEvent<number>[]): TimedHopperPeriod<number> => ({ capacityGrams: null, events });
const prepared = (timed: TimedHopperPeriod<number>) => prepareHopperPeriod(orderForBounds(timed));
const reach = (timed: TimedHopperPeriod<number>, id: string): number =>
  possibleMass(prepared(timed), wholeAdditions([id]));
const masses = (timed: TimedHopperPeriod<number>) =>
  timed.events.map(({ event }) => [event.id, 'mass' in event ? event.mass.grams : null]);

describe('what a bag may be in', () => {
  const day = of(
    ...[addition('first', 0, 1000), exit('A', 5, 600), addition('second', 6, 1000), exit('B', 9, 900)],
    exit('C', 12, 400),
  );

  it('is all that leaves after it was tipped, for nothing says that it has left', () => {
    expect(reach(day, 'first')).toBe(1900);
    expect(reach(day, 'second')).toBe(1300);
  });

  it('counts only the exits that are asked for', () => {
    expect(possibleMass(prepared(day), wholeAdditions(['first']), (id) => id !== 'B')).toBe(1000);
    expect(possibleMass(prepared(day), wholeAdditions([]))).toBe(0);
  });

  it('ends where somebody saw the hopper empty, if every mass is exact', () => {
    const seen: TimedEvent<number> = {
      event: { kind: 'level-seen', id: 'seen', lowerGrams: 0, upperGrams: 0 },
      ...{ earliestAt: 5, likelyAt: 5, latestAt: 5 },
    };
    const ended = of(addition('first', 0, 600), exit('A', 5, 600), seen, addition('second', 6, 900), exit('B', 9, 900));
    expect([reach(ended, 'first'), reach(ended, 'second')]).toEqual([600, 900]);
  });
});

describe('a period with empties that there were not', () => {
  const day = of(addition('first', 0, 1000), exit('A', 5, 600), addition('second', 6, 1000), exit('B', 9, 900));

  it('lets what was inside leave first, and divides the exit in which the hopper runs empty', () => {
    const { parts, emptyCount } = withExtraEmpties(day, [6]);
    expect(emptyCount).toBe(1);
    expect(parts.map(masses)).toEqual([
      [
        ['first', 1000],
        ['A', 600],
        ['B', 400],
      ],
      [
        ['second', 1000],
        ['B', 500],
      ],
    ]);
  });

  it('has none before anything went in, nor where too little left to run the hopper empty', () => {
    for (const at of [0, 20]) expect(withExtraEmpties(day, [at])).toEqual({ parts: [day], emptyCount: 0 });
    const kept = of(addition('first', 0, 1000), exit('A', 5, 600), exit('B', 9, 400));
    expect(withExtraEmpties(kept, [6]).emptyCount).toBe(0);
  });

  it('shrinks what each bag may be in', () => {
    const { parts } = withExtraEmpties(day, [6]);
    const [before, after] = parts as [TimedHopperPeriod<number>, TimedHopperPeriod<number>];
    expect([reach(day, 'first'), reach(before, 'first')]).toEqual([1500, 1000]);
    expect([reach(day, 'second'), reach(after, 'second')]).toEqual([900, 500]);
  });

  it('shares out limits so that both parts together still allow all that the whole did', () => {
    const doubtful = of(addition('first', 0, 1000), exit('A', 5, 601), exit('B', 9, 900, 7));
    const [before, after] = withExtraEmpties(doubtful, [6]).parts;
    const parts = [...(before?.events ?? []), ...(after?.events ?? [])].flatMap(({ event }) =>
      event.kind === 'exit' && event.id === 'B' ? [event.mass] : [],
    );
    expect(parts).toHaveLength(2);
    expect(parts.reduce((sum, { lowerGrams }) => sum + lowerGrams, 0)).toBeLessThanOrEqual(893);
    expect(parts.reduce((sum, { grams }) => sum + grams, 0)).toBe(900);
    expect(parts.reduce((sum, { upperGrams }) => sum + upperGrams, 0)).toBeGreaterThanOrEqual(907);
  });
});

/** A day in which never more leaves than went in. */
const days = fc
  .array(fc.record({ grams: fc.integer({ min: 1, max: 2000 }), share: fc.double({ min: 0, max: 1, noNaN: true }) }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((steps) => {
    let level = 0;
    return of(
      ...steps.flatMap(({ grams, share }, place) => {
        level += grams;
        const left = Math.floor(level * share);
        level -= left;
        return [addition(`bag ${place}`, place * 10, grams, 3), exit(`packs ${place}`, place * 10 + 5, left, 2)];
      }),
    );
  });

describe('for any day', () => {
  it('what a bag may be in is just the exits of which the bounds say so, one by one', () => {
    fc.assert(
      fc.property(days, (day) => {
        const period = prepared(day);
        for (const { event } of day.events) {
          if (event.kind !== 'addition') continue;
          const group = wholeAdditions([event.id]);
          const single = period.period.events.reduce((sum, one) => {
            if (one.kind !== 'exit') return sum;
            return boundGroupInTarget(period, group, exitsIn([one.id])).mostGrams > 0 ? sum + one.mass.grams : sum;
          }, 0);
          // An exit of nothing at all may be counted or not: it weighs nothing.
          expect(possibleMass(period, group)).toBe(single);
        }
      }),
    );
  });

  it('empties take nothing away and add nothing, and make no bag’s reach larger', () => {
    fc.assert(
      fc.property(days, fc.array(fc.integer({ min: 0, max: 130 }), { maxLength: 4 }), (day, times) => {
        const { parts, emptyCount } = withExtraEmpties(day, times);
        expect(parts).toHaveLength(emptyCount + 1);
        for (const kind of ['addition', 'exit'] as const) {
          const total = (timed: TimedHopperPeriod<number>): number =>
            timed.events.reduce(
              (sum, { event }) => (event.kind === kind && 'mass' in event ? sum + event.mass.grams : sum),
              0,
            );
          expect(parts.reduce((sum, part) => sum + total(part), 0)).toBe(total(day));
        }
        for (const part of parts) {
          for (const { event } of part.events) {
            if (event.kind === 'addition') expect(reach(part, event.id)).toBeLessThanOrEqual(reach(day, event.id));
          }
        }
      }),
    );
  });

  it('an exact tip of nothing reaches nothing', () => {
    expect(
      reach(
        of({ ...addition('none', 0, 0), event: { kind: 'addition', id: 'none', mass: exactMass(0) } }, exit('A', 5, 0)),
        'none',
      ),
    ).toBe(0);
  });
});
