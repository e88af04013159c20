import type { WeightColumns } from './weight-columns.js';

/** The accepted packs of one head, summed up about the nominal quantity. */
export interface HeadSums {
  readonly head: number;
  readonly packCount: number;
  /** Net less nominal, in milligrams: exact. */
  readonly errorSumMilligrams: number;
  /** Square milligrams; beyond 2⁵³ rounded, so a standard deviation keeps twelve digits and more. */
  readonly errorSquareSum: number;
  /** 0 where no rule says how short a pack may be. */
  readonly beyondT1Count: number;
}

const headCount = 256;

/**
 * The accepted packs of several parts, head by head.
 *
 * @param parts in any order; those that name no head are left out
 * @returns heads that filled a pack, by number
 * @example headsOfWeights([columns], { nominalMilligrams: 1_000_000, t1Milligrams: 985_000 })[0]?.head // 1
 */
export function headsOfWeights(
  parts: readonly WeightColumns[],
  { nominalMilligrams, t1Milligrams }: { readonly nominalMilligrams: number; readonly t1Milligrams: number | null },
): readonly HeadSums[] {
  const [counts, sums, squares, short] = [columnOfHeads(), columnOfHeads(), columnOfHeads(), columnOfHeads()];
  const limit = t1Milligrams ?? Number.NEGATIVE_INFINITY;
  for (const { heads, netMilligrams, isRejected, count } of parts) {
    if (heads === null) continue;
    for (let place = 0; place < count; place += 1) {
      if (isRejected?.[place] === 1) continue;
      const head = heads[place] ?? 0;
      const net = netMilligrams[place] ?? 0;
      const error = net - nominalMilligrams;
      counts[head] = (counts[head] ?? 0) + 1;
      sums[head] = (sums[head] ?? 0) + error;
      squares[head] = (squares[head] ?? 0) + error * error;
      if (net < limit) short[head] = (short[head] ?? 0) + 1;
    }
  }
  return Array.from(counts, (packCount, head) => ({
    head,
    packCount,
    errorSumMilligrams: sums[head] ?? 0,
    errorSquareSum: squares[head] ?? 0,
    beyondT1Count: short[head] ?? 0,
  })).filter(({ packCount }) => packCount > 0);
}

function columnOfHeads(): Float64Array {
  return new Float64Array(headCount);
}
