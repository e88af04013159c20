/**
 * Whose rounding is meant: `directive` is that of the EU and the UK, `oiml-r87` that of OIML R 87, `fpackv` that of the
 * German FPackV, which differs from the directive in T2 alone.
 */
export type ToleranceRounding = 'directive' | 'oiml-r87' | 'fpackv';

/** A row of the table: up to a nominal quantity, so many thousandths of it, or a fixed amount. */
interface ToleranceBand {
  readonly upToMilligrams: number;
  readonly permille: number | null;
  readonly fixedMilligrams: number | null;
}

/**
 * Directive 76/211/EEC Annex I 2.4 to 10 kg, UK SI 2006/659 to 25 kg, OIML R 87 to 50 kg: the same table. Neighbouring
 * rows give the same value where they meet, so it does not matter to which an edge belongs.
 */
const bands: readonly ToleranceBand[] = [
  { upToMilligrams: 50_000, permille: 90, fixedMilligrams: null },
  { upToMilligrams: 100_000, permille: null, fixedMilligrams: 4_500 },
  { upToMilligrams: 200_000, permille: 45, fixedMilligrams: null },
  { upToMilligrams: 300_000, permille: null, fixedMilligrams: 9_000 },
  { upToMilligrams: 500_000, permille: 30, fixedMilligrams: null },
  { upToMilligrams: 1_000_000, permille: null, fixedMilligrams: 15_000 },
  { upToMilligrams: 10_000_000, permille: 15, fixedMilligrams: null },
  { upToMilligrams: 15_000_000, permille: null, fixedMilligrams: 150_000 },
  { upToMilligrams: 50_000_000, permille: 10, fixedMilligrams: null },
];

/** Directive 76/211/EEC Article 1. The table of OIML R 87 begins above 0 (Australian reg. 4.36(4), which prints it). */
const leastNominalMilligrams: Readonly<Record<ToleranceRounding, number>> = {
  directive: 5_000,
  fpackv: 5_000,
  'oiml-r87': 1,
};
const tenthOfGram = 100;
const wholeGram = 1_000;
/** OIML R 87 rounds to whole grams above this nominal quantity. */
const wholeGramsAboveMilligrams = 1_000_000;

/**
 * The tolerable negative error: how many milligrams a pack may be short of its nominal quantity before it counts as
 * defective.
 *
 * A percentage of the table is rounded up: to 0.1 g (`directive`, `fpackv`), or to 0.1 g up to 1 kg and to a whole gram
 * above it (`oiml-r87`, where it is called the tolerable deficiency). Worked in whole milligrams, because the same sum
 * in fractions of grams is wrong by 0.1 g for some nominal quantities.
 *
 * @param nominalMilligrams a whole number, 5 g to 50 kg, both included (`oiml-r87`: above 0). Which quantities are
 * within the scope of a market's rule (5 g to 10 kg for the ℮ mark) is told by `ruleSetsInScope`
 * @returns whole milligrams
 * @throws RangeError outside of that range, or when the number is not whole
 * @see Directive 76/211/EEC Annex I 2.4; OIML R 87; FPackV section 9(3)
 * @example tolerableNegativeErrorMilligrams(454_000) // 13700: 3 % are 13.62 g, rounded up to 13.7 g
 */
export function tolerableNegativeErrorMilligrams(
  nominalMilligrams: number,
  rounding: ToleranceRounding = 'directive',
): number {
  return shortfallMilligrams(nominalMilligrams, rounding, 1);
}

/** So many times the figure of the table, then rounded up. */
function shortfallMilligrams(nominalMilligrams: number, rounding: ToleranceRounding, times: 1 | 2): number {
  const band = bands.find(({ upToMilligrams }) => nominalMilligrams <= upToMilligrams);
  const least = leastNominalMilligrams[rounding];
  if (!Number.isInteger(nominalMilligrams) || nominalMilligrams < least || band === undefined) {
    throw new RangeError(
      `The nominal quantity must be whole milligrams from ${least} mg to 50 kg, not ${nominalMilligrams}`,
    );
  }
  if (band.fixedMilligrams !== null) return times * band.fixedMilligrams;
  const step = rounding === 'oiml-r87' && nominalMilligrams > wholeGramsAboveMilligrams ? wholeGram : tenthOfGram;
  return Math.ceil((times * nominalMilligrams * (band.permille ?? 0)) / (1000 * step)) * step;
}

/**
 * The two limits below which a pack is short: T1 is the nominal quantity less the tolerable negative error, T2 less
 * twice that.
 */
export interface ShortPackLimits {
  readonly t1Milligrams: number;
  readonly t2Milligrams: number;
}

/**
 * The limits T1 and T2 of a nominal quantity.
 *
 * A pack exactly at a limit is not beyond it. Beyond T1 only few packs may lie, beyond T2 none may bear the mark. The
 * German regulation has a table of its own for T2 (18 %, 9 g, 9 %, 18 g, 6 %, 30 g, 3 %) that is rounded up by itself,
 * so its T2 can lie 0.1 g above that of the directive, where the rounded error is doubled.
 *
 * @throws RangeError as `tolerableNegativeErrorMilligrams`
 * @see Directive 76/211/EEC Annex I 1.2, 1.3; FPackV section 9(3) and 9(4)
 * @example shortPackLimits(1_000_000) // { t1Milligrams: 985000, t2Milligrams: 970000 }
 * @example shortPackLimits(35_000, 'fpackv').t2Milligrams // 28700, where the directive has 28600
 */
export function shortPackLimits(nominalMilligrams: number, rounding: ToleranceRounding = 'directive'): ShortPackLimits {
  const tolerance = tolerableNegativeErrorMilligrams(nominalMilligrams, rounding);
  const twice = rounding === 'fpackv' ? shortfallMilligrams(nominalMilligrams, rounding, 2) : 2 * tolerance;
  return { t1Milligrams: nominalMilligrams - tolerance, t2Milligrams: nominalMilligrams - twice };
}
