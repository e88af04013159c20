import { Injectable } from '@nestjs/common';
import { changeBagState } from '../drying/change-bag-state.js';
import { bagsOf } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { changePalletState } from '../pallets/change-pallet-state.js';
import { palletsOf } from '../pallets/pallet-list.js';
import { standingsOfPallets } from '../pallets/pallet-standing.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { loadedOn } from './deliveries.js';
import { DeliveryClose } from './delivery-close.entity.js';
import { DeliveryState } from './delivery-state.entity.js';
import type { DeliveryRow, LoadedRow } from './delivery-rows.js';
import type { CloseDeliveryForm } from './delivery.form.js';
import { issueNote } from './issue-note.js';
import { progressOf } from './line-progress.js';
import { passedVehicle, takeOpenDelivery } from './take-delivery.js';
import { refuseUnfit, standingsOfBags } from './unit-standing.js';

export interface CloseAnswer {
  readonly id: string;
  readonly noteNumber: string;
  readonly paperId: string;
}

/**
 * Loading is done: the walk-round count agrees, every unit may still go, the note is numbered.
 * Refusals: `delivery-is-closed`, `delivery-is-cancelled`, `vehicle-not-checked`, `vehicle-failed-check`,
 * `nothing-loaded`, `closed-before-loading`, `blind-count-differs`, `short-reason-needed`, `unit-waits`,
 * `unit-on-hold`, `unit-rejected`.
 */
@Injectable()
export class CloseDelivery {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: CloseDeliveryForm): Promise<CloseAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.closedAt ?? null, change.recordedAt, reason);
      const taken = await takeOpenDelivery(tx, siteId, delivery);
      const check = await passedVehicle(tx, taken);
      const loaded = await loadedOn(tx, taken.id);
      refuseOddCount(taken, loaded, form.blindCount, occurredAt);
      const shortReason = await shortReasonOf(tx, taken, form.shortReason ?? null);
      await refuseUnfitUnits(tx, loaded);
      await leave(tx, taken, loaded, occurredAt);
      const { seal } = form;
      const remarks = form.remarks ?? null;
      const { paperId, number } = await issueNote(tx, {
        nextId: () => this.ids.next(),
        delivery: taken,
        check,
        seal,
        shortReason,
        remarks,
        closedAt: occurredAt,
        issuedAt: change.recordedAt,
        personId,
      });
      const id = this.ids.next();
      const { blindCount } = form;
      const closed = {
        id,
        deliveryId: taken.id,
        seal,
        shortReason,
        remarks,
        blindCount,
        paperId,
        closedAt: occurredAt,
      };
      await tx.insert(DeliveryClose, { ...closed, voidedBy: null });
      await tx.update(DeliveryState, { deliveryId: taken.id }, { status: 'closed' });
      return {
        answer: { id, noteNumber: number, paperId },
        entry: {
          action: 'close-delivery',
          subject: { kind: 'delivery', id: taken.id },
          touches: [...unitsTouched(loaded), { kind: 'paper', id: paperId }],
          after: { note: number, seal, blindCount, unitCount: loaded.length, isShort: shortReason !== null },
          reason: reason ?? shortReason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** The units of a delivery as the journal names them. */
export function unitsTouched(loaded: readonly LoadedRow[]): readonly { readonly kind: string; readonly id: string }[] {
  return loaded.map((row) =>
    row.palletId === null ? { kind: 'bulk-bag', id: row.bagId ?? '' } : { kind: 'pallet', id: row.palletId },
  );
}

/** The count is blind: the refusal does not tell what it should have been. */
function refuseOddCount(delivery: DeliveryRow, loaded: readonly LoadedRow[], blindCount: number, at: string): void {
  if (loaded.length === 0) throw new Refusal('nothing-loaded', { order: delivery.orderNumber });
  const last = loaded.reduce((latest, row) => (row.loadedAt > latest ? row.loadedAt : latest), '');
  if (at < last) throw new Refusal('closed-before-loading', { order: delivery.orderNumber, lastAt: last });
  if (blindCount !== loaded.length) throw new Refusal('blind-count-differs', { counted: blindCount });
}

/** A reason only where something is short; one that is given for nothing is dropped. */
async function shortReasonOf(tx: Tx, delivery: DeliveryRow, given: string | null): Promise<string | null> {
  const short = (await progressOf(tx, delivery.id)).filter((line) => line.leftCount > 0);
  if (short.length === 0) return null;
  if (given !== null) return given;
  throw new Refusal('short-reason-needed', {
    lines: short.map((line) => `${line.name}: ${line.leftCount}`).join(', '),
  });
}

/** Every unit is looked at once more: a hold may have been placed since it was scanned. */
async function refuseUnfitUnits(tx: Tx, loaded: readonly LoadedRow[]): Promise<void> {
  const palletIds = loaded.flatMap((row) => row.palletId ?? []);
  const names = new Map((await palletsOf(tx, palletIds)).map((pallet) => [pallet.id, pallet.sscc]));
  for (const [palletId, standing] of await standingsOfPallets(tx, palletIds)) {
    refuseUnfit(names.get(palletId) ?? palletId, standing);
  }
  const bags = await bagsOf(
    tx,
    loaded.flatMap((row) => row.bagId ?? []),
  );
  const standings = await standingsOfBags(tx, bags);
  for (const bag of bags) {
    const standing = standings.get(bag.id);
    if (standing !== undefined) refuseUnfit(bag.number, standing);
  }
}

async function leave(tx: Tx, delivery: DeliveryRow, loaded: readonly LoadedRow[], at: string): Promise<void> {
  const placeId = delivery.id;
  for (const { palletId } of loaded) {
    if (palletId === null) continue;
    const isGone = await changePalletState(tx, palletId, { status: ['loaded'] }, { status: 'dispatched', placeId, at });
    if (!isGone) throw new Refusal('not-on-this-delivery', { unit: palletId, order: delivery.orderNumber });
  }
  const bags = await bagsOf(
    tx,
    loaded.flatMap((row) => row.bagId ?? []),
  );
  for (const { id, number, remainingGrams } of bags) {
    const to = { status: 'dispatched', remainingGrams, placeId, at } as const;
    const isGone = await changeBagState(tx, id, { status: ['loaded'] }, to);
    if (!isGone) throw new Refusal('not-on-this-delivery', { unit: number, order: delivery.orderNumber });
  }
}
