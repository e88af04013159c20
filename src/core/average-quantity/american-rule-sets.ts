import { from } from './evidence.js';
import type { RuleSet } from './rule-set.js';
import type { PlanRow } from './sample-plan.js';

/** t(0.975; n − 1)/√n in thousandths for lots of 2 to 11 packs, all of which are the sample. */
const factorsOfSmallLots = [8_985, 2_484, 1_591, 1_242, 1_049, 925, 836, 769, 715, 672];

/** Larger lots: edges, packs, how many may be beyond, factor. The last digit of 0.290 is in doubt. */
const largerLots = [
  [12, 250, 12, 0, 635],
  [251, 3_200, 24, 0, 422],
  [3_201, null, 48, 1, 290],
] as const;

const categoryB = [
  [10, 250, 10],
  [251, null, 30],
] as const;

function rowOf(lot: readonly [number, number | null], packCount: number, accept: number): Omit<PlanRow, 'mean'> {
  return {
    batchFrom: lot[0],
    batchTo: lot[1],
    counting: { by: 'number', steps: [{ packCount, accept, reject: accept + 1 }] },
    ...from('Appendix A', 'memory'),
  };
}

function categoryARow(
  lot: readonly [number, number | null],
  packCount: number,
  accept: number,
  factor: number,
): PlanRow {
  const mean = { packCount: null, factorThousandths: factor, ...from('Appendix A Table 2-1', 'computed') };
  return { ...rowOf(lot, packCount, accept), mean };
}

/** Of one pack nothing but the maximum allowable variation is asked. */
const lotOfOne: PlanRow = { ...rowOf([1, 1], 1, 0), mean: null };

const counted = { counts: 'beyondMav', noneMayBe: null, largestBatchElsewhere: null } as const;

/**
 * NIST Handbook 133. The sizes and acceptance numbers are from memory, the factors computed from the formula it states.
 * Category B is for meat and poultry (from memory). That no pack of a whole run may be beyond the variation is our own
 * reading: the handbook speaks of samples. Two texts were seen: the two requirements, and the rule for the scale.
 */
export const unitedStates: RuleSet = {
  id: 'us-handbook-133',
  title: 'NIST Handbook 133',
  edition: { text: null, ...from('Appendix A', 'memory') },
  markets: ['us'],
  scope: { fromMilligrams: 1, upToMilligrams: null, ...from('Appendix A Table 2-5', 'memory') },
  shortBy: { table: 'handbook-133', ...from('Appendix A Table 2-5', 'memory') },
  runRules: [
    { kind: 'mean', ...from('average requirement') },
    { kind: 'count', of: 'beyondMav', atMost: 0, ...from('individual requirement', 'own-reading') },
  ],
  plans: [
    {
      kind: 'category-a',
      ...counted,
      rows: [
        lotOfOne,
        ...factorsOfSmallLots.map((factor, index) => categoryARow([index + 2, index + 2], index + 2, 0, factor)),
        ...largerLots.map(([first, last, packs, accept, factor]) => categoryARow([first, last], packs, accept, factor)),
      ],
    },
    {
      kind: 'category-b',
      ...counted,
      rows: categoryB.map(([first, last, packs]) => ({
        ...rowOf([first, last], packs, 0),
        mean: { packCount: null, factorThousandths: null, ...from('Appendix A Table 2-2', 'memory') },
      })),
    },
  ],
};

/**
 * Canada: a lot fails with two packs beyond twice the tolerance, not with one. Its table of tolerances was not obtained,
 * so packs cannot be counted by it; nor was the formula of its mean test, so it has no plan here.
 */
export const canada: RuleSet = {
  id: 'ca-sfcr-200',
  title: 'Safe Food for Canadians Regulations (SFCR)',
  edition: { text: null, ...from('section 200') },
  markets: ['ca'],
  scope: { fromMilligrams: 1, upToMilligrams: null, ...from('section 200', 'own-reading') },
  shortBy: { table: 'not-obtained', ...from('section 200') },
  runRules: [
    { kind: 'mean', ...from('C.R.C., c. 417, Schedule II Part I') },
    { kind: 'count', of: 'beyondT2', atMost: 1, ...from('section 200(4)(c)') },
  ],
  plans: [],
};
