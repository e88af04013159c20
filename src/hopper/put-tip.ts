import type { BagRow } from '../drying/bulk-bags.js';
import { bagOf } from '../drying/bulk-bags.js';
import { changeBagState } from '../drying/change-bag-state.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { refuseUntippable } from './tipping-rules.js';
import { TipOff } from './tip-off.entity.js';
import { Tip } from './tip.entity.js';

/** A tip of a known bag, as it is to be recorded. */
export interface TipDraft {
  readonly id: string;
  readonly siteId: string;
  readonly periodId: string;
  readonly hopperId: string;
  readonly bag: BagRow;
  readonly openedAt: Instant;
  readonly identifiedBy: Tip['identifiedBy'];
  readonly secondPersonId: string | null;
  readonly hasHappened: boolean;
  readonly isLate: boolean;
  readonly recordedAt: Instant;
  /** The bag is off; null: it hangs. */
  readonly off: OffDraft | null;
}

export interface OffDraft {
  readonly id: string;
  readonly offAt: Instant;
  readonly restGrams: number;
  readonly weighingId: string | null;
  /** Where a bag with a rest was put. */
  readonly placeId: string | null;
}

/**
 * Records that a bag's sugar went into a hopper, and changes the bag's state.
 *
 * @throws {Refusal} `bag-already-tipped` and its kin where another was faster, `off-before-open`
 */
export async function putTip(tx: Tx, draft: TipDraft): Promise<void> {
  const { bag, off, openedAt } = draft;
  refuseOffBeforeOpen(openedAt, off?.offAt ?? null);
  const { siteId, periodId, identifiedBy, secondPersonId, hasHappened, isLate } = draft;
  const who = { identifiedBy, secondPersonId, hasHappened, isLate };
  const expected = { status: ['full', 'opened'], remainingGrams: bag.remainingGrams } as const;
  const to = off === null ? hangingState(draft) : offState(draft, off);
  if (!(await changeBagState(tx, bag.id, expected, to))) {
    await refuseUntippable(tx, await bagOf(tx, bag.id));
    throw new Refusal('bag-changed-meanwhile', { bag: bag.number });
  }
  await tx.insert(Tip, {
    ...{ id: draft.id, siteId, periodId, source: 'bulk-bag', bagId: bag.id, binId: null },
    ...{ netGrams: bag.remainingGrams, openedAt, ...who, voidedBy: null },
  });
  if (off !== null) await putOff(tx, draft.id, off);
}

function hangingState({ bag, hopperId, recordedAt: at }: TipDraft) {
  return { status: 'hanging', remainingGrams: bag.remainingGrams, placeId: hopperId, at } as const;
}

/** A bag that is off: empty, or opened with what was weighed back. */
export function offState(
  { hopperId, recordedAt: at }: Pick<TipDraft, 'hopperId' | 'recordedAt'>,
  { restGrams, placeId }: Pick<OffDraft, 'restGrams' | 'placeId'>,
) {
  if (restGrams === 0) return { status: 'empty', remainingGrams: 0, placeId: hopperId, at } as const;
  return { status: 'opened', remainingGrams: restGrams, placeId, at } as const;
}

export async function putOff(tx: Tx, tipId: string, off: OffDraft): Promise<void> {
  const { id, offAt, restGrams, weighingId } = off;
  await tx.insert(TipOff, { id, tipId, offAt, restGrams, weighingId, voidedBy: null });
}

/** @throws {Refusal} `off-before-open` */
export function refuseOffBeforeOpen(openedAt: Instant, offAt: Instant | null): void {
  if (offAt !== null && offAt < openedAt) throw new Refusal('off-before-open', { openedAt, offAt });
}
