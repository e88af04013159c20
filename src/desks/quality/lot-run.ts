import type { RunMeanNet } from '../../fill-weight/mean-nets.js';
import type { LotRange, RunRow } from '../../packing/packing-run-rows.js';

/** Packs of one run that carry the code, with what they weigh on average. */
export interface LotRun {
  readonly run: RunRow;
  readonly range: LotRange;
  readonly mean: RunMeanNet | null;
}
