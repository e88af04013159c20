/**
 * A row of the table: labelled quantities up to (and with) its upper edge, in both columns as printed. The first and the
 * last row are a share of the labelled quantity instead of a figure.
 */
interface VariationRow {
  readonly upToMilligrams: number;
  readonly upToHundredthsOfPound: number;
  readonly mavMilligrams: number;
  readonly mavThousandthsOfPound: number;
}

/** NIST Handbook 133 Table 2-5, first row, from memory: packs up to 36 g or 0.08 lb. */
const firstRow = { upToMilligrams: 36_000, upToHundredthsOfPound: 8, percent: 10 };
/** NIST Handbook 133 Table 2-5, last row, from memory: packs over 24.67 kg or 54.4 lb. */
const lastRowPercent = 2;

/** One printed row: upper edges in grams and in pounds, MAV in grams and in pounds. */
function row(upToGrams: number, upToPounds: number, mavGrams: number, mavPounds: number): VariationRow {
  return {
    upToMilligrams: Math.round(upToGrams * 1000),
    upToHundredthsOfPound: Math.round(upToPounds * 100),
    mavMilligrams: Math.round(mavGrams * 1000),
    mavThousandthsOfPound: Math.round(mavPounds * 1000),
  };
}

/**
 * NIST Handbook 133 Table 2-5, from memory but for the row up to 117 g, which was seen. Both columns stand as printed:
 * the metric one is the pound figure cut off, not rounded, so neither can be reckoned from the other.
 */
const rows: readonly VariationRow[] = [
  row(54, 0.12, 3.6, 0.008),
  row(81, 0.18, 5.4, 0.012),
  row(117, 0.26, 7.2, 0.016),
  row(154, 0.34, 9.0, 0.02),
  row(208, 0.46, 10.8, 0.024),
  row(263, 0.58, 12.7, 0.028),
  row(317, 0.7, 14.5, 0.032),
  row(381, 0.84, 16.3, 0.036),
  row(426, 0.94, 18.1, 0.04),
  row(489, 1.08, 19.9, 0.044),
  row(571, 1.26, 21.7, 0.048),
  row(635, 1.4, 23.5, 0.052),
  row(698, 1.54, 25.4, 0.056),
  row(771, 1.7, 27.2, 0.06),
  row(852, 1.88, 29.0, 0.064),
  row(970, 2.14, 31.7, 0.07),
  row(1_120, 2.48, 35.3, 0.078),
  row(1_250, 2.76, 39.0, 0.086),
  row(1_450, 3.2, 42.6, 0.094),
  row(1_760, 3.9, 49, 0.11),
  row(2_130, 4.7, 54, 0.12),
  row(2_630, 5.8, 63, 0.14),
  row(3_080, 6.8, 68, 0.15),
  row(3_580, 7.9, 77, 0.17),
  row(4_260, 9.4, 86, 0.19),
  row(5_300, 11.7, 99, 0.22),
  row(6_480, 14.3, 113, 0.25),
  row(8_020, 17.7, 127, 0.28),
  row(10_520, 23.2, 140, 0.31),
  row(14_330, 31.6, 167, 0.37),
  row(19_230, 42.4, 199, 0.44),
  row(24_670, 54.4, 226, 0.5),
];

/**
 * The maximum allowable variation (MAV) of a pack labelled in grams or kilograms: a pack that is short by more has an
 * unreasonable error.
 *
 * The first and the last row are a share of the labelled quantity, cut off to whole milligrams: of packs weighed in
 * whole milligrams none lies between. At 24.67 kg the table jumps from 226 g to 2 %, so over twice that.
 *
 * @param labelledMilligrams a whole number above 0
 * @returns whole milligrams
 * @throws RangeError for another number
 * @see NIST Handbook 133 Table 2-5, metric column (from memory but for one row)
 * @example maximumAllowableVariationMilligrams(454_000) // 19900
 */
export function maximumAllowableVariationMilligrams(labelledMilligrams: number): number {
  if (!Number.isSafeInteger(labelledMilligrams) || labelledMilligrams <= 0) {
    throw new RangeError(`The labelled quantity must be whole milligrams above 0, not ${labelledMilligrams}`);
  }
  if (labelledMilligrams <= firstRow.upToMilligrams) return Math.floor((labelledMilligrams * firstRow.percent) / 100);
  const found = rows.find(({ upToMilligrams }) => labelledMilligrams <= upToMilligrams);
  return found?.mavMilligrams ?? Math.floor((labelledMilligrams * lastRowPercent) / 100);
}

/**
 * The maximum allowable variation of a pack labelled in pounds, in the table's own pound column.
 *
 * Never reckoned from the metric column: 0.044 lb are 19.958 g, where the metric column has 19.9 g.
 *
 * @param labelledHundredthsOfPound a whole number above 0: hundredths of a pound
 * @returns thousandths of a pound; not whole only in the first and the last row, which are a share
 * @throws RangeError for another number
 * @see NIST Handbook 133 Table 2-5, pound column (from memory but for one row)
 * @example maximumAllowableVariationThousandthsOfPound(100) // 44: 0.044 lb for 1 lb
 */
export function maximumAllowableVariationThousandthsOfPound(labelledHundredthsOfPound: number): number {
  if (!Number.isSafeInteger(labelledHundredthsOfPound) || labelledHundredthsOfPound <= 0) {
    throw new RangeError(`The labelled quantity must be whole hundredths of a pound, not ${labelledHundredthsOfPound}`);
  }
  const share = (percent: number): number => (labelledHundredthsOfPound * percent) / 10;
  if (labelledHundredthsOfPound <= firstRow.upToHundredthsOfPound) return share(firstRow.percent);
  const found = rows.find((each) => labelledHundredthsOfPound <= each.upToHundredthsOfPound);
  return found?.mavThousandthsOfPound ?? share(lastRowPercent);
}
