import { compareGroups } from '../../core/statistics/compare-groups.js';
import type { HeadSums } from '../../core/weight-blocks/heads-of-weights.js';

/** In what share of runs chance alone may call any head different. Our own value, no source. */
export const riskOfHeads = 0.01;

/** A head of the filler, and how it fills beside the others. Masses in milligrams. */
export interface HeadCompared {
  readonly head: number;
  readonly packCount: number;
  /** Mean net less nominal. */
  readonly meanErrorMilligrams: number;
  /** Null of one pack. */
  readonly standardDeviationMilligrams: number | null;
  readonly beyondT1Count: number;
  /** Mean less that of the other heads together that are not off; null where one of the two is of a single pack. */
  readonly fromOthersMilligrams: number | null;
  /** Farther off than chance explains, and by a step of the weigher's display at least. */
  readonly isOff: boolean;
}

/** Each head against the others together. From thousands of packs a hair is significant; less than a step nobody can set. */
export function compareHeads(heads: readonly HeadSums[], stepMilligrams: number): readonly HeadCompared[] {
  const compared = compareGroups(
    heads.map(({ packCount, errorSumMilligrams, errorSquareSum }) => {
      return { count: packCount, sum: errorSumMilligrams, squareSum: errorSquareSum };
    }),
    { risk: riskOfHeads, least: stepMilligrams },
  );
  return heads.map(({ head, packCount, beyondT1Count }, place) => {
    const found = compared[place];
    const off = found?.fromOthers ?? null;
    return {
      ...{ head, packCount, beyondT1Count },
      meanErrorMilligrams: found?.mean ?? 0,
      standardDeviationMilligrams: found?.standardDeviation ?? null,
      fromOthersMilligrams: off === null ? null : off.difference,
      isOff: found?.isOff === true,
    };
  });
}
