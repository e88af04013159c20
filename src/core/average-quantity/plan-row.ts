import type { PlanRow, SamplePlan } from './sample-plan.js';

/** Where a batch was taken: at the end of the line it is the output of an hour, of any size. */
export type BatchPlace = 'end-of-line' | 'elsewhere';

/** The row of a plan for a batch, or why it has none. */
export type FoundRow =
  | { readonly row: PlanRow }
  | { readonly row: null; readonly why: 'batch-too-small'; readonly fromPackCount: number }
  | { readonly row: null; readonly why: 'batch-too-large'; readonly upToPackCount: number };

/**
 * What a plan asks of a batch of a size.
 *
 * A batch is of one nominal quantity, one make, one run and one place. At the end of the line it is the greatest output
 * of an hour whatever its size; elsewhere the reference test takes 10 000 packs at most. Too small a batch for a plan
 * (under 100 for most) is answered so: no row is stretched.
 *
 * @param batchPackCount 1 or more
 * @throws RangeError when it is not whole or below 1
 * @see Directive 76/211/EEC Annex II 2.1
 * @example planRowFor(destructivePlan, 99, 'elsewhere') // { row: null, why: 'batch-too-small', fromPackCount: 100 }
 */
export function planRowFor(plan: SamplePlan, batchPackCount: number, place: BatchPlace): FoundRow {
  if (!Number.isSafeInteger(batchPackCount) || batchPackCount < 1) {
    throw new RangeError(`A batch has 1 pack or more, not ${batchPackCount}`);
  }
  const { largestBatchElsewhere: largest, rows } = plan;
  if (place === 'elsewhere' && largest !== null && batchPackCount > largest) {
    return { row: null, why: 'batch-too-large', upToPackCount: largest };
  }
  const row = rows.find(({ batchTo }) => batchTo === null || batchPackCount <= batchTo);
  if (row === undefined) {
    return { row: null, why: 'batch-too-large', upToPackCount: rows.at(-1)?.batchTo ?? 0 };
  }
  if (batchPackCount < row.batchFrom) return { row: null, why: 'batch-too-small', fromPackCount: row.batchFrom };
  return { row };
}

/**
 * Draws which packs of a sample stand in the mean test, each equally likely, before anything is weighed.
 *
 * @param fromCount how many packs there are
 * @param drawnCount how many of them are drawn
 * @param random gives the next number from 0 (included) to 1 (not included)
 * @returns positions from 0, in the order they were drawn
 * @throws RangeError when more are drawn than there are
 * @see Directive 76/211/EEC Annex II 2.1.4
 * @example drawPositions(80, 50, random).length // 50
 */
export function drawPositions(fromCount: number, drawnCount: number, random: () => number): number[] {
  if (!(drawnCount >= 0 && drawnCount <= fromCount)) {
    throw new RangeError(`${drawnCount} packs cannot be drawn from ${fromCount}`);
  }
  const positions = Array.from({ length: fromCount }, (_, position) => position);
  return Array.from({ length: drawnCount }, () => {
    const [drawn] = positions.splice(Math.floor(random() * positions.length), 1);
    return drawn ?? 0;
  });
}
