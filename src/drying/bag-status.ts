/** Where a bag is on its way. `hanging`: its spout is open over a hopper; `opened`: part tipped and weighed back. */
export const bagStatuses = [
  'filling',
  'full',
  'opened',
  'hanging',
  'empty',
  'loaded',
  'dispatched',
  'returned',
  'destroyed',
] as const;
export type BagStatus = (typeof bagStatuses)[number];
