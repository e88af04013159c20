import type { Origin } from './evidence.js';
import type { SamplePlan } from './sample-plan.js';
import type { ShortState, ShortTable } from './short-state.js';

/**
 * Where packs are sold, as far as rules differ. `de` has the European mark and a regulation of its own; `oiml-country`
 * is any country whose law follows OIML R 87.
 */
export type Market = 'eu' | 'de' | 'uk' | 'us' | 'ca' | 'oiml-country';

export type RuleSetId = 'eu-76-211' | 'uk-2006-659' | 'de-fpackv' | 'oiml-r87-2004' | 'us-handbook-133' | 'ca-sfcr-200';

/**
 * What all packs of a run must keep. `mean`: on average not less than the nominal quantity. `share`: packs so short are
 * so many thousandths at most. `count`: packs so short are so many at most.
 */
export type RunRule = Origin &
  (
    | { readonly kind: 'mean' }
    | { readonly kind: 'share'; readonly of: ShortState; readonly atMostPermille: number }
    | { readonly kind: 'count'; readonly of: ShortState; readonly atMost: number }
  );

/** Nominal quantities that a rule set is for, both edges included; `null`: no upper one. */
export interface Scope extends Origin {
  readonly fromMilligrams: number;
  readonly upToMilligrams: number | null;
}

/** A law or standard on how much packs must hold, as data: each figure says where it stands and how it is known. */
export interface RuleSet {
  readonly id: RuleSetId;
  /** As it calls itself: a name, the same in every language. */
  readonly title: string;
  /** `text` is `null` where nobody noted which edition it was. */
  readonly edition: Origin & { readonly text: string | null };
  readonly markets: readonly Market[];
  readonly scope: Scope;
  /** By which table packs are short; `not-obtained` where there is one that we could not read. */
  readonly shortBy: Origin & { readonly table: ShortTable | 'not-obtained' };
  readonly runRules: readonly RunRule[];
  readonly plans: readonly SamplePlan[];
}
