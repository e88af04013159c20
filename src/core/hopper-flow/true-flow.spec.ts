import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { boundGroupInTarget } from './bound-group-in-target.js';
import { checkLevel } from './check-level.js';
import type { Content } from './group-content.js';
import type { Mass } from './hopper-event.js';
import { orderForBounds, orderForLevelCheck } from './order-for-bounds.js';
import { prepareHopperPeriod } from './prepare-period.js';
import type { Membership } from './target-steps.js';
import type { TimedEvent } from './timed-event.js';

/** Whole numbers from 0 to `below` − 1, the same for the same seed (a linear congruential generator, parameters from memory). */
function draws(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

interface Portion {
  readonly at: number;
  readonly kind: 'addition' | 'exit' | 'level-seen';
  readonly id: string;
  readonly grams: number;
}

interface Layer {
  ofGroup: number;
  other: number;
}

interface Journey {
  readonly capacityGrams: number;
  readonly recorded: readonly TimedEvent<number>[];
  readonly group: ReadonlyMap<string, Content>;
  readonly target: ReadonlyMap<string, Membership>;
  readonly trueGrams: number;
}

/**
 * A hopper that truly flows somehow: bags drain in portions, packs leave in portions and take from anywhere inside; then the records of
 * it, each mass and instant off by no more than the record admits. Knows nothing of the pass.
 */
function travel(seed: number): Journey {
  const draw = draws(seed);
  const doubt = draw(3);
  const names = (kind: Portion['kind'], count: number) =>
    Array.from({ length: count }, (_, index) => ({ kind, id: `${kind} ${index}` }));
  const drawAt = (from: number, length: number) => from + draw(length + 1);
  const spread = [...names('addition', 1 + draw(6)), ...names('exit', 1 + draw(9)), ...names('level-seen', draw(3))];
  const portions = spread.flatMap(({ kind, id }): Portion[] => {
    const [from, length] = [draw(24), draw(6)];
    const count = kind === 'level-seen' ? 1 : 1 + draw(3);
    return Array.from({ length: count }, () => ({ kind, id, at: drawAt(from, length), grams: 1 + draw(30) }));
  });
  const rank = { addition: 0, exit: 1, 'level-seen': 2 };
  portions.sort((a, b) => a.at - b.at || rank[a.kind] - rank[b.kind]);

  const truth = new Map<string, { grams: number; ofGroup: number; first: number; last: number; isInTarget: boolean }>();
  const kindOfContent = new Map(names('addition', 6).map(({ id }) => [id, draw(3)]));
  const inside: Layer[] = [];
  const levelOf = () => inside.reduce((sum, { ofGroup, other }) => sum + ofGroup + other, 0);
  const taste = draw(4);
  let [capacityGrams, trueGrams] = [0, 0];
  for (const { at, kind, id, grams } of portions) {
    const entry = truth.get(id) ?? { grams: 0, ofGroup: 0, first: at, last: at, isInTarget: draw(2) === 0 };
    truth.set(id, entry);
    entry.last = at;
    if (kind === 'level-seen') entry.grams = levelOf();
    else if (kind === 'addition') {
      const ofGroup = [0, grams, draw(grams + 1)][kindOfContent.get(id) ?? 0] ?? 0;
      inside.push({ ofGroup, other: grams - ofGroup });
      entry.grams += grams;
      entry.ofGroup += ofGroup;
      capacityGrams = Math.max(capacityGrams, levelOf());
    } else {
      const taken = takeFrom(inside, Math.min(draw(2) === 0 ? grams : grams * 4, levelOf()), [draw, taste]);
      entry.grams += taken.ofGroup + taken.other;
      if (entry.isInTarget) trueGrams += taken.ofGroup;
    }
  }

  const massOf = (grams: number): Mass => {
    const [lowerGrams, upperGrams] = [Math.max(0, grams - draw(1 + doubt * 4)), grams + draw(1 + doubt * 4)];
    return { lowerGrams, grams: lowerGrams + draw(upperGrams - lowerGrams + 1), upperGrams };
  };
  const recorded: TimedEvent<number>[] = [];
  const group = new Map<string, Content>();
  const target = new Map<string, Membership>();
  for (const { kind, id } of spread) {
    const { grams, ofGroup, first, last, isInTarget } = truth.get(id)!;
    const before = doubt * draw(4);
    // What is counted between two counts left after the first; only an exit of one instant has no interval.
    const needsGap = kind === 'exit' && (before > 0 || first < last) ? 1 : 0;
    const [earliestAt, latestAt] = [first - before - needsGap, last + doubt * draw(4)];
    const earliest = kind === 'exit' && latestAt > earliestAt && earliestAt === first ? earliestAt - 1 : earliestAt;
    const time = { earliestAt: earliest, likelyAt: earliest + draw(latestAt - earliest + 1), latestAt };
    if (kind === 'level-seen') {
      const { lowerGrams, upperGrams } = massOf(grams);
      recorded.push({ event: { kind, id, lowerGrams, upperGrams }, ...time });
      continue;
    }
    const mass = massOf(grams);
    recorded.push({ event: { kind, id, mass }, ...time });
    if (kind === 'exit') target.set(id, doubt > 0 && draw(4) === 0 ? 'maybe' : isInTarget ? 'in' : 'out');
    else if (kindOfContent.get(id) === 1) group.set(id, 'whole');
    else if (kindOfContent.get(id) === 2) {
      const upperGrams = Math.min(mass.upperGrams, ofGroup + draw(1 + doubt * 3));
      group.set(id, { lowerGrams: Math.max(0, ofGroup - draw(1 + doubt * 3)), upperGrams });
    }
  }
  return { capacityGrams: capacityGrams + doubt * draw(5), recorded, group, target, trueGrams };
}

/** Takes grams from inside by one of four tastes: the newest first, the oldest first, all of the group first, anything. */
function takeFrom(inside: Layer[], grams: number, [draw, taste]: [(below: number) => number, number]): Layer {
  const taken = { ofGroup: 0, other: 0 };
  for (let left = grams; left > 0; left -= 1) {
    const holding = inside.filter(({ ofGroup, other }) => ofGroup + other > 0);
    const withGroup = holding.find(({ ofGroup }) => ofGroup > 0);
    const picks = [holding.at(-1), holding[0], withGroup ?? holding[0], holding[draw(holding.length)]];
    const layer = picks[taste]!;
    const isOfGroup = taste === 2 ? layer.ofGroup > 0 : draw(layer.ofGroup + layer.other) < layer.ofGroup;
    if (isOfGroup) [layer.ofGroup, taken.ofGroup] = [layer.ofGroup - 1, taken.ofGroup + 1];
    else [layer.other, taken.other] = [layer.other - 1, taken.other + 1];
  }
  return taken;
}

describe('a hopper that truly flowed somehow, and was recorded as well as people can', () => {
  it('always has the truth between least and most, and its records never contradict each other', () => {
    let [cut, surely] = [0, 0];
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { capacityGrams, recorded, group, target, trueGrams } = travel(seed);
        const ordered = orderForBounds({ capacityGrams, events: recorded });
        const period = prepareHopperPeriod(ordered);
        expect(period.contradiction).toBeNull();
        const { leastGrams, mostGrams, contradiction } = boundGroupInTarget(period, group, target);
        expect(contradiction).toBeNull();
        expect([leastGrams <= trueGrams, trueGrams <= mostGrams]).toEqual([true, true]);
        if (ordered.events.some(({ kind }) => kind === 'ceiling')) cut += 1;
        if (leastGrams > 0) surely += 1;
      }),
      { numRuns: 4000 },
    );
    // The test is worth something only where the capacity cuts and something is sure.

    expect([cut > 150, surely > 500]).toEqual([true, true]);
  });

  it('shows no mistake in the level check', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { capacityGrams, recorded } = travel(seed);
        expect(checkLevel(orderForLevelCheck({ capacityGrams, events: recorded })).findings).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });
});
