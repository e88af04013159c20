import { type ErrorSums, errorSums, type ExactSums, exactSums } from './pack-sums.js';

/** How a sample's mean stands to the nominal quantity less the allowance: both `within` and `at-the-limit` pass. */
export type MeanStanding = 'within' | 'at-the-limit' | 'outside';

/**
 * The mean test of a sample: x̄ ≥ Qn − k·s, with s of n − 1.
 *
 * Decided in whole numbers. With the errors about the nominal quantity summed to S, their squares to Q, and k in
 * thousandths K, a mean below the nominal quantity passes where S²·(n − 1)·10⁶ ≤ K²·n·(n·Q − S²), which is the rule
 * squared and multiplied out; no rounded root or quotient comes into it. The directive's sentence says "greater
 * than", its table of criteria "equal or greater": the table is followed.
 *
 * @param sums of two packs or more (one where no factor is given), from whole milligrams
 * @param factorThousandths as printed, 503 for 0.503; `null` where the mean itself must reach the nominal quantity
 * @throws RangeError for fewer packs, a factor that is not whole or negative, or sums that no packs can have
 * @see Directive 76/211/EEC Annex II 2.3; UK SI 2006/659 Schedule 2 paragraphs 4.5 to 4.7; OIML R 87:2004 Table 1
 * @example meanStanding(errorSums([999_000, 1_001_000], 1_000_000), null) // 'at-the-limit'
 */
export function meanStanding(sums: ErrorSums, factorThousandths: number | null): MeanStanding {
  const exact = exactSums(sums);
  const factor = factorThousandths ?? 0;
  if (!Number.isSafeInteger(factor) || factor < 0) throw new RangeError(`Not a factor in thousandths: ${factor}`);
  if (exact.packCount < (factorThousandths === null ? 1n : 2n)) {
    throw new RangeError(`A mean test needs more than ${sums.packCount} packs`);
  }
  const over = marginSquared(exact, BigInt(factor));
  if (over < 0n) return 'outside';
  return over === 0n ? 'at-the-limit' : 'within';
}

/** Of the sign of x̄ − (Qn − k·s): compared as squares, each with the sign of what it is the square of. */
function marginSquared({ packCount: n, sum, squares }: ExactSums, factor: bigint): bigint {
  const mean = sum * (sum < 0n ? -sum : sum) * (n - 1n) * 1_000_000n;
  const allowance = factor ** 2n * n * (n * squares - sum ** 2n);
  // With one pack n − 1 is nothing, and so is the spread: the sign of the error alone counts.
  return n === 1n ? sum : mean + allowance;
}

/**
 * Whether a mean test is passed only because of the shortest pack: with that pack as heavy as the next shortest, it
 * would fail.
 *
 * One gross short pack pulls the mean down a little and swells the standard deviation a lot, so it can carry a sample
 * through the test that it should fail. The test is still passed, as the law has it; this says that it proves little.
 *
 * @param netsMilligrams the sample, in any order; three packs or more, else `false`
 * @throws RangeError as `meanStanding`
 * @example restsOnShortestPack(netsOfThirdCase, 454_000, 635) // true, with one pack of twelve short by 20.4 g
 */
export function restsOnShortestPack(
  netsMilligrams: readonly number[],
  nominalMilligrams: number,
  factorThousandths: number | null,
): boolean {
  const [shortest, next, ...rest] = netsMilligrams.toSorted((one, other) => one - other);
  if (shortest === undefined || next === undefined || rest.length === 0) return false;
  if (meanStanding(errorSums(netsMilligrams, nominalMilligrams), factorThousandths) === 'outside') return false;
  const lifted = errorSums([next, next, ...rest], nominalMilligrams);
  return meanStanding(lifted, factorThousandths) === 'outside';
}
