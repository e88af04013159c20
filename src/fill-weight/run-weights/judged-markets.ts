import type { Market } from '../../core/average-quantity/rule-set.js';

/** All markets that a run is judged for; the first is the one that is shown where nobody said where a format is sold. */
export const judgedMarkets = ['eu', 'uk', 'oiml-country', 'us', 'de', 'ca'] as const satisfies readonly Market[];

export type JudgedMarket = (typeof judgedMarkets)[number];

/** The markets whose rules are shown first: the chosen one, else those in which the format is sold. */
export function shownMarkets(
  chosen: JudgedMarket | null | undefined,
  sale: { readonly markets: readonly JudgedMarket[] } | null,
): readonly JudgedMarket[] {
  return chosen == null ? (sale?.markets ?? [judgedMarkets[0]]) : [chosen];
}
