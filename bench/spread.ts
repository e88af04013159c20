/** A middle, what nineteen of twenty stay below, and the worst. */
export interface Spread {
  readonly median: number;
  readonly mostBelow: number;
  readonly worst: number;
}

export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
  return { median: at(0.5), mostBelow: at(0.95), worst: at(1) };
}
