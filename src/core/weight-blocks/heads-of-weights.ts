import { noHead, zeroOrNoHead, type WeightColumns } from './weight-columns.js';

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

/** Accepted packs by the head that filled them. */
export interface HeadsOfWeights {
  /** Heads that filled a pack, by number. */
  readonly heads: readonly HeadSums[];
  /** Of which no head was told. */
  readonly noHeadPackCount: number;
  /** Of head 0, or of which none was told: blocks of version 1 do not tell them apart. */
  readonly zeroOrNoHeadPackCount: number;
}

const headCount = 256;

/**
 * The accepted packs of several parts, head by head.
 *
 * @param parts in any order
 * @example headsOfWeights([columns], { nominalMilligrams: 1_000_000, t1Milligrams: 985_000 }).heads[0]?.head // 1
 */
export function headsOfWeights(
  parts: readonly WeightColumns[],
  { nominalMilligrams, t1Milligrams }: { readonly nominalMilligrams: number; readonly t1Milligrams: number | null },
): HeadsOfWeights {
  const [counts, sums, squares, short] = [columnOfHeads(), columnOfHeads(), columnOfHeads(), columnOfHeads()];
  const limit = t1Milligrams ?? Number.NEGATIVE_INFINITY;
  const untold = { [noHead]: 0, [zeroOrNoHead]: 0 };
  for (const { heads, netMilligrams, isRejected, count } of parts) {
    for (let place = 0; place < count; place += 1) {
      if (isRejected?.[place] === 1) continue;
      const head = heads?.[place] ?? noHead;
      if (head === noHead || head === zeroOrNoHead) {
        untold[head] += 1;
        continue;
      }
      const net = netMilligrams[place] ?? 0;
      const error = net - nominalMilligrams;
      counts[head] = (counts[head] ?? 0) + 1;
      sums[head] = (sums[head] ?? 0) + error;
      squares[head] = (squares[head] ?? 0) + error * error;
      if (net < limit) short[head] = (short[head] ?? 0) + 1;
    }
  }
  const heads = Array.from(counts, (packCount, head) => ({
    head,
    packCount,
    errorSumMilligrams: sums[head] ?? 0,
    errorSquareSum: squares[head] ?? 0,
    beyondT1Count: short[head] ?? 0,
  })).filter(({ packCount }) => packCount > 0);
  return { heads, noHeadPackCount: untold[noHead], zeroOrNoHeadPackCount: untold[zeroOrNoHead] };
}

function columnOfHeads(): Float64Array {
  return new Float64Array(headCount);
}

/**
 * The sums of several parts together, head by head.
 *
 * @param parts what `headsOfWeights` says of each, by one nominal quantity and one T1: the caller sees to it
 * @example addHeads([headsOfWeights([one], limits), headsOfWeights([other], limits)]) // as of both
 */
export function addHeads(parts: readonly HeadsOfWeights[]): HeadsOfWeights {
  const sums = new Map<number, HeadSums>();
  for (const one of parts.flatMap(({ heads }) => heads)) {
    const before = sums.get(one.head);
    sums.set(one.head, before === undefined ? one : together(before, one));
  }
  return {
    heads: [...sums.values()].sort((one, other) => one.head - other.head),
    noHeadPackCount: parts.reduce((sum, { noHeadPackCount }) => sum + noHeadPackCount, 0),
    zeroOrNoHeadPackCount: parts.reduce((sum, { zeroOrNoHeadPackCount }) => sum + zeroOrNoHeadPackCount, 0),
  };
}

function together(one: HeadSums, other: HeadSums): HeadSums {
  return {
    head: one.head,
    packCount: one.packCount + other.packCount,
    errorSumMilligrams: one.errorSumMilligrams + other.errorSumMilligrams,
    errorSquareSum: one.errorSquareSum + other.errorSquareSum,
    beyondT1Count: one.beyondT1Count + other.beyondT1Count,
  };
}
