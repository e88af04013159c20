import { placeOf } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { BagMove } from './bag-move.entity.js';
import { changeBagState } from './change-bag-state.js';
import { addWeighing, pointAtWeighing, type WeighingAnswer } from './weigh-bag.js';

/** The end of filling: what the scale showed, and where the bag went. */
export interface FilledBag {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly bagId: string;
  readonly bagNumber: string;
  readonly fillStartedAt: string;
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly isPresetTare: boolean;
  readonly scaleId: string;
  readonly placeId: string | null;
  readonly filledAt: string;
  readonly personId: string | null;
  readonly hasHappened: boolean;
}

/**
 * Weighs a bag at the end of its filling: from here on it is `full`, may be moved, and may be tipped once quality says so.
 *
 * @throws {Refusal} `time-before-fill-start`, `bag-already-closed`, and those of `addWeighing`
 */
export async function closeFilledBag(tx: Tx, filled: FilledBag): Promise<WeighingAnswer> {
  const { bagId, bagNumber, filledAt, personId, placeId, nextId } = filled;
  if (filledAt < filled.fillStartedAt) {
    throw new Refusal('time-before-fill-start', { bag: bagNumber, startedAt: filled.fillStartedAt, filledAt });
  }
  const { grossGrams, tareGrams, isPresetTare, scaleId, hasHappened } = filled;
  const read = { grossGrams, tareGrams, isPresetTare, scaleId, hasHappened };
  const occasion = 'filled';
  const weighed = await addWeighing(tx, { ...read, id: nextId(), bagId, occasion, weighedAt: filledAt, personId });
  const to = { status: 'full', remainingGrams: weighed.netGrams, placeId, at: filledAt } as const;
  const isClosed = await changeBagState(tx, bagId, { status: ['filling'] }, to);
  if (!isClosed) throw new Refusal('bag-already-closed', { bag: bagNumber });
  if (placeId !== null) {
    await placeOf(tx, placeId);
    await tx.insert(BagMove, { id: nextId(), bagId, placeId, movedAt: filledAt, personId, voidedBy: null });
  }
  const { siteId } = filled;
  await pointAtWeighing(tx, { ...weighed, nextId, siteId, bagId, bagNumber, personId, at: filledAt });
  return weighed;
}
