import type { Asked, Change, JournalAction } from '../journal/entry-draft.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { formatOf } from '../plant/plant-facts.js';
import { addPallet, type PalletAnswer } from './add-pallet.js';
import { changePalletState } from './change-pallet-state.js';
import type { LotShare } from './lay-packs.js';
import { PalletDescent } from './pallet-descent.entity.js';
import { PalletTakenApart } from './pallet-taken-apart.entity.js';
import type { PalletRow } from './pallet-rows.js';

/** Pallets that end, and those that come of them. */
export interface Replacement {
  readonly asked: Asked;
  readonly change: Change;
  readonly nextId: () => string;
  readonly how: PalletDescent['how'];
  readonly parents: readonly PalletRow[];
  readonly children: readonly { readonly shares: readonly LotShare[]; readonly placeId: string | null }[];
  readonly happenedAt: Instant;
  readonly reason: string;
  readonly label: boolean;
}

/**
 * Takes pallets apart and builds others of their packs: the SSCC changes, the history does not.
 *
 * @throws {Refusal} `pallet-not-in-store`, `before-it-was-built`
 */
export async function replacePallets(tx: Tx, replacement: Replacement): Promise<readonly PalletAnswer[]> {
  const { nextId, parents, happenedAt, how, asked } = replacement;
  const [first] = parents;
  if (first === undefined) throw new RangeError('a replacement of no pallet');
  for (const parent of parents) {
    await endPallet(tx, { pallet: parent, id: nextId(), reason: replacement.reason, takenApartAt: happenedAt });
  }
  const format = await formatOf(tx, first.formatId);
  const made: PalletAnswer[] = [];
  for (const { shares, placeId } of replacement.children) {
    const child = await addPallet(tx, {
      nextId,
      siteId: first.siteId,
      format,
      shares,
      builtAt: happenedAt,
      placeId,
      label: replacement.label,
      recordedAt: replacement.change.recordedAt,
      personId: asked.actor.personId,
    });
    made.push(child);
    await tx.insert(
      PalletDescent,
      parents.map((parent) => ({
        id: nextId(),
        parentId: parent.id,
        childId: child.id,
        how,
        happenedAt,
        voidedBy: null,
      })),
    );
  }
  return made;
}

/** A pallet is no more. */
export async function endPallet(
  tx: Tx,
  end: { readonly pallet: PalletRow; readonly id: string; readonly reason: string; readonly takenApartAt: Instant },
): Promise<void> {
  const { pallet, takenApartAt } = end;
  if (takenApartAt < pallet.builtAt) {
    throw new Refusal('before-it-was-built', { pallet: pallet.sscc, builtAt: pallet.builtAt });
  }
  const to = { status: 'taken-apart', placeId: null, at: takenApartAt } as const;
  const isTaken = await changePalletState(tx, pallet.id, { status: ['in-store'] }, to);
  if (!isTaken) throw new Refusal('pallet-not-in-store', { pallet: pallet.sscc, status: pallet.status });
  await tx.insert(PalletTakenApart, {
    id: end.id,
    palletId: pallet.id,
    reason: end.reason,
    takenApartAt,
    voidedBy: null,
  });
}

/** What the journal says of a replacement. */
export function replacementEntry(replacement: Replacement, action: JournalAction, made: readonly PalletAnswer[]) {
  const [first, ...others] = replacement.parents;
  if (first === undefined) throw new RangeError('a replacement of no pallet');
  return {
    action,
    subject: { kind: 'pallet', id: first.id },
    touches: [...others, ...made].map(({ id }) => ({ kind: 'pallet', id })),
    before: { pallets: replacement.parents.map(({ sscc, packCount }) => ({ sscc, packCount })) },
    after: { pallets: made.map(({ id, sscc, packCount }) => ({ id, sscc, packCount })) },
    reason: replacement.reason,
    occurredAt: replacement.happenedAt,
  };
}
