import type { Origin } from './evidence.js';
import type { ShortState } from './short-state.js';

/** What a sample plan is called: how it draws, or its name in the handbook. */
export type PlanKind = 'single' | 'double' | 'destructive' | 'under-100' | 'category-a' | 'category-b';

/**
 * One sample of a plan; its numbers count from the first sample on. Short packs up to `accept` accept the batch, from
 * `reject` on they reject it; between the two the next sample decides.
 */
export interface PlanStep {
  /** How many packs this sample has by itself. */
  readonly packCount: number;
  readonly accept: number;
  readonly reject: number;
}

/** The mean test of a plan: a sample of its own size, and the factor of the standard deviation that it allows. */
export interface PlanMeanTest extends Origin {
  /** So many of the first sample, drawn at random before anything is weighed; `null`: the whole of it. */
  readonly packCount: number | null;
  /** Thousandths, as printed; `null`: the mean itself must reach the nominal quantity. */
  readonly factorThousandths: number | null;
}

/** What a plan asks of batches of a size: both edges included, `null` where there is no upper one. */
export interface PlanRow extends Origin {
  readonly batchFrom: number;
  readonly batchTo: number | null;
  /** By numbers in one sample or two, or by the share of a batch that is looked at as a whole. */
  readonly counting:
    | { readonly by: 'number'; readonly steps: readonly [PlanStep, ...PlanStep[]] }
    | { readonly by: 'share'; readonly atMostPermille: number };
  /** `null`: no mean test for such a batch. */
  readonly mean: PlanMeanTest | null;
}

/** A way to judge a batch by a sample that is drawn from it at random. */
export interface SamplePlan {
  readonly kind: PlanKind;
  /** What its acceptance numbers count. */
  readonly counts: ShortState;
  /** What no pack of the sample may be; `null` where the plan does not ask. */
  readonly noneMayBe: ShortState | null;
  /** The greatest batch that was not taken at the end of the line; `null`: no limit. */
  readonly largestBatchElsewhere: number | null;
  readonly rows: readonly PlanRow[];
}
