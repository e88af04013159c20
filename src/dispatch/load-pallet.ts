import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { changePalletState } from '../pallets/change-pallet-state.js';
import { findPallet } from '../pallets/pallet-list.js';
import type { PalletRow } from '../pallets/pallet-rows.js';
import { standingOfPallet } from '../pallets/pallet-standing.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { addLoading, refuseBeyondOrder, refuseLoaded } from './add-loading.js';
import type { DeliveryRow, LineProgress } from './delivery-rows.js';
import { progressOf } from './line-progress.js';
import { passedVehicle, takeOpenDelivery } from './take-delivery.js';
import { refuseStopped, refuseUnfit } from './unit-standing.js';

/** A pallet is scanned onto the vehicle. */
export interface LoadPalletForm {
  readonly pallet: string;
  readonly loadedAt?: string | null;
  readonly reason?: string | null;
}

/** What is on after it, line by line. */
export interface LoadAnswer {
  readonly loadingId: string;
  readonly place: number;
  readonly lines: readonly LineProgress[];
}

/**
 * A pallet goes onto the vehicle of a delivery.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `vehicle-not-checked`, `vehicle-failed-check`,
 * `already-loaded`, `loaded-elsewhere`, `already-dispatched`, `pallet-not-in-store`, `before-it-was-built`,
 * `not-ordered`, `more-than-ordered`, `unit-waits`, `unit-on-hold`, `unit-rejected`.
 */
@Injectable()
export class LoadPallet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: LoadPalletForm): Promise<LoadAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.loadedAt ?? null, change.recordedAt, reason);
      const taken = await takeOpenDelivery(tx, siteId, delivery);
      await passedVehicle(tx, taken);
      const pallet = await findPallet(tx, siteId, form.pallet);
      await refusePallet(tx, taken, pallet, occurredAt);
      const to = { status: 'loaded', placeId: taken.id, at: occurredAt } as const;
      const isTaken = await changePalletState(tx, pallet.id, { status: ['in-store'] }, to);
      // Somebody else was first: on a vehicle by now, or taken apart.
      if (!isTaken) throw new Refusal('loaded-elsewhere', { unit: pallet.sscc, order: null, note: null });
      const loadingId = this.ids.next();
      const draft = { id: loadingId, delivery: taken, palletId: pallet.id, bagId: null, loadedAt: occurredAt };
      const { place } = await addLoading(tx, draft);
      return {
        answer: { loadingId, place, lines: await progressOf(tx, taken.id) },
        entry: {
          action: 'load-pallet',
          subject: { kind: 'delivery', id: taken.id },
          touches: [{ kind: 'pallet', id: pallet.id }],
          after: { loadingId, sscc: pallet.sscc, packCount: pallet.packCount, place },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** What is cheap to know comes first; then what stops the pallet anywhere, and last what this delivery takes. */
async function refusePallet(tx: Tx, delivery: DeliveryRow, pallet: PalletRow, at: string): Promise<void> {
  await refuseLoaded(tx, delivery, { name: pallet.sscc, palletId: pallet.id, bagId: null });
  if (pallet.status !== 'in-store') {
    throw new Refusal('pallet-not-in-store', { pallet: pallet.sscc, status: pallet.status });
  }
  if (at < pallet.builtAt) throw new Refusal('before-it-was-built', { pallet: pallet.sscc, builtAt: pallet.builtAt });
  const line = (await progressOf(tx, delivery.id)).find((one) => one.formatId === pallet.formatId);
  const standing = await standingOfPallet(tx, pallet.id);
  refuseStopped(pallet.sscc, standing);
  refuseBeyondOrder(line, { name: pallet.sscc, goods: pallet.formatName, count: pallet.packCount });
  refuseUnfit(pallet.sscc, standing);
}
