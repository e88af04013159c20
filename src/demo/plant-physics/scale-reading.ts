import type { Random } from './random.js';

/** A scale as it is in truth: shows in steps, a little too much or too little. All errors together stay within its limit. */
export interface TrueScale {
  readonly intervalGrams: number;
  readonly maximumErrorGrams: number;
  /** Shown too much in every reading. */
  readonly biasGrams: number;
  readonly spreadGrams: number;
}

/** What the scale shows for a load. */
export function readScale(scale: TrueScale, trueGrams: number, random: Random): number {
  const shown = trueGrams + random.normal(scale.biasGrams, scale.spreadGrams);
  const half = scale.intervalGrams / 2;
  const room = scale.maximumErrorGrams - half;
  const within = Math.min(trueGrams + room, Math.max(trueGrams - room, shown));
  return Math.max(0, Math.round(within / scale.intervalGrams) * scale.intervalGrams);
}
