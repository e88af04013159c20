/** More weights than this do not fit into one block: a reader can refuse a claimed count before it sets memory aside. */
export const mostWeightsInBlock = 65_536;

/** The latest time that a block can hold, in hundredths of a second since 1970 UTC: in the year 4757. */
export const latestCentiseconds = 2 ** 43;

/** In a column of heads: none was told for this weight. */
export const noHead = -1;

/** In a column of heads: head 0, or none was told; blocks of version 1 do not tell the two apart. */
export const zeroOrNoHead = -2;

/** Weights of one weigher in columns, by ascending sequence; all columns are of the same length. */
export interface WeightColumns {
  readonly count: number;
  /** The weigher's own counter, whole, 0 or more, strictly ascending. */
  readonly sequences: Float64Array;
  /** When each pack was weighed, in hundredths of a second since 1970 UTC, 0 to 2^43; need not ascend. */
  readonly atCentiseconds: Float64Array;
  readonly netMilligrams: Int32Array;
  /** Which head filled it, 0..255, `noHead` or `zeroOrNoHead`; null where none is told of any weight. */
  readonly heads: Int16Array | null;
  /** 1 where the weigher pushed the pack out, else 0; null where it pushed none out or does not say. */
  readonly isRejected: Uint8Array | null;
}

/**
 * Columns for so many weights, all zero and of no head, to be filled.
 *
 * @param count whole, 0 or more
 * @example emptyColumns(2, { hasHeads: true, hasRejects: false }).heads // Int16Array [-1, -1]
 */
export function emptyColumns(
  count: number,
  { hasHeads, hasRejects }: { readonly hasHeads: boolean; readonly hasRejects: boolean },
): WeightColumns {
  return {
    count,
    sequences: new Float64Array(count),
    atCentiseconds: new Float64Array(count),
    netMilligrams: new Int32Array(count),
    heads: hasHeads ? new Int16Array(count).fill(noHead) : null,
    isRejected: hasRejects ? new Uint8Array(count) : null,
  };
}

/**
 * The weights from one place to another, without copying: both share the same memory.
 *
 * @param from the first place, 0 or more
 * @param to the place after the last
 * @example sliceWeights(columns, 0, columns.count) // all of them
 */
export function sliceWeights(columns: WeightColumns, from: number, to: number): WeightColumns {
  const sequences = columns.sequences.subarray(from, to);
  return {
    count: sequences.length,
    sequences,
    atCentiseconds: columns.atCentiseconds.subarray(from, to),
    netMilligrams: columns.netMilligrams.subarray(from, to),
    heads: columns.heads?.subarray(from, to) ?? null,
    isRejected: columns.isRejected?.subarray(from, to) ?? null,
  };
}

/**
 * Weights of several parts as one, by ascending sequence, whatever the order of the parts. Where one part says heads or
 * rejects and another does not, the other's weights are of no head and not rejected.
 *
 * @throws RangeError when two parts hold the same sequence
 * @example joinWeights([later, earlier]).sequences // ascending
 */
export function joinWeights(parts: readonly WeightColumns[]): WeightColumns {
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  const whole = emptyColumns(count, {
    hasHeads: parts.some(({ heads }) => heads !== null),
    hasRejects: parts.some(({ isRejected }) => isRejected !== null),
  });
  const ordered = parts
    .filter((part) => part.count > 0)
    .sort((one, other) => (one.sequences[0] ?? 0) - (other.sequences[0] ?? 0));
  let place = 0;
  for (const part of ordered) {
    whole.sequences.set(part.sequences, place);
    whole.atCentiseconds.set(part.atCentiseconds, place);
    whole.netMilligrams.set(part.netMilligrams, place);
    if (part.heads !== null) whole.heads?.set(part.heads, place);
    if (part.isRejected !== null) whole.isRejected?.set(part.isRejected, place);
    place += part.count;
  }
  return isAscending(whole.sequences) ? whole : sorted(whole);
}

function isAscending(sequences: Float64Array): boolean {
  for (let place = 1; place < sequences.length; place += 1) {
    if (!((sequences[place - 1] ?? 0) < (sequences[place] ?? 0))) return false;
  }
  return true;
}

/** Parts that reach into each other, weight by weight. */
function sorted(columns: WeightColumns): WeightColumns {
  const { sequences } = columns;
  const order = new Uint32Array(columns.count).map((_, place) => place);
  order.sort((one, other) => (sequences[one] ?? 0) - (sequences[other] ?? 0));
  const whole = pickWeights(columns, order);
  if (!isAscending(whole.sequences)) throw new RangeError('Two weights have the same sequence');
  return whole;
}

/**
 * The weights at some places, in the order of the places.
 *
 * @param places each from 0 to one below the count
 * @example pickWeights(columns, Uint32Array.of(3)).count // 1
 */
export function pickWeights(columns: WeightColumns, places: Uint32Array): WeightColumns {
  const picked = emptyColumns(places.length, {
    hasHeads: columns.heads !== null,
    hasRejects: columns.isRejected !== null,
  });
  places.forEach((place, index) => {
    picked.sequences[index] = columns.sequences[place] ?? 0;
    picked.atCentiseconds[index] = columns.atCentiseconds[place] ?? 0;
    picked.netMilligrams[index] = columns.netMilligrams[place] ?? 0;
    if (picked.heads !== null) picked.heads[index] = columns.heads?.[place] ?? noHead;
    if (picked.isRejected !== null) picked.isRejected[index] = columns.isRejected?.[place] ?? 0;
  });
  return picked;
}
