import { compareDecimals, readDecimal } from '../core/units/decimals.js';
import { Refusal } from '../platform/refusal.js';

/** What a property can be at all, where nature says so. Other properties have no limits here. */
const ranges: Readonly<Record<string, { readonly least: string; readonly most: string | null }>> = {
  'moisture-percent': { least: '0', most: '100' },
  'colour-iu': { least: '0', most: null },
};

/**
 * A figure that its property can't have was typed wrong.
 *
 * @throws {Refusal} `result-out-of-range`
 */
export function refuseImpossible(property: string, amount: string): void {
  const range = ranges[property];
  if (range === undefined) return;
  const reading = readDecimal(amount);
  const isWithin =
    reading.ok &&
    compareDecimals(reading.decimal, range.least) >= 0 &&
    (range.most === null || compareDecimals(reading.decimal, range.most) <= 0);
  if (!isWithin) throw new Refusal('result-out-of-range', { property, amount, least: range.least, most: range.most });
}
