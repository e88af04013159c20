import type { WeightField } from './sent-weight.js';

/** Where a value of a line stands. */
export interface ValuePlace {
  readonly field: WeightField;
  readonly from: number;
  readonly to: number;
}

/** A weigher writes one line as the other: all that stands before, between and after the values of a line of JSON. */
export interface LineShape {
  readonly fields: readonly WeightField[];
  /** What stands before each value, in the same order. */
  readonly before: readonly Uint8Array[];
  /** What stands after the last one, the newline included. */
  readonly after: Uint8Array;
}

/** @param end where the line's newline stands */
export function shapeOf(
  bytes: Uint8Array,
  { start, end, values }: { readonly start: number; readonly end: number; readonly values: readonly ValuePlace[] },
): LineShape {
  return {
    fields: values.map(({ field }) => field),
    before: values.map(({ from }, place) => bytes.slice(values[place - 1]?.to ?? start, from)),
    after: bytes.slice(values.at(-1)?.to ?? start, end + 1),
  };
}
