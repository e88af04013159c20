import type { Change } from '../journal/entry-draft.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { putOff } from './put-tip.js';
import { TipCandidate } from './tip-candidate.entity.js';
import { Tip } from './tip.entity.js';
import { candidatesOfTip, type TipRow } from './tips.js';
import { voidTipRows } from './void-tip.js';

/** Where and when a tip truly was. */
export interface TipPlace {
  readonly periodId: string;
  readonly openedAt: Instant;
  readonly offAt: Instant | null;
  readonly isLate: boolean;
}

/** Records the same tip at another time, or in another hopper period; the bag is not touched. Answers the new tip's id. */
export async function moveTip(
  tx: Tx,
  tip: TipRow,
  to: TipPlace,
  { change, nextId }: { readonly change: Change; readonly nextId: () => string },
): Promise<string> {
  const candidateIds = await candidatesOfTip(tx, tip.id);
  await voidTipRows(tx, tip, change);
  const id = nextId();
  const { siteId, source, bagId, binId, netGrams, identifiedBy, secondPersonId, hasHappened } = tip;
  const { periodId, openedAt, offAt, isLate } = to;
  await tx.insert(Tip, {
    ...{ id, siteId, periodId, source, bagId, binId, netGrams, openedAt, identifiedBy, secondPersonId },
    ...{ hasHappened, isLate, voidedBy: null },
  });
  await tx.insert(
    TipCandidate,
    candidateIds.map((candidateId) => ({ id: nextId(), tipId: id, bagId: candidateId, voidedBy: null })),
  );
  const { restGrams, weighingId } = tip;
  if (offAt !== null)
    await putOff(tx, id, { id: nextId(), offAt, restGrams: restGrams ?? 0, weighingId, placeId: null });
  return id;
}
