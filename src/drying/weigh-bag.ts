import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import { scaleStandingAt } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { BagWeighing } from './bag-weighing.entity.js';

/** A bag on a scale, as it is to be recorded. `id` comes from `Ids`. */
export interface WeighingDraft {
  readonly id: string;
  readonly bagId: string;
  readonly occasion: BagWeighing['occasion'];
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly isPresetTare: boolean;
  readonly scaleId: string;
  readonly weighedAt: string;
  readonly personId: string | null;
  /** It is so already: a bag over its safe load is recorded, and the caller opens a point. */
  readonly hasHappened?: boolean;
}

export interface WeighingAnswer {
  readonly netGrams: number;
  readonly isDoubtful: boolean;
  readonly isOverSafeLoad: boolean;
}

/**
 * Records a weighing of a bag. The bag itself counts towards its safe load: the hoist carries both.
 *
 * @throws {Refusal} `gross-below-tare`, `net-not-above-zero`, `over-safe-load`
 * @throws {NotFound} `scale`
 */
export async function addWeighing(tx: Tx, draft: WeighingDraft): Promise<WeighingAnswer> {
  const { hasHappened = false, ...weighing } = draft;
  const { number, safeLoadGrams } = await labelOf(tx, draft.bagId);
  const { grossGrams, tareGrams } = draft;
  if (grossGrams < tareGrams) throw new Refusal('gross-below-tare', { bag: number, grossGrams, tareGrams });
  if (grossGrams === tareGrams) throw new Refusal('net-not-above-zero', { bag: number, grossGrams, tareGrams });
  const isOverSafeLoad = grossGrams > safeLoadGrams;
  if (isOverSafeLoad && !hasHappened) throw new Refusal('over-safe-load', { bag: number, grossGrams, safeLoadGrams });
  const standing = await scaleStandingAt(tx, draft.scaleId, draft.weighedAt);
  const isDoubtful = standing.isOverdue || standing.hasFailed;
  const netGrams = grossGrams - tareGrams;
  await tx.insert(BagWeighing, { ...weighing, netGrams, isDoubtful, voidedBy: null });
  return { netGrams, isDoubtful, isOverSafeLoad };
}

async function labelOf(tx: Tx, bagId: string): Promise<{ number: string; safeLoadGrams: number }> {
  const [bag] = await tx.sql<{ number: string; safeLoadGrams: number }>`
    SELECT "number", "safe_load_grams" AS "safeLoadGrams" FROM "bulk_bag" WHERE "id" = ${bagId}`;
  if (bag === undefined) throw new NotFound('bulk-bag', bagId);
  return bag;
}

/** A weighing that has been added, and who asks what it means. */
export interface AddedWeighing extends WeighingAnswer {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly bagId: string;
  readonly bagNumber: string;
  readonly personId: string | null;
  readonly at: string;
}

/** Opens the points that a weighing calls for, and clears those that it settles. */
export async function pointAtWeighing(tx: Tx, added: AddedWeighing): Promise<void> {
  const { nextId, siteId, personId, at } = added;
  const subject = { kind: 'bulk-bag', id: added.bagId };
  const found = [
    { cause: 'weighed-on-doubtful-scale', isSo: added.isDoubtful },
    { cause: 'filled-over-safe-load', isSo: added.isOverSafeLoad },
  ];
  for (const { cause, isSo } of found) {
    if (isSo) {
      const facts = { bag: added.bagNumber };
      await raisePoint(tx, { id: nextId(), siteId, cause, facts, subject, role: 'quality-officer', at });
    } else {
      await clearPoints(tx, { nextId, siteId, cause, subject, personId, at });
    }
  }
}
