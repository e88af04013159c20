import type { Instant } from '../../platform/clock.js';
import type { Act, Doer } from '../life/act.js';
import type { DemoHand } from '../set-up/demo-hand.js';

/** Who acts, and when it is recorded. */
export interface Moment {
  readonly by: Doer;
  readonly at: Instant;
}

/** How one kind of act is done in the house: by calling its command. */
export type Player<Kind extends Act['kind']> = (
  hand: DemoHand,
  act: Extract<Act, { readonly kind: Kind }>,
  moment: Moment,
) => Promise<void>;

export type Players<Some extends Act> = { readonly [Kind in Some['kind']]: Player<Kind> };
