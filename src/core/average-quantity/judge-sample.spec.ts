import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { judgeSample, type SampleCountLine, type SampleMeanLine, type SampleVerdict } from './judge-sample.js';
import { drawPositions, planRowFor } from './plan-row.js';
import type { RuleSetId } from './rule-set.js';
import { ruleSetOf } from './rule-sets.js';
import type { PlanKind } from './sample-plan.js';

const kilogram = 1_000_000;
const good = 1_001_000;
const short = 984_999;

const packs = (...groups: readonly (readonly [count: number, net: number])[]): number[] =>
  groups.flatMap(([count, net]) => Array.from({ length: count }, () => net));

interface Drawn {
  readonly id: RuleSetId;
  readonly kind: PlanKind;
  readonly batch: number;
  readonly first: readonly number[];
  readonly second?: readonly number[];
  readonly positions?: readonly number[];
  readonly nominal?: number;
}

function judged({ id, kind, batch, first, second = [], positions, nominal = kilogram }: Drawn): SampleVerdict {
  const ruleSet = ruleSetOf(id);
  const plan = ruleSet.plans.find((each) => each.kind === kind)!;
  const row = planRowFor(plan, batch, 'end-of-line').row!;
  return judgeSample({
    ...{ nominalMilligrams: nominal, ruleSet, plan, row, batchPackCount: batch },
    ...{ firstMilligrams: first, secondMilligrams: second },
    meanPositions: positions ?? Array.from({ length: row.mean?.packCount ?? 0 }, (_, position) => position),
  });
}

const countLine = ({ lines }: SampleVerdict) => lines.find(({ test }) => test === 'count') as SampleCountLine;
const meanLine = ({ lines }: SampleVerdict) => lines.find(({ test }) => test === 'mean') as SampleMeanLine;

describe('a batch by a single plan', () => {
  const single = { id: 'uk-2006-659', kind: 'single' } as const;

  // UK SI 2006/659 Schedule 2 paragraphs 3.3 to 3.5.
  it.each([
    [100, 50, 3],
    [500, 50, 3],
    [501, 80, 5],
    [3_200, 80, 5],
    [3_201, 125, 7],
  ])('of %d packs looks at %d and lets %d of them be short', (batch, n, accept) => {
    // The short ones stand behind the packs of the mean test.
    const at = judged({ ...single, batch, first: packs([n - accept, good], [accept, short]) });
    expect(countLine(at)).toMatchObject({ verdict: 'kept', reason: 'at-the-limit', shortCount: accept, accept });
    expect(at.verdict).toBe('accepted');
    const over = judged({ ...single, batch, first: packs([n - accept - 1, good], [accept + 1, short]) });
    expect(countLine(over)).toMatchObject({ verdict: 'broken', reason: 'outside', reject: accept + 1 });
    expect(over.verdict).toBe('rejected');
  });

  it('does not count a pack exactly at T1', () => {
    expect(countLine(judged({ ...single, batch: 500, first: packs([30, good], [20, 985_000]) })).shortCount).toBe(0);
  });

  // Directive 76/211/EEC Annex II 2.1.4: the mean sample is smaller and drawn from the first.
  it('tests the mean on packs of its own, and on no others', () => {
    const first = packs([50, 999_000], [75, 1_010_000]);
    const light = judged({ ...single, batch: 5_000, first });
    expect(meanLine(light)).toMatchObject({ verdict: 'broken', packCount: 50, askedCount: 50, factorThousandths: 379 });
    expect(light.verdict).toBe('rejected');
    const positions = Array.from({ length: 50 }, (_, index) => 60 + index);
    const heavy = judged({ ...single, batch: 5_000, first, positions });
    expect(meanLine(heavy)).toMatchObject({ verdict: 'kept', meanErrorMicrograms: 10_000_000 });
    expect(heavy.verdict).toBe('accepted');
  });

  it('passes a mean exactly at the nominal quantity', () => {
    const first = packs([20, kilogram], [15, kilogram - 500], [15, kilogram + 500]);
    const positions = Array.from({ length: 30 }, (_, index) => 20 + index);
    expect(meanLine(judged({ ...single, batch: 100, first, positions }))).toMatchObject({
      verdict: 'kept',
      meanErrorMicrograms: 0,
    });
  });

  it('judges nothing of a sample that has not the size of the plan', () => {
    const few = judged({ ...single, batch: 100, first: packs([49, good]) });
    expect(countLine(few)).toMatchObject({
      verdict: 'not-judged',
      reason: 'sample-size',
      packCount: 49,
      askedCount: 50,
    });
    expect(few.verdict).toBe('not-judged');
    const noMean = judged({ ...single, batch: 100, first: packs([50, good]), positions: [1, 2] });
    expect(meanLine(noMean)).toMatchObject({
      verdict: 'not-judged',
      reason: 'sample-size',
      packCount: 2,
      askedCount: 30,
    });
  });

  it('refuses a pack drawn twice, one that is not there, and a row for another batch', () => {
    const first = packs([50, good]);
    expect(() => judged({ ...single, batch: 100, first, positions: [1, 1] })).toThrow(RangeError);
    expect(() => judged({ ...single, batch: 100, first, positions: [50] })).toThrow(RangeError);
    const ruleSet = ruleSetOf('uk-2006-659');
    const plan = ruleSet.plans[0]!;
    const row = plan.rows[1]!;
    const sample = { ruleSet, plan, row, firstMilligrams: first, secondMilligrams: [], meanPositions: [] };
    expect(() => judgeSample({ ...sample, nominalMilligrams: kilogram, batchPackCount: 100 })).toThrow(RangeError);
  });
});

describe('a batch by the double plan', () => {
  // Directive 76/211/EEC Annex II 2.2.1.
  const double = { id: 'eu-76-211', kind: 'double', batch: 500 } as const;

  it('is accepted or rejected by the first sample where that decides', () => {
    expect(judged({ ...double, first: packs([29, 1_010_000], [1, short]) }).verdict).toBe('accepted');
    expect(judged({ ...double, first: packs([27, 1_010_000], [3, short]) }).verdict).toBe('rejected');
  });

  it('needs a second sample between the two, and says how many packs', () => {
    const open = judged({ ...double, first: packs([28, 1_010_000], [2, short]) });
    expect(open.verdict).toBe('second-sample-needed');
    expect(countLine(open)).toMatchObject({
      reason: 'between',
      nextPackCount: 30,
      shortCount: 2,
      accept: 1,
      reject: 3,
    });
  });

  it('is decided by both samples together', () => {
    const first = packs([28, 1_010_000], [2, short]);
    const accepted = judged({ ...double, first, second: packs([28, 1_010_000], [2, short]) });
    expect(accepted.verdict).toBe('accepted');
    expect(countLine(accepted)).toMatchObject({ reason: 'at-the-limit', packCount: 60, shortCount: 4, accept: 4 });
    expect(judged({ ...double, first, second: packs([27, 1_010_000], [3, short]) }).verdict).toBe('rejected');
    expect(judged({ ...double, first, second: packs([29, 1_010_000]) }).verdict).toBe('not-judged');
  });

  it('is not decided anew by a second sample that was drawn without need', () => {
    const second = packs([30, short]);
    expect(judged({ ...double, first: packs([29, 1_010_000], [1, short]), second }).verdict).toBe('accepted');
    const allGood = packs([30, good]);
    expect(judged({ ...double, first: packs([27, 1_010_000], [3, short]), second: allGood }).verdict).toBe('rejected');
  });

  it('is rejected at once where the mean of the first sample fails', () => {
    const open = judged({ ...double, first: packs([28, 990_000], [2, short]) });
    expect(countLine(open).verdict).toBe('second-sample-needed');
    expect(open.verdict).toBe('rejected');
  });
});

describe('the other plans', () => {
  // Directive 76/211/EEC Annex II 2.2.2 and 2.3.
  it('open 20 packs of a batch, of any size from 100', () => {
    const destructive = { id: 'eu-76-211', kind: 'destructive', batch: 9_999 } as const;
    expect(judged({ ...destructive, first: packs([19, 1_002_000], [1, short]) }).verdict).toBe('accepted');
    expect(judged({ ...destructive, first: packs([18, 1_010_000], [2, short]) }).verdict).toBe('rejected');
  });

  // UK SI 2006/659 Schedule 2 paragraphs 3.6 and 4.7.
  it('look at every pack under 100: 5 % may be short, and the mean has no allowance', () => {
    const under = { id: 'uk-2006-659', kind: 'under-100' } as const;
    const at = judged({ ...under, batch: 60, first: packs([57, 1_002_000], [3, short]) });
    expect(countLine(at)).toMatchObject({ accept: 3, reason: 'at-the-limit' });
    expect(at.verdict).toBe('accepted');
    expect(judged({ ...under, batch: 59, first: packs([56, 1_002_000], [3, short]) }).verdict).toBe('rejected');
    const light = judged({ ...under, batch: 10, first: packs([9, kilogram], [1, kilogram - 1]) });
    expect(meanLine(light)).toMatchObject({ verdict: 'broken', factorThousandths: null, meanErrorMicrograms: -100 });
    expect(judged({ ...under, batch: 10, first: packs([9, good]) }).verdict).toBe('not-judged');
  });

  // OIML R 87:2004 Table 1: no T2 error in the sample, one sample for both tests.
  it('let no pack of the sample be beyond T2 by OIML R 87', () => {
    const oiml = { id: 'oiml-r87-2004', kind: 'single', batch: 600 } as const;
    const verdict = judged({ ...oiml, first: packs([79, 1_010_000], [1, 969_999]) });
    expect(verdict.verdict).toBe('rejected');
    expect(verdict.lines.map((line) => [line.test === 'mean' ? 'mean' : line.counts, line.verdict])).toEqual([
      ['beyondT1', 'kept'],
      ['beyondT2', 'broken'],
      ['mean', 'kept'],
    ]);
    expect(judged({ ...oiml, first: packs([79, 1_010_000], [1, 970_000]) }).verdict).toBe('accepted');
    expect(meanLine(verdict)).toMatchObject({ askedCount: 80, factorThousandths: 295 });
    const few = judged({ ...oiml, first: packs([79, 1_010_000]) });
    expect(few.lines.map(({ verdict: word }) => word)).toEqual(['not-judged', 'not-judged', 'not-judged']);
  });

  // NIST Handbook 133, category A (from memory): 48 packs of more than 3200, one of them may be beyond the variation.
  it('count packs beyond the maximum allowable variation in the United States', () => {
    const us = { id: 'us-handbook-133', kind: 'category-a', nominal: 454_000 } as const;
    expect(judged({ ...us, batch: 5_000, first: packs([47, 456_000], [1, 434_099]) }).verdict).toBe('accepted');
    expect(judged({ ...us, batch: 5_000, first: packs([46, 456_000], [2, 434_099]) }).verdict).toBe('rejected');
    expect(judged({ ...us, batch: 200, first: packs([11, 456_000], [1, 434_099]) }).verdict).toBe('rejected');
    expect(judged({ ...us, batch: 200, first: packs([11, 456_000], [1, 434_100]) }).verdict).toBe('accepted');
    const one = judged({ ...us, batch: 1, first: [440_000] });
    expect([one.verdict, one.lines.length]).toEqual(['accepted', 1]);
  });

  // Category B (from memory): the mean itself must reach the label.
  it('allow nothing for chance in category B', () => {
    const b = { id: 'us-handbook-133', kind: 'category-b', nominal: 454_000, batch: 200 } as const;
    expect(judged({ ...b, first: packs([5, 454_100], [5, 453_900]) }).verdict).toBe('accepted');
    expect(judged({ ...b, first: packs([5, 454_100], [5, 453_899]) }).verdict).toBe('rejected');
  });

  // An own example in the procedure of Handbook 133: one gross short pack swells s and carries the mean through.
  it('let one gross short pack help the mean test, and say so', () => {
    const errors = [-3.1, 1.2, -4.0, 0.6, -2.2, -20.4, 2.3, -1.7, -3.3, 0.9, -2.8, -1.5];
    const first = errors.map((error) => Math.round((454 + error) * 1000));
    const us = { id: 'us-handbook-133', kind: 'category-a', nominal: 454_000, batch: 200 } as const;
    const verdict = judged({ ...us, first });
    expect(countLine(verdict)).toMatchObject({ verdict: 'broken', shortCount: 1, belowMilligrams: 434_100 });
    expect(meanLine(verdict)).toMatchObject({ verdict: 'kept', restsOnShortestPack: true });
    expect(meanLine(verdict).standardDeviationMilligrams).toBeCloseTo(5_893.34, 1);
    const withoutIt = first.with(5, 448_600);
    expect(meanLine(judged({ ...us, first: withoutIt }))).toMatchObject({
      verdict: 'broken',
      restsOnShortestPack: false,
    });
  });

  it('cannot count where the table was not obtained', () => {
    const ruleSet = ruleSetOf('ca-sfcr-200');
    const plan = ruleSetOf('oiml-r87-2004').plans[0]!;
    const sample = { nominalMilligrams: kilogram, ruleSet, plan, row: plan.rows[0]!, batchPackCount: 100 };
    const empty = { firstMilligrams: [], secondMilligrams: [], meanPositions: [] };
    expect(() => judgeSample({ ...sample, ...empty })).toThrow(RangeError);
  });
});

const fiftyNets = fc.array(fc.integer({ min: 975_000, max: 1_020_000 }), { minLength: 50, maxLength: 50 });
const rank = { kept: 0, 'second-sample-needed': 1, broken: 2, 'not-judged': 3 };

describe('the count of a sample', () => {
  const single = { id: 'uk-2006-659', kind: 'single', batch: 500 } as const;

  it('does not depend on the order of the packs', () => {
    fc.assert(
      fc.property(fiftyNets, (first) => {
        const line = countLine(judged({ ...single, first }));
        expect(countLine(judged({ ...single, first: first.toReversed() }))).toEqual(line);
      }),
    );
  });

  it('never turns against a batch because a pack is heavier', () => {
    const change = fc.record({ at: fc.nat(29), more: fc.integer({ min: 1, max: 40_000 }) });
    fc.assert(
      fc.property(fiftyNets, fiftyNets, change, (nets, others, { at, more }) => {
        for (const drawn of [
          { ...single, first: nets },
          {
            id: 'eu-76-211',
            kind: 'double',
            batch: 500,
            first: nets.slice(0, 30),
            second: others.slice(0, 30),
          } as const,
        ]) {
          const heavier = drawn.first.with(at, drawn.first[at]! + more);
          const after = countLine(judged({ ...drawn, first: heavier })).verdict;
          expect(rank[after]).toBeLessThanOrEqual(rank[countLine(judged(drawn)).verdict]);
        }
      }),
    );
  });
});

describe('the packs of the mean test', () => {
  it('are drawn each once, and each as likely', () => {
    let state = 1;
    // A small linear generator (Park and Miller 1988): the same draw in every run of this test.
    const random = (): number => {
      state = (state * 48_271) % 2_147_483_647;
      return (state - 1) / 2_147_483_646;
    };
    const times = Array.from({ length: 80 }, () => 0);
    for (let draw = 0; draw < 2_000; draw += 1) {
      const drawn = drawPositions(80, 50, random);
      expect(new Set(drawn).size).toBe(50);
      for (const position of drawn) times[position]! += 1;
    }
    // 1250 expected with a standard deviation of 21.7: five of them on both sides.
    for (const count of times) expect(Math.abs(count - 1_250)).toBeLessThan(109);
    expect(drawPositions(3, 3, random).toSorted()).toEqual([0, 1, 2]);
    expect(() => drawPositions(3, 4, random)).toThrow(RangeError);
    expect(() => drawPositions(3, -1, random)).toThrow(RangeError);
  });
});
