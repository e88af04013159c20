import { bagOf } from '../drying/bulk-bags.js';
import { BagWeighing } from '../drying/bag-weighing.entity.js';
import { changeBagState } from '../drying/change-bag-state.js';
import type { Change } from '../journal/entry-draft.js';
import { voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { nameOf } from './end-tip.js';
import { TipCandidate } from './tip-candidate.entity.js';
import { TipOff } from './tip-off.entity.js';
import { Tip } from './tip.entity.js';
import { tipsOfBag, type TipRow } from './tips.js';

/**
 * Makes a tip void, with its end and its candidates. The bag goes back to what it was before.
 *
 * @throws {Refusal} `already-corrected`, `bag-went-on` (it was tipped or loaded since: correct that first)
 */
export async function voidTip(tx: Tx, tip: TipRow, change: Change): Promise<void> {
  await voidTipRows(tx, tip, change);
  if (tip.weighingId !== null) await voidFact(tx, BagWeighing, tip.weighingId, change);
  if (tip.bagId !== null) await restoreBag(tx, tip, { bagId: tip.bagId, at: change.recordedAt });
}

/** The same without touching the bag: for a record of the same tip that takes this one's place. */
export async function voidTipRows(tx: Tx, tip: TipRow, change: Change): Promise<void> {
  await voidFact(tx, Tip, tip.id, change);
  if (tip.offId !== null) await voidFact(tx, TipOff, tip.offId, change);
  for (const candidate of await tx.find(TipCandidate, { tipId: tip.id, voidedBy: null })) {
    await voidFact(tx, TipCandidate, candidate.id, change);
  }
}

async function restoreBag(tx: Tx, tip: TipRow, { bagId, at }: { bagId: string; at: string }): Promise<void> {
  const rest = tip.restGrams ?? 0;
  const left =
    tip.offAt === null
      ? ({ status: ['hanging'] } as const)
      : ({ status: [rest > 0 ? 'opened' : 'empty'], remainingGrams: rest } as const);
  const earlier = (await tipsOfBag(tx, bagId)).some(({ restGrams }) => (restGrams ?? 0) > 0);
  const to = { status: earlier ? 'opened' : 'full', remainingGrams: tip.netGrams, at } as const;
  const isRestored = await changeBagState(tx, bagId, left, { ...to, placeId: await lastPlaceOf(tx, bagId) });
  if (isRestored) return;
  const { number, status } = await bagOf(tx, bagId);
  throw new Refusal('bag-went-on', { bag: number, status, tip: nameOf(tip) });
}

/** Where a bag was last put in the store; null where nobody said. */
async function lastPlaceOf(tx: Tx, bagId: string): Promise<string | null> {
  const [row] = await tx.sql<{ placeId: string }>`
    SELECT "place_id" AS "placeId" FROM "bag_move" WHERE "bag_id" = ${bagId} AND "voided_by" IS NULL
    ORDER BY "moved_at" DESC, "id" DESC LIMIT 1`;
  return row?.placeId ?? null;
}
