import { from, type Origin } from './evidence.js';
import type { PlanMeanTest, PlanRow, SamplePlan } from './sample-plan.js';

/** What the plans of the reference test share: packs beyond T1 are counted, batches off the line are 10 000 at most. */
const referenceTest = { counts: 'beyondT1', noneMayBe: null, largestBatchElsewhere: 10_000 } as const;

/** Of each size of batch: its edges, its samples as [packs, accept, reject], and its mean test as [packs, factor]. */
type Numbers = readonly [
  from: number,
  to: number | null,
  first: readonly [number, number, number],
  second: readonly [number, number, number] | null,
  mean: readonly [number, number],
];

function rows(all: readonly Numbers[], counting: Origin, meanTest: Origin): PlanRow[] {
  return all.map(([batchFrom, batchTo, first, second, [packCount, factorThousandths]]) => {
    const step = ([size, accept, reject]: readonly [number, number, number]) => ({ packCount: size, accept, reject });
    const mean: PlanMeanTest = {
      // All of the first sample, or so many of it.
      packCount: packCount === first[0] ? null : packCount,
      factorThousandths,
      ...meanTest,
    };
    const steps = second === null ? ([step(first)] as const) : ([step(first), step(second)] as const);
    return { batchFrom, batchTo, counting: { by: 'number', steps }, mean, ...counting };
  });
}

const singleNumbers: readonly Numbers[] = [
  [100, 500, [50, 3, 4], null, [30, 503]],
  [501, 3_200, [80, 5, 6], null, [50, 379]],
  [3_201, null, [125, 7, 8], null, [50, 379]],
];

const doubleNumbers: readonly Numbers[] = [
  [100, 500, [30, 1, 3], [30, 4, 5], [30, 503]],
  [501, 3_200, [50, 2, 5], [50, 6, 7], [50, 379]],
  [3_201, null, [80, 3, 7], [80, 8, 9], [50, 379]],
];

const destructiveNumbers: readonly Numbers[] = [[100, null, [20, 1, 2], null, [20, 640]]];

/** Directive 76/211/EEC Annex II: its text, as it was read, has no single plan and no figure for fewer than 100 packs. */
export const directivePlans: readonly SamplePlan[] = [
  { kind: 'double', ...referenceTest, rows: rows(doubleNumbers, from('Annex II 2.2.1'), from('Annex II 2.3')) },
  {
    kind: 'destructive',
    ...referenceTest,
    rows: rows(destructiveNumbers, from('Annex II 2.2.2'), from('Annex II 2.3')),
  },
];

const ukMean = from('Schedule 2 paragraphs 4.5 and 4.6');

/** UK SI 2006/659 Schedule 2. That its destructive plan is that of the directive is from memory. */
export const ukPlans: readonly SamplePlan[] = [
  { kind: 'single', ...referenceTest, rows: rows(singleNumbers, from('Schedule 2 paragraphs 3.3 to 3.5'), ukMean) },
  { kind: 'double', ...referenceTest, rows: rows(doubleNumbers, from('Schedule 2 paragraph 3.7'), ukMean) },
  {
    kind: 'destructive',
    ...referenceTest,
    rows: rows(destructiveNumbers, from('Schedule 2', 'memory'), from('Schedule 2', 'memory')),
  },
  {
    kind: 'under-100',
    ...referenceTest,
    rows: [
      {
        batchFrom: 1,
        batchTo: 99,
        counting: { by: 'share', atMostPermille: 50 },
        mean: { packCount: null, factorThousandths: null, ...from('Schedule 2 paragraph 4.7') },
        ...from('Schedule 2 paragraph 3.6'),
      },
    ],
  },
];
