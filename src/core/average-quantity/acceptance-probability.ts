import type { PlanStep } from './sample-plan.js';

/** The chance of so many short packs in a sample, after so many packs and short ones were drawn already. */
type ChanceOfShort = (short: number, sampleCount: number, drawn: Drawn) => number;

interface Drawn {
  readonly packCount: number;
  readonly shortCount: number;
}

/**
 * The probability that a plan accepts a long series of packs of which a share is short: its operating characteristic.
 *
 * By the binomial distribution, summed term by term, without any approximation; in a double plan over all ways that the
 * first sample can be undecided. The count alone is meant: mean tests are not in it.
 *
 * @param steps of a row that goes by numbers
 * @param shortShare from 0 to 1, both included
 * @returns a probability; absolute error below 10⁻¹²
 * @throws RangeError for another share
 * @see Directive 76/211/EEC Annex II 2.2 for the plans
 * @example acceptanceProbability([{ packCount: 50, accept: 3, reject: 4 }], 0.025) // 0.9638
 */
export function acceptanceProbability(steps: readonly PlanStep[], shortShare: number): number {
  if (!(shortShare >= 0 && shortShare <= 1)) throw new RangeError(`Not a share from 0 to 1: ${shortShare}`);
  return acceptedBy(steps, (short, sampleCount) => binomial(short, sampleCount, shortShare));
}

/**
 * The probability that a plan accepts one batch of so many packs of which a number is short.
 *
 * By the hypergeometric distribution in whole numbers: what was drawn is not put back. In small batches that matters:
 * the 50 packs of the single plan are half of a batch of 100.
 *
 * @param steps of a row that goes by numbers; all its samples together are not more than the batch
 * @param batchPackCount whole, above 0
 * @param shortCount whole, 0 up to the batch
 * @returns a probability; absolute error below 10⁻¹²
 * @throws RangeError outside of these ranges
 * @example acceptanceProbabilityOfBatch([{ packCount: 20, accept: 1, reject: 2 }], 100, 1) // 1
 */
export function acceptanceProbabilityOfBatch(
  steps: readonly PlanStep[],
  batchPackCount: number,
  shortCount: number,
): number {
  const sampledCount = steps.reduce((sum, { packCount }) => sum + packCount, 0);
  if (!Number.isSafeInteger(batchPackCount) || batchPackCount < Math.max(1, sampledCount)) {
    throw new RangeError(`A batch of ${batchPackCount} has not the ${sampledCount} packs of the plan`);
  }
  if (!Number.isSafeInteger(shortCount) || shortCount < 0 || shortCount > batchPackCount) {
    throw new RangeError(`${shortCount} of ${batchPackCount} packs cannot be short`);
  }
  return acceptedBy(steps, (short, sampleCount, drawn) => {
    const left = batchPackCount - drawn.packCount;
    return hypergeometric(short, sampleCount, { packCount: left, shortCount: shortCount - drawn.shortCount });
  });
}

function acceptedBy(
  steps: readonly PlanStep[],
  chance: ChanceOfShort,
  drawn = { packCount: 0, shortCount: 0 },
): number {
  const [step, ...later] = steps;
  if (step === undefined) return 0;
  let accepted = 0;
  // From the first number that rejects, nothing more can accept.
  for (let total = drawn.shortCount; total < step.reject; total += 1) {
    const here = chance(total - drawn.shortCount, step.packCount, drawn);
    if (here === 0) continue;
    const next = { packCount: drawn.packCount + step.packCount, shortCount: total };
    accepted += here * (total <= step.accept ? 1 : acceptedBy(later, chance, next));
  }
  return accepted;
}

/** Numbers of ways are exact in whole numbers; powers are not, and need not be. */
function binomial(short: number, sampleCount: number, shortShare: number): number {
  if (short > sampleCount) return 0;
  return Number(choose(sampleCount, short)) * shortShare ** short * (1 - shortShare) ** (sampleCount - short);
}

function hypergeometric(short: number, sampleCount: number, left: Drawn): number {
  const good = left.packCount - left.shortCount;
  const ways = choose(left.shortCount, short) * choose(good, sampleCount - short);
  return ratio(ways, choose(left.packCount, sampleCount));
}

/** How many ways there are to choose; none where there are too few. */
function choose(from: number, chosen: number): bigint {
  if (chosen < 0 || chosen > from) return 0n;
  let ways = 1n;
  for (let each = 1; each <= chosen; each += 1) ways = (ways * BigInt(from - chosen + each)) / BigInt(each);
  return ways;
}

/** Both may be far beyond what a number holds; their quotient is a probability. */
function ratio(part: bigint, whole: bigint): number {
  const digits = 10n ** 18n;
  return Number((part * digits) / whole) / Number(digits);
}
