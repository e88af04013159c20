import { Injectable } from '@nestjs/common';
import { BagMove } from '../drying/bag-move.entity.js';
import { changeBagState } from '../drying/change-bag-state.js';
import { findBag } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { sitePlaceOf } from '../pallets/add-pallet.js';
import { changePalletState } from '../pallets/change-pallet-state.js';
import { findPallet } from '../pallets/pallet-list.js';
import { PalletMove } from '../pallets/pallet-move.entity.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { loadedOn } from './deliveries.js';
import { DeliveryState } from './delivery-state.entity.js';
import type { LineProgress } from './delivery-rows.js';
import { progressOf } from './line-progress.js';
import type { UnloadUnitForm } from './loading.form.js';
import { oneUnit, type AskedUnit } from './one-unit.js';
import { takeOpenDelivery } from './take-delivery.js';
import { Unloading } from './unloading.entity.js';

export interface UnloadAnswer {
  readonly unloadingId: string;
  readonly lines: readonly LineProgress[];
}

/**
 * A pallet or a bag comes off again before the delivery is closed, and is put at a place of the store where one is given.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `not-on-this-delivery`; not found:
 * store-place.
 */
@Injectable()
export class UnloadUnit {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: UnloadUnitForm): Promise<UnloadAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const taken = await takeOpenDelivery(tx, asked.actor.siteId, delivery);
      const unit = await unitOf(tx, asked.actor.siteId, oneUnit(form));
      const loaded = (await loadedOn(tx, taken.id)).find((row) => (row.palletId ?? row.bagId) === unit.id);
      if (loaded === undefined)
        throw new Refusal('not-on-this-delivery', { unit: unit.name, order: taken.orderNumber });
      const placeId = form.placeId ?? null;
      if (placeId !== null) await sitePlaceOf(tx, asked.actor.siteId, placeId);
      await this.takeOff(tx, unit, { placeId, at: change.recordedAt });
      const unloadingId = this.ids.next();
      const { reason } = form;
      const at = change.recordedAt;
      await tx.insert(Unloading, {
        id: unloadingId,
        loadingId: loaded.loadingId,
        reason,
        unloadedAt: at,
        voidedBy: null,
      });
      await tx.update(DeliveryState, { deliveryId: taken.id }, { loadedCount: taken.loadedCount - 1 });
      return {
        answer: { unloadingId, lines: await progressOf(tx, taken.id) },
        entry: {
          action: 'unload',
          subject: { kind: 'delivery', id: taken.id },
          touches: [{ kind: unit.kind, id: unit.id }],
          before: { loadingId: loaded.loadingId, place: loaded.place },
          after: { unloadingId, unit: unit.name, placeId },
          reason,
        },
      };
    });
  }

  private async takeOff(
    tx: Tx,
    unit: FoundUnit,
    to: { readonly placeId: string | null; readonly at: string },
  ): Promise<void> {
    const { remainingGrams } = unit;
    const isPallet = unit.kind === 'pallet';
    const isOff = isPallet
      ? await changePalletState(tx, unit.id, { status: ['loaded'] }, { status: 'in-store', ...to })
      : await changeBagState(tx, unit.id, { status: ['loaded'] }, { status: 'full', remainingGrams, ...to });
    if (!isOff) throw new Refusal('not-on-this-delivery', { unit: unit.name, order: null });
    if (to.placeId === null) return;
    const [id, movedAt, placeId] = [this.ids.next(), to.at, to.placeId];
    if (isPallet) await tx.insert(PalletMove, { id, palletId: unit.id, placeId, movedAt, voidedBy: null });
    else await tx.insert(BagMove, { id, bagId: unit.id, placeId, movedAt, personId: null, voidedBy: null });
  }
}

interface FoundUnit {
  readonly kind: 'pallet' | 'bulk-bag';
  readonly id: string;
  readonly name: string;
  /** Of a bag; 0 for a pallet. */
  readonly remainingGrams: number;
}

async function unitOf(tx: Tx, siteId: string, asked: AskedUnit): Promise<FoundUnit> {
  if (asked.kind === 'pallet') {
    const { id, sscc } = await findPallet(tx, siteId, asked.text);
    return { kind: 'pallet', id, name: sscc, remainingGrams: 0 };
  }
  const { id, number, remainingGrams } = await findBag(tx, siteId, asked.text);
  return { kind: 'bulk-bag', id, name: number, remainingGrams };
}
