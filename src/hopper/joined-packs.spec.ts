import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { boundEveryBag, wholePart, type PeriodContents } from './bag-contents.js';
import { everySpan, type CountedPacks, type PackSpan } from './counted-packs.js';
import type { HopperPeriodFacts } from './hopper-periods.js';
import { joinedPacks } from './joined-packs.js';
import { exitsOf, layOutPacks, type PeriodTarget } from './period-flow.js';

const at = (minute: number): string => new Date(Date.UTC(2026, 2, 12, 6, minute)).toISOString();
const packGrams = { lower: 998, mean: 1000, upper: 1003 };
const meanNet = {
  ...{ meanMilligrams: packGrams.mean * 1000, lowerMilligrams: packGrams.lower * 1000 },
  ...{ upperMilligrams: packGrams.upper * 1000, basis: 'assumed' as const, samplePackCount: 0, weighedAt: null },
};

const trial = { trialId: 'trial', zoneCountStandard: '0.3', holdUpStandardGrams: 900 };

interface Drawn {
  /** Packs of each minute, for each run; a hand count takes the place of what went before it. */
  readonly minutes: readonly { readonly packs: number; readonly isByHand: boolean }[];
  readonly tipMinutes: readonly number[];
  readonly levelMinutes: readonly number[];
  readonly removalMinutes: readonly number[];
  readonly secondRunFrom: number | null;
  readonly capacityGrams: number;
  readonly model: 'first-in-first-out' | 'pour-and-drain' | 'stirred-zones';
}

const minute = fc.nat({ max: 119 });
const drawn: fc.Arbitrary<Drawn> = fc.record({
  minutes: fc.array(fc.record({ packs: fc.integer({ min: 1, max: 80 }), isByHand: fc.boolean() }), {
    minLength: 60,
    maxLength: 120,
  }),
  tipMinutes: fc.uniqueArray(minute, { minLength: 1, maxLength: 8 }),
  levelMinutes: fc.uniqueArray(minute, { maxLength: 2 }),
  removalMinutes: fc.uniqueArray(minute, { maxLength: 3 }),
  secondRunFrom: fc.option(fc.integer({ min: 20, max: 100 })),
  capacityGrams: fc.constantFrom(30_000, 90_000, 100_000_000),
  model: fc.constantFrom('first-in-first-out', 'pour-and-drain', 'stirred-zones'),
});

function packsOf(runId: string, { minutes }: Drawn, from: number): CountedPacks {
  let count = 0;
  const exits = minutes.map(({ packs, isByHand }, place) => {
    const [fromCount, toCount] = [count, count + packs];
    count = toCount;
    const doubt = isByHand && place % 7 === 0 ? 3 : 0;
    return {
      ...{ fromCount, toCount, earliestAt: Date.parse(at(from + place - doubt)) },
      ...{ likelyAt: Date.parse(at(from + place + 1)), latestAt: Date.parse(at(from + place + 1 + doubt)) },
    };
  });
  const column = (name: keyof (typeof exits)[number]) => Float64Array.from(exits, (exit) => exit[name]);
  return {
    ...{ runId, size: exits.length, fromCounts: column('fromCount'), toCounts: column('toCount') },
    ...{ likelyFromCounts: column('fromCount'), likelyToCounts: column('toCount') },
    areWhole: new Uint8Array(exits.length).fill(1),
    ...{ earliestAt: column('earliestAt'), likelyAt: column('likelyAt'), latestAt: column('latestAt') },
  };
}

function factsOf(plan: Drawn): HopperPeriodFacts {
  const first = packsOf('run-1', plan, 0);
  const second = plan.secondRunFrom === null ? [] : [packsOf('run-2', plan, plan.secondRunFrom)];
  const run = (id: string) => [id, { id, meanNet, lineId: id }] as const;
  return {
    period: { endedAt: null },
    chosen: { kind: plan.model, zoneCount: 2, holdUpGrams: 15_000, ...trial },
    hopper: { capacityGrams: plan.capacityGrams },
    additions: plan.tipMinutes
      .toSorted((a, b) => a - b)
      .map((minute, place) => ({
        ...{ id: `tip-${place}`, source: 'bulk-bag', bagIds: [`bag-${place}`] },
        mass: { lowerGrams: 19_900, grams: 20_000, upperGrams: 20_100 },
        ...{ earliestAt: at(minute - 3), likelyAt: at(minute), latestAt: at(minute + 4) },
      })),
    levels: plan.levelMinutes.map((minute, place) => ({
      ...{ id: `level-${place}`, lowerGrams: 0, upperGrams: 40_000 },
      ...{ earliestAt: at(minute - 2), likelyAt: at(minute), latestAt: at(minute) },
    })),
    removals: plan.removalMinutes.map((minute, place) => ({
      ...{ removalId: `removal-${place}`, kind: 'reject', runId: 'run-1' },
      mass: { lowerGrams: 90, grams: 100, upperGrams: 110 },
      ...{ earliestAt: at(minute - 30), likelyAt: at(minute), latestAt: at(minute) },
    })),
    counted: [first, ...second],
    runs: new Map([run('run-1'), run('run-2')]),
  } as unknown as HopperPeriodFacts;
}

function answersOf(
  facts: HopperPeriodFacts,
  packs: readonly PackSpan[],
  targets: readonly PeriodTarget[],
): { readonly limits: readonly unknown[]; readonly likely: readonly number[] } {
  const contents: PeriodContents = new Map(facts.additions.map(({ id }) => [id, new Map([[id, wholePart]])]));
  const flow = layOutPacks(facts, packs, { targets, leftInside: null });
  const answers = targets.flatMap((target) => [...boundEveryBag(contents, flow, exitsOf(flow, target))].sort());
  return {
    limits: answers.map(([bagId, { leastGrams, mostGrams }]) => [bagId, leastGrams, mostGrams]),
    likely: answers.map(([, { likelyGrams }]) => likelyGrams),
  };
}

describe('joined packs', () => {
  const target = fc.record({
    from: fc.nat({ max: 3000 }),
    length: fc.integer({ min: 1, max: 1500 }),
    second: fc.boolean(),
  });

  it('give the same least, likely and most as the packs of every count, to the gram', () => {
    let joinedShare = 0;
    fc.assert(
      fc.property(drawn, fc.array(target, { minLength: 1, maxLength: 5 }), (plan, asked) => {
        const facts = factsOf(plan);
        const targets = asked.map(({ from, length, second }): PeriodTarget => {
          const ranges = [{ runId: second ? 'run-2' : 'run-1', fromCount: from, toCount: from + length }];
          return { ranges, certain: second ? null : [{ runId: 'run-1', fromCount: from, toCount: from + 1 }] };
        });
        const joined = joinedPacks(facts);
        const every = everySpan(facts.counted);
        joinedShare += every.length - joined.length;
        const [one, other] = [answersOf(facts, joined, targets), answersOf(facts, every, targets)];
        expect(one.limits).toEqual(other.limits);
        // Models that mix reckon with fractions.
        const apart = one.likely.map((grams, place) => Math.abs(grams - (other.likely[place] ?? Number.NaN)));
        expect(Math.max(0, ...apart)).toBeLessThan(plan.model === 'first-in-first-out' ? 1e-9 : 0.01);
      }),
      { numRuns: 150 },
    );
    expect(joinedShare).toBeGreaterThan(1000);
  });

  it('are few where nothing happens between the counts, and all of them where the hopper may have been full', () => {
    const plan: Drawn = {
      minutes: Array.from({ length: 100 }, () => ({ packs: 10, isByHand: false })),
      ...{ tipMinutes: [5, 50], levelMinutes: [], removalMinutes: [], secondRunFrom: null },
      ...{ capacityGrams: 100_000_000, model: 'first-in-first-out' },
    };
    expect(joinedPacks(factsOf(plan)).length).toBeLessThan(20);
    const full = factsOf({ ...plan, capacityGrams: 10_000 });
    expect(joinedPacks(full)).toEqual(everySpan(full.counted));
  });
});
