import { from, type Origin } from './evidence.js';

/** OIML R 87 Annex B, from memory: its figures were not read again. */
const annexB: Origin = from('OIML R 87 Annex B', 'memory');
const firstSampleCount = 10;
const largeSampleCount = 25;
/** The mean tare of the first sample serves up to this share of the nominal quantity. */
const lightPercentOfNominal = 10;
/** The standard deviation of heavier packaging is compared with a quarter of the tolerable deficiency. */
const spreadDivisor = 4n;

/**
 * Which tare a pack's gross is lessened by. `mean`: that of the empties weighed. `more-empties-needed`: weigh so many more
 * first. `each-pack`: the packaging varies too much, so each pack is emptied and its own tare weighed.
 */
export type TareRule = Origin & {
  readonly emptyCount: number;
  /** Rounded up to whole milligrams, so that it never adds to a net. */
  readonly meanTareMilligrams: number;
} & (
    | { readonly use: 'mean' }
    | { readonly use: 'more-empties-needed'; readonly missingCount: number }
    | { readonly use: 'each-pack' }
  );

export interface Empties {
  readonly nominalMilligrams: number;
  /** T of the nominal quantity, in whole milligrams. */
  readonly tolerableDeficiencyMilligrams: number;
  /** Empty packagings weighed one by one, in whole milligrams above 0, in any order. */
  readonly taresMilligrams: readonly number[];
}

/**
 * Which tare to use, from packagings weighed empty.
 *
 * With ten: where the mean tare is 10 % of the nominal quantity or less, that mean. Where it is more and the tares'
 * standard deviation is a quarter of the tolerable deficiency or less, the mean of 25 or more. Where they vary more, each
 * pack's own. Both limits are decided in whole numbers, and exactly at one is within it.
 *
 * @throws RangeError where a mass is not whole milligrams above 0
 * @see OIML R 87 Annex B (from memory)
 * @example tareRule({ nominalMilligrams: 1_000_000, tolerableDeficiencyMilligrams: 15_000, taresMilligrams: tenOf6Grams })
 * // { use: 'mean', meanTareMilligrams: 6000, emptyCount: 10 }
 */
export function tareRule({ nominalMilligrams, tolerableDeficiencyMilligrams, taresMilligrams }: Empties): TareRule {
  for (const mass of [nominalMilligrams, tolerableDeficiencyMilligrams, ...taresMilligrams]) {
    if (!Number.isSafeInteger(mass) || mass <= 0) throw new RangeError(`A mass must be whole milligrams, not ${mass}`);
  }
  const emptyCount = taresMilligrams.length;
  const sum = taresMilligrams.reduce((total, tare) => total + tare, 0);
  const known = { emptyCount, meanTareMilligrams: emptyCount === 0 ? 0 : Math.ceil(sum / emptyCount), ...annexB };
  const needs = (count: number): TareRule =>
    emptyCount >= count
      ? { ...known, use: 'mean' }
      : { ...known, use: 'more-empties-needed', missingCount: count - emptyCount };
  const isLight = sum * 100 <= emptyCount * lightPercentOfNominal * nominalMilligrams;
  if (isLight || emptyCount < firstSampleCount) return needs(firstSampleCount);
  return variesLittle(taresMilligrams, tolerableDeficiencyMilligrams)
    ? needs(largeSampleCount)
    : { ...known, use: 'each-pack' };
}

/** s ≤ T/4, squared and multiplied out: 16·(n·Q − S²) ≤ T²·n·(n − 1). */
function variesLittle(taresMilligrams: readonly number[], tolerableDeficiencyMilligrams: number): boolean {
  const n = BigInt(taresMilligrams.length);
  let [sum, squares] = [0n, 0n];
  for (const tare of taresMilligrams.map(BigInt)) {
    sum += tare;
    squares += tare * tare;
  }
  const spread = n * squares - sum * sum;
  return spreadDivisor ** 2n * spread <= BigInt(tolerableDeficiencyMilligrams) ** 2n * n * (n - 1n);
}

/** From this pack of a run on, packs are weighed with another tare. */
export interface TareChange {
  readonly fromPackCount: number;
  readonly tareMilligrams: number;
}

/** Packs of a run that were weighed with one tare: a half-open range of its count. */
export interface TareStretch {
  readonly fromPackCount: number;
  readonly toPackCount: number;
  /** `null`: no tare was recorded for these packs, so they have no net. */
  readonly tareMilligrams: number | null;
}

/**
 * Where the statistics of a run must be split because its tare changed.
 *
 * A change of tare moves every net by the same amount, so packs on both sides of it belong in different means, deviations
 * and charts. A new tare of the same size splits nothing. Of two changes at one pack the later one counts.
 *
 * @param changes in the order of the run's count; those before the run say what it began with
 * @param packCount how many packs the run has, 0 or more
 * @returns stretches that follow each other from 0 to the count; none for no packs
 * @throws RangeError where a count or a tare is not whole, or the changes are out of order
 * @example tareStretches([{ fromPackCount: 0, tareMilligrams: 6000 }, { fromPackCount: 400, tareMilligrams: 6100 }], 1000)
 * // 0 to 400 with 6000 mg, 400 to 1000 with 6100 mg
 */
export function tareStretches(changes: readonly TareChange[], packCount: number): readonly TareStretch[] {
  const stretches: TareStretch[] = [];
  let [start, tare]: [number, number | null] = [0, null];
  let last = -Infinity;
  const close = (end: number): void => {
    const before = stretches.at(-1);
    const isSame = before !== undefined && before.tareMilligrams === tare;
    const stretch = { fromPackCount: isSame ? before.fromPackCount : start, toPackCount: end, tareMilligrams: tare };
    if (end > start) stretches.splice(isSame ? -1 : stretches.length, isSame ? 1 : 0, stretch);
    start = Math.max(start, end);
  };
  for (const { fromPackCount, tareMilligrams } of changes) {
    refuseChange(fromPackCount, tareMilligrams, last);
    last = fromPackCount;
    if (fromPackCount >= packCount) break;
    if (tareMilligrams !== tare) close(Math.max(0, fromPackCount));
    tare = tareMilligrams;
  }
  close(packCount);
  return stretches;
}

function refuseChange(fromPackCount: number, tareMilligrams: number, last: number): void {
  if (!Number.isSafeInteger(fromPackCount) || fromPackCount < last) {
    throw new RangeError(`Changes of tare must be in the order of the count, not ${fromPackCount} after ${last}`);
  }
  if (!Number.isSafeInteger(tareMilligrams) || tareMilligrams <= 0) {
    throw new RangeError(`A tare must be whole milligrams above 0, not ${tareMilligrams}`);
  }
}
