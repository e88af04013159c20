/** The three weighings of a drying test, as read on an analytical balance, in whole micrograms (0.1 mg is 100 µg). */
export interface DryingWeighings {
  /** The empty, dry dish. */
  readonly dishMicrograms: number;
  /** Dish and sample before drying. */
  readonly wetMicrograms: number;
  /** Dish and sample after drying and cooling. */
  readonly dryMicrograms: number;
}

/**
 * The loss on drying: what the sample lost, in percent of what it weighed before.
 *
 * 100 · (wet − dry)/(wet − dish). It is not "the moisture": drying at 105 °C, drying in vacuum at a lower temperature
 * and a titration for water find different water in the same crystals, so the method belongs to the result and results
 * by different methods are not compared. With 30 g of sugar, 1 mg more or less on the balance is 0.0033 %.
 *
 * @param weighings whole micrograms; wet above dish, dry from dish to wet, both included
 * @returns percent, 0 to 100, not rounded
 * @throws RangeError when the weighings are not whole, negative, or in an order that drying cannot give
 * @see AOAC 925.45 B and the method for white sugar dried three hours at 105 °C (conditions from memory)
 * @example lossOnDryingPercent({ dishMicrograms: 22_103_400, wetMicrograms: 52_110_200, dryMicrograms: 52_096_700 }) // 0.04498…
 */
export function lossOnDryingPercent({ dishMicrograms, wetMicrograms, dryMicrograms }: DryingWeighings): number {
  const areWhole = [dishMicrograms, wetMicrograms, dryMicrograms].every(
    (mass) => Number.isSafeInteger(mass) && mass >= 0,
  );
  if (!areWhole) throw new RangeError('Weighings must be whole micrograms, 0 or more');
  if (wetMicrograms <= dishMicrograms) throw new RangeError('Dish and sample must weigh more than the dish');
  if (dryMicrograms > wetMicrograms || dryMicrograms < dishMicrograms) {
    throw new RangeError('The dried sample must weigh no more than before, and the dish no less than empty');
  }
  return (100 * (wetMicrograms - dryMicrograms)) / (wetMicrograms - dishMicrograms);
}
