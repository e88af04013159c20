/** How cumulative sums are kept, all in the unit of the figures. */
export interface CumulativeSumPlan {
  readonly target: number;
  /** K: what a figure may lie off the target without counting; half of the shift that is to be found. 0 or more. */
  readonly allowance: number;
  /** H: a sum above it is a signal. Above 0. */
  readonly decision: number;
  /** Where both sums start: 0, or by custom H/2 for a fast initial response after an adjustment. From 0 to H. */
  readonly headStart: number;
}

/** Both sums after a figure. */
export interface CumulativeSums {
  readonly high: number;
  readonly low: number;
  /** Figures since the sum last was 0: the shift began about so many ago. The head start counts as none. */
  readonly highCount: number;
  readonly lowCount: number;
  /** A sum exactly at H is none yet. */
  readonly signal: 'high' | 'low' | null;
}

/**
 * The tabular cumulative sums (CUSUM): high = max(0, x − (target + K) + high), low = max(0, (target − K) − x + low).
 *
 * Nothing is set back after a signal; what is done then is for people to say, and a new series to begin. Both sums can
 * be above H only if the figures leap more than 2K from one to the next; the larger names the signal then.
 *
 * @param values finite numbers in the order of time
 * @returns one entry for each figure
 * @throws RangeError where the plan is outside of its ranges or a figure is not finite
 * @see Page (1954), Biometrika 41, 100; Lucas and Crosier (1982), Technometrics 24, 199, for the head start
 * @example cumulativeSums([102, 94.8], { target: 99, allowance: 1, decision: 10, headStart: 0 })
 * // [{ high: 2, low: 0, highCount: 1, … }, { high: 0, low: 3.2, lowCount: 1, … }]
 */
export function cumulativeSums(values: readonly number[], plan: CumulativeSumPlan): readonly CumulativeSums[] {
  const { target, allowance, decision, headStart } = plan;
  assertPlan(plan);
  let [high, low, highCount, lowCount] = [headStart, headStart, 0, 0];
  return values.map((value) => {
    if (!Number.isFinite(value)) throw new RangeError('Cumulative sums need finite figures');
    high = Math.max(0, high + (value - target) - allowance);
    low = Math.max(0, low - (value - target) - allowance);
    highCount = high > 0 ? highCount + 1 : 0;
    lowCount = low > 0 ? lowCount + 1 : 0;
    const larger = high >= low ? 'high' : 'low';
    return { high, low, highCount, lowCount, signal: Math.max(high, low) > decision ? larger : null };
  });
}

/**
 * Where the mean has moved to, as far as the sum tells: target ± (K + sum/count).
 *
 * @param sums an entry with a signal
 * @returns null without a signal
 * @see Montgomery, Introduction to Statistical Quality Control, 9.1 (from memory)
 * @example shiftedMean({ high: 11, low: 0, highCount: 5, lowCount: 0, signal: 'high' }, { target: 99, allowance: 1 }) // 102.2
 */
export function shiftedMean(
  { high, low, highCount, lowCount, signal }: CumulativeSums,
  { target, allowance }: Pick<CumulativeSumPlan, 'target' | 'allowance'>,
): number | null {
  if (signal === null) return null;
  return signal === 'high' ? target + allowance + high / highCount : target - allowance - low / lowCount;
}

function assertPlan({ target, allowance, decision, headStart }: CumulativeSumPlan): void {
  if (!Number.isFinite(target) || !(allowance >= 0)) throw new RangeError(`No sums about ${target} with ${allowance}`);
  if (!(decision > 0)) throw new RangeError(`The decision interval must be above 0, not ${decision}`);
  if (!(headStart >= 0 && headStart <= decision)) throw new RangeError(`A head start of ${headStart} is not possible`);
}
