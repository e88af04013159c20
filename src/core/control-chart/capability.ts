/** A process, and the limits that its single values should lie in; null: none on that side. All in one unit. */
export interface CapabilityFacts {
  readonly mean: number;
  /** Of values taken together: what the machine can do at its best. */
  readonly sigmaWithin: number;
  /** Of all values, drift, heads and adjustments included: what came out. */
  readonly sigmaOverall: number;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** Capability by one standard deviation. */
export interface Capability {
  /** (upper − lower)/6σ; null without both limits. */
  readonly spread: number | null;
  /** (mean − lower)/3σ and (upper − mean)/3σ; null without the limit. Negative where the mean lies beyond it. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** The smaller of the two; null without any limit. */
  readonly least: number | null;
}

/**
 * The capability of a process within samples (Cp, Cpk) and overall (Pp, Ppk).
 *
 * For packs only the lower side is law, so ask with T1 or T2 as the lower limit and none above, and read it by the overall
 * standard deviation: a share of 2.5 % beyond T1 is a `lower` of 0.653, one in 10 000 beyond T2 is 1.240.
 *
 * @param facts finite numbers; both standard deviations above 0; lower below upper
 * @throws RangeError outside of these ranges
 * @see NIST/SEMATECH e-Handbook of Statistical Methods 6.1.6
 * @example capability({ mean: 16, sigmaWithin: 2, sigmaOverall: 2, lower: 8, upper: 20 }).within
 * // { spread: 1, lower: 1.333, upper: 0.667, least: 0.667 }
 */
export function capability({ mean, sigmaWithin, sigmaOverall, lower, upper }: CapabilityFacts): {
  readonly within: Capability;
  readonly overall: Capability;
} {
  if (!Number.isFinite(mean)) throw new RangeError(`No capability about ${mean}`);
  if (lower !== null && upper !== null && !(lower < upper)) throw new RangeError(`${lower} is not below ${upper}`);
  const by = (sigma: number): Capability => {
    if (!(sigma > 0) || !Number.isFinite(sigma)) throw new RangeError(`No capability with a sigma of ${sigma}`);
    const below = lower === null ? null : (mean - lower) / (3 * sigma);
    const above = upper === null ? null : (upper - mean) / (3 * sigma);
    return {
      spread: lower === null || upper === null ? null : (upper - lower) / (6 * sigma),
      lower: below,
      upper: above,
      least: below === null || above === null ? (below ?? above) : Math.min(below, above),
    };
  };
  return { within: by(sigmaWithin), overall: by(sigmaOverall) };
}
