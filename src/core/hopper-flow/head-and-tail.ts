import { bisect } from '../statistics/bisect.js';
import { shareLeft, type Residence } from './residence-time.js';

/**
 * How many grams are packed, from the moment at which a bag begins to go in, until it first makes up a share of what
 * leaves.
 *
 * Told for what leaves at that point, not for a pallet: the mean over a pallet hides its first pack.
 *
 * @param share above 0 and below 1
 * @returns grams, the plug part included; the bag is taken as large enough to reach the share
 * @throws RangeError on a share out of range or a residence that makes no sense
 * @see quality.md 4.4 (first appearance)
 * @example gramsUntilShare({ zoneCount: 1, holdUpGrams: 500_000, plugGrams: 0 }, 0.01) // 5025.16…, −M·ln 0.99
 */
export function gramsUntilShare(residence: Residence, share: number): number {
  assertShare(share);
  const reached = (grams: number) => shareLeft(residence, grams).left >= share;
  return bisect(residence.plugGrams, firstWhere(residence, reached), (grams) => !reached(grams));
}

/**
 * How many grams are packed, from the moment at which a bag's last gram goes in, until it makes up less than a share of
 * what leaves for good.
 *
 * One zone: M·ln((1 − e^(−bag/M))/share). It never reaches nothing: stirred zones need a threshold or a proven empty.
 *
 * @param bagGrams above 0
 * @param share above 0 and below 1
 * @returns grams, the plug part included; null where what leaves never has as much of the bag
 * @throws RangeError on a share out of range, a bag of nothing, or a residence that makes no sense
 * @see quality.md 4.3 and 4.4 (tail)
 * @example gramsUntilGone({ zoneCount: 1, holdUpGrams: 500_000, plugGrams: 0 }, 1_000_000, 0.001) // 3_381_170.8…
 */
export function gramsUntilGone(residence: Residence, bagGrams: number, share: number): number | null {
  assertShare(share);
  if (!(bagGrams > 0)) throw new RangeError(`A bag of ${bagGrams} g has no tail`);
  const shareAt = (grams: number): number => {
    const [since, ago] = [shareLeft(residence, grams + bagGrams), shareLeft(residence, grams)];
    return ago.left < 0.5 ? since.left - ago.left : ago.inside - since.inside;
  };
  const fullest = whereFullest(residence, bagGrams);
  if (shareAt(fullest) < share) return null;
  const gone = firstWhere(residence, (grams) => grams > fullest && shareAt(grams) < share);
  return bisect(fullest, gone, (grams) => shareAt(grams) >= share);
}

/** Where what leaves has most of the bag, counted from its last gram: where as much begins to come as ceases to. */
function whereFullest(residence: Residence, bagGrams: number): number {
  const { zoneCount, holdUpGrams, plugGrams } = residence;
  if (zoneCount === 0) return plugGrams - bagGrams;
  if (zoneCount === 1) return plugGrams;
  const peak = (holdUpGrams * (zoneCount - 1)) / zoneCount;
  // ln of the density, less what is the same at all places; −∞ where nothing has come yet.
  const logDensity = (x: number) => (zoneCount - 1) * Math.log(Math.max(0, x)) - (x * zoneCount) / holdUpGrams;
  const low = Math.max(-bagGrams, peak - bagGrams);
  return plugGrams + bisect(low, peak, (x) => logDensity(x + bagGrams) > logDensity(x));
}

/** A place by doubling where the condition holds. */
function firstWhere({ holdUpGrams, plugGrams }: Residence, holds: (grams: number) => boolean): number {
  let beyond = holdUpGrams + 1;
  while (!holds(plugGrams + beyond)) beyond *= 2;
  return plugGrams + beyond;
}

function assertShare(share: number): void {
  if (!(share > 0 && share < 1)) throw new RangeError(`${share} is no share between 0 and 1`);
}
