import { from } from './evidence.js';
import type { RuleSet } from './rule-set.js';
import type { PlanRow } from './sample-plan.js';

/** Table 1 of the edition of 2004: edges of the inspection lot, packs, accept, thousandths of the correction factor. */
const table1 = [
  [100, 500, 50, 3, 379],
  [501, 3_200, 80, 5, 295],
  [3_201, null, 125, 7, 234],
] as const;

/**
 * OIML R 87, the edition of 2004: one sample for both tests. Its table was not read in its own print: a copy with a
 * scrambled font, memory and the formula t(0.995; n − 1)/√n agree. The figures of the edition of 2016 were not obtained,
 * so there is no rule set of it.
 */
export const oimlR87: RuleSet = {
  id: 'oiml-r87-2004',
  title: 'OIML R 87',
  edition: { text: '2004', ...from('Table 1', 'memory') },
  markets: ['oiml-country'],
  scope: { fromMilligrams: 1, upToMilligrams: 50_000_000, ...from('Australia, NTM Regulations 2009 reg. 4.36(4)') },
  shortBy: { table: 'oiml-r87', ...from('Australia, NTM Regulations 2009 reg. 4.36(4)') },
  runRules: [
    { kind: 'mean', ...from('clause 3', 'memory') },
    { kind: 'share', of: 'beyondT1', atMostPermille: 25, ...from('clause 3', 'memory') },
    { kind: 'count', of: 'beyondT2', atMost: 0, ...from('clause 3', 'memory') },
  ],
  plans: [
    {
      kind: 'single',
      counts: 'beyondT1',
      noneMayBe: 'beyondT2',
      largestBatchElsewhere: null,
      rows: table1.map(([batchFrom, batchTo, packCount, accept, factorThousandths]): PlanRow => ({
        batchFrom,
        batchTo,
        counting: { by: 'number', steps: [{ packCount, accept, reject: accept + 1 }] },
        mean: { packCount: null, factorThousandths, ...from('Table 1', 'memory') },
        ...from('Table 1', 'memory'),
      })),
    },
  ],
};
