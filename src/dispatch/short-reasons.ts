/** Why less goes than was ordered (common practice, no source); `short-<code>` says it. */
export const shortCodes = [
  'not-enough-stock',
  'on-hold',
  'damaged',
  'no-room',
  'too-heavy',
  'customer-wants-less',
  'other',
] as const;
export type ShortCode = (typeof shortCodes)[number];

/** Why something comes back; `return-<code>` says it. */
export const returnCodes = [
  'refused-by-customer',
  'damaged-on-the-way',
  'wrong-goods',
  'too-much',
  'complaint',
  'recalled',
  'other',
] as const;
export type ReturnCode = (typeof returnCodes)[number];
