import { shortPackLimits } from '../../core/average-quantity/tolerable-negative-error.js';
import { binMilligramsFor, type Yardstick } from '../../core/weight-blocks/weight-summary.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { RawSums } from './summed-rows.js';

/** The quantities for which the directive's table says how short a pack may be. */
const tableMilligrams = { from: 5_000, to: 50_000_000 } as const;

/** What packs of a nominal quantity are measured by: the limits of the directive, in a table that other rules share. */
export function yardstickFor(nominalMilligrams: number): Yardstick {
  const hasLimits = nominalMilligrams >= tableMilligrams.from && nominalMilligrams <= tableMilligrams.to;
  const limits = hasLimits ? shortPackLimits(nominalMilligrams) : { t1Milligrams: null, t2Milligrams: null };
  return { nominalMilligrams, ...limits, binMilligrams: binMilligramsFor(nominalMilligrams) };
}

/** What the weights in a row were measured by. */
export function yardstickIn(row: RawSums): Yardstick {
  const whole = (name: string): number => toWhole(row[name] as string | number);
  const orNull = (name: string): number | null => (row[name] === null ? null : whole(name));
  return {
    nominalMilligrams: whole('nominal_milligrams'),
    t1Milligrams: orNull('t1_milligrams'),
    t2Milligrams: orNull('t2_milligrams'),
    binMilligrams: whole('bin_milligrams'),
  };
}

/** A yardstick as one word: the same word for the same yardstick. */
export function wordOf({ nominalMilligrams, t1Milligrams, t2Milligrams, binMilligrams }: Yardstick): string {
  return [nominalMilligrams, t1Milligrams ?? 'none', t2Milligrams ?? 'none', binMilligrams].join('/');
}
