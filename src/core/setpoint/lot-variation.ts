/** What the weighed packs of a lot say. */
export interface LotSummary {
  /** 2 or more. */
  readonly packCount: number;
  readonly meanMilligrams: number;
  /** With n − 1, of all weighed packs of the lot. */
  readonly standardDeviationMilligrams: number;
}

/** How packs vary within lots, and how lots' means vary among each other. */
export interface LotVariation {
  readonly sigmaMilligrams: number;
  /** Without what weighing only some packs adds; 0 where that alone explains how the means differ. */
  readonly driftSigmaMilligrams: number;
}

/**
 * Takes the variation within lots and that between them apart, so that none is counted twice in a setpoint.
 *
 * By the analysis of variance with one random effect: σ² is the mean square within lots; the drift's is the mean square
 * between them less σ², over the size of a lot (for unlike sizes n₀ = (N − Σn²/N)/(k − 1)).
 *
 * @param lots two or more, made at one setting or each seen against its own setting
 * @throws RangeError when there are fewer, or one has fewer than two packs
 * @see Snedecor and Cochran, Statistical Methods, 13.3 (from memory)
 * @example lotVariation([{ packCount: 50, meanMilligrams: 1_000_000, standardDeviationMilligrams: 5_000 },
 * { packCount: 50, meanMilligrams: 1_004_000, standardDeviationMilligrams: 5_000 }])
 * // { sigmaMilligrams: 5000, driftSigmaMilligrams: 2738.6… }
 */
export function lotVariation(lots: readonly LotSummary[]): LotVariation {
  if (lots.length < 2) throw new RangeError('How lots vary needs two or more');
  if (lots.some(({ packCount }) => !(packCount >= 2))) throw new RangeError('A lot needs two packs or more');
  const total = sumOf(lots, ({ packCount }) => packCount);
  const first = lots[0]?.meanMilligrams ?? 0;
  const mean = first + sumOf(lots, ({ packCount, meanMilligrams }) => packCount * (meanMilligrams - first)) / total;
  const within =
    sumOf(lots, ({ packCount, standardDeviationMilligrams: s }) => (packCount - 1) * s * s) / (total - lots.length);
  const between = sumOf(lots, (lot) => lot.packCount * (lot.meanMilligrams - mean) ** 2) / (lots.length - 1);
  const size = (total - sumOf(lots, ({ packCount }) => packCount * packCount) / total) / (lots.length - 1);
  return {
    sigmaMilligrams: Math.sqrt(within),
    driftSigmaMilligrams: Math.sqrt(Math.max(0, between - within) / size),
  };
}

function sumOf(lots: readonly LotSummary[], of: (lot: LotSummary) => number): number {
  return lots.reduce((sum, lot) => sum + of(lot), 0);
}
