/** So many of so many figures in a row lie beyond a distance from the centre line, all on one side. */
interface BeyondRule {
  readonly kind: 'beyond';
  readonly sigmas: number;
  readonly needed: number;
  readonly of: number;
}

/** What a rule looks for in a row of figures. */
export type ChartPattern =
  | BeyondRule
  /** So many in a row, each above (or each below) the one before it. */
  | { readonly kind: 'trend'; readonly of: number }
  /** So many in a row that go up and down by turns. */
  | { readonly kind: 'alternation'; readonly of: number }
  /** So many in a row nearer to the centre line than a distance, on either side. */
  | { readonly kind: 'within'; readonly sigmas: number; readonly of: number }
  /** So many in a row farther from it than a distance, some above and some below. */
  | { readonly kind: 'both-sides'; readonly sigmas: number; readonly of: number };

/** A rule by its own name, in its own set: sets that sound alike differ (eight in a row here, nine there). */
export interface ChartRule<Name extends string = string> {
  readonly name: Name;
  readonly pattern: ChartPattern;
}

const beyond = (needed: number, of: number, sigmas: number): BeyondRule => ({ kind: 'beyond', sigmas, needed, of });

/**
 * The four rules of Western Electric's handbook of statistical quality control (1956).
 *
 * **On a line.** The books are silent. Here a figure exactly on a line counts for neither side of it: on the 3σ line it
 * is not beyond, on the centre line it ends a run, on the 1σ line it is neither within nor outside.
 */
export const westernElectricRules = [
  { name: 'western-electric-1', pattern: beyond(1, 1, 3) },
  { name: 'western-electric-2', pattern: beyond(2, 3, 2) },
  { name: 'western-electric-3', pattern: beyond(4, 5, 1) },
  { name: 'western-electric-4', pattern: beyond(8, 8, 0) },
] as const satisfies readonly ChartRule[];

/**
 * Nelson's eight rules (1984, Journal of Quality Technology 16(4), 237).
 *
 * Lines as for Western Electric's. Two equal figures in a row end a trend and an alternation. Rule 8 wants figures on
 * both sides: eight beyond 1σ on one side are rule 6's.
 *
 * Rules 2 to 8 were made for means with limits alike on both sides, not for ranges and standard deviations with a lower
 * limit cut off at 0.
 */
export const nelsonRules = [
  { name: 'nelson-1', pattern: beyond(1, 1, 3) },
  { name: 'nelson-2', pattern: beyond(9, 9, 0) },
  { name: 'nelson-3', pattern: { kind: 'trend', of: 6 } },
  { name: 'nelson-4', pattern: { kind: 'alternation', of: 14 } },
  { name: 'nelson-5', pattern: beyond(2, 3, 2) },
  { name: 'nelson-6', pattern: beyond(4, 5, 1) },
  { name: 'nelson-7', pattern: { kind: 'within', sigmas: 1, of: 15 } },
  { name: 'nelson-8', pattern: { kind: 'both-sides', sigmas: 1, of: 8 } },
] as const satisfies readonly ChartRule[];

export type ChartRuleName = (typeof westernElectricRules)[number]['name'] | (typeof nelsonRules)[number]['name'];
