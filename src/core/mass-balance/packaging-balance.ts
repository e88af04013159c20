/** Preprinted bags, film or labels of one lot over a run, as counted. Whole pieces, 0 or more. */
export interface PackagingCounts {
  readonly openingCount: number;
  readonly issuedCount: number;
  readonly returnedCount: number;
  /** Those that became accepted packs. */
  readonly goodCount: number;
  readonly rejectCount: number;
  readonly sampleCount: number;
  readonly damagedCount: number;
  readonly setUpCount: number;
}

export interface PackagingBalance {
  /** Issued + opening − returned. */
  readonly usedCount: number;
  /** Good + rejects + samples + damaged + set-up. */
  readonly accountedCount: number;
  /** Used less accounted: above zero pieces are missing, below zero more were found than can have been used. */
  readonly unaccountedCount: number;
  /** Of those used, to four decimals; `null` where none was used. */
  readonly unaccountedPercent: number | null;
}

/**
 * Where the packaging of a run went: what was used, what of it is accounted for, and the rest.
 *
 * Counted the same way as the sugar: the rest is what it is and fills no field. Printed packaging that cannot be
 * accounted for can turn up on another product, so a plant sets a share above which it is looked into (0.5 % is common
 * practice, no source).
 *
 * @throws RangeError when a count is not whole or negative
 * @example packagingBalance({ openingCount: 350, issuedCount: 12000, returnedCount: 412, goodCount: 11780, rejectCount: 96,
 * sampleCount: 24, damagedCount: 31, setUpCount: 0 }) // 7 unaccounted of 11938 used, 0.0586 %
 */
export function packagingBalance(counts: PackagingCounts): PackagingBalance {
  for (const [name, count] of Object.entries(counts) as readonly (readonly [string, number])[]) {
    if (!Number.isSafeInteger(count) || count < 0)
      throw new RangeError(`${name} must be whole, 0 or more, not ${count}`);
  }
  const { openingCount, issuedCount, returnedCount } = counts;
  const { goodCount, rejectCount, sampleCount, damagedCount, setUpCount } = counts;
  const usedCount = issuedCount + openingCount - returnedCount;
  const accountedCount = goodCount + rejectCount + sampleCount + damagedCount + setUpCount;
  const unaccountedCount = usedCount - accountedCount;
  const unaccountedPercent = usedCount > 0 ? Math.round((unaccountedCount / usedCount) * 1_000_000) / 10_000 + 0 : null;
  return { usedCount, accountedCount, unaccountedCount, unaccountedPercent };
}
