import { takeSscc } from '../drying/take-sscc.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { placeOf } from '../plant/plant-facts.js';
import type { FormatRow } from '../plant/plant-rows.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { packsIn } from '../packing/run-ranges.js';
import type { LotShare } from './lay-packs.js';
import { issuePalletLabel } from './pallet-label-paper.js';
import { PalletContent } from './pallet-content.entity.js';
import { PalletMove } from './pallet-move.entity.js';
import { PalletState } from './pallet-state.entity.js';
import { Pallet } from './pallet.entity.js';

/** A pallet to be added. What stands on it has been checked. */
export interface PalletDraft {
  readonly nextId: () => string;
  readonly siteId: string;
  /** A number set aside that the pallet bears already; null: the next of the site's series. */
  readonly sscc?: string | null;
  readonly format: FormatRow;
  readonly shares: readonly LotShare[];
  readonly builtAt: Instant;
  readonly placeId: string | null;
  /** Whether a label is issued with it. */
  readonly label: boolean;
  readonly recordedAt: Instant;
  readonly personId: string | null;
}

export interface PalletAnswer {
  readonly id: string;
  readonly sscc: string;
  readonly packCount: number;
  readonly isFull: boolean;
  readonly labelPaperId: string | null;
}

/** Gives a pallet its SSCC and writes what stands on it. Its label is a job after the commit. */
export async function addPallet(tx: Tx, draft: PalletDraft): Promise<PalletAnswer> {
  const { nextId, siteId, format, builtAt } = draft;
  const id = nextId();
  const packCount = packsIn(draft.shares);
  const isFull = packCount === format.packsPerPallet;
  const sscc = draft.sscc ?? (await takeSscc(tx, siteId));
  await insertPallet(tx, { id, siteId, sscc, formatId: format.id, builtAt, packCount, isFull, voidedBy: null });
  await tx.insert(
    PalletContent,
    draft.shares.map((share) => ({ id: nextId(), palletId: id, ...share, voidedBy: null })),
  );
  const placeId = draft.placeId === null ? null : await movedTo(tx, draft, id, draft.placeId);
  await tx.insert(PalletState, { palletId: id, status: 'in-store', placeId, changedAt: builtAt });
  const labelPaperId = draft.label ? await issuePalletLabel(tx, draft, id) : null;
  return { id, sscc, packCount, isFull, labelPaperId };
}

/** @throws {Refusal} `sscc-used-already` where two were given the same number at once */
async function insertPallet(tx: Tx, pallet: Pallet): Promise<void> {
  try {
    await tx.insert(Pallet, pallet);
  } catch (error) {
    throw isTakenKey(error) ? new Refusal('sscc-used-already', { sscc: pallet.sscc }) : error;
  }
}

async function movedTo(tx: Tx, draft: PalletDraft, palletId: string, placeId: string): Promise<string> {
  await sitePlaceOf(tx, draft.siteId, placeId);
  await tx.insert(PalletMove, { id: draft.nextId(), palletId, placeId, movedAt: draft.builtAt, voidedBy: null });
  return placeId;
}

/** @throws {NotFound} `store-place` where it is of another site too */
export async function sitePlaceOf(tx: Tx, siteId: string, placeId: string): Promise<{ id: string; code: string }> {
  const place = await placeOf(tx, placeId);
  if (place.siteId !== siteId) throw new NotFound('store-place', placeId);
  return place;
}
