import { formatKilograms } from '../core/units/grams.js';
import { say } from '../platform/sentences/sentences.js';
import type { HopperLevel } from './hopper-level.js';

/** Grams as tables show them. */
export function mass(grams: number): string {
  return formatKilograms(grams, { thousands: true });
}

/** A level with its limits, such as `298 kg (258 kg to 338 kg)`. */
export function levelText({ periodId, grams, lowerGrams, upperGrams }: HopperLevel): string {
  if (periodId === null) return say('hopper-nothing-recorded');
  return say('hopper-level-text', { level: mass(grams), lower: mass(lowerGrams), upper: mass(upperGrams) });
}

/** More than a hundred times is a hundred times: the sizes behind it are not known better. */
export function timesText(times: number): string {
  return times >= 100 ? '100+' : times.toFixed(1);
}
