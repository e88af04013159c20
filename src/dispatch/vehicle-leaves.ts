import { Injectable } from '@nestjs/common';
import { changeBagState } from '../drying/change-bag-state.js';
import { bagsOf } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { raisePoint } from '../open-points/raise-point.js';
import { changePalletState } from '../pallets/change-pallet-state.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { unitsTouched } from './close-delivery.js';
import { loadedOn } from './deliveries.js';
import { DeliveryDeparture } from './delivery-departure.entity.js';
import type { DeliveryRow, LoadedRow } from './delivery-rows.js';
import { DeliveryState } from './delivery-state.entity.js';
import type { VehicleLeavesForm } from './delivery.form.js';
import { takeDelivery } from './take-delivery.js';
import { refuseUnfitUnits, unfitUnits } from './units-on.js';

export interface LeaveAnswer {
  readonly id: string;
  readonly leftAt: string;
}

/**
 * The vehicle leaves. Before that every unit is looked at for the last time; once it is gone, that is recorded whatever
 * was on, and quality is told.
 * Refusals: `papers-not-printed`, `delivery-has-left`, `delivery-is-cancelled`, `left-before-closing`,
 * `units-may-not-leave`, and those of the time.
 */
@Injectable()
export class VehicleLeaves {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: VehicleLeavesForm): Promise<LeaveAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.leftAt ?? null, change.recordedAt, reason);
      const taken = await takeDelivery(tx, asked.actor.siteId, delivery);
      refuseUnclosed(taken, occurredAt);
      const loaded = await loadedOn(tx, taken.id);
      const isGone = form.isGone ?? false;
      if (isGone) await this.pointAtUnfit(tx, taken, { loaded, at: change.recordedAt });
      else await refuseUnfitUnits(tx, loaded, 'units-may-not-leave');
      await leave(tx, taken, loaded, occurredAt);
      const [id, deliveryId] = [this.ids.next(), taken.id];
      await tx.insert(DeliveryDeparture, { id, deliveryId, leftAt: occurredAt, voidedBy: null });
      await tx.update(DeliveryState, { deliveryId }, { status: 'left' });
      return {
        answer: { id, leftAt: occurredAt },
        entry: {
          action: 'vehicle-leaves',
          subject: { kind: 'delivery', id: deliveryId },
          touches: unitsTouched(loaded),
          after: { note: taken.noteNumber, unitCount: loaded.length, isGone },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  /** What has happened is recorded, even if it should not have: whoever calls the customer has to know. */
  private async pointAtUnfit(
    tx: Tx,
    delivery: DeliveryRow,
    { loaded, at }: { readonly loaded: readonly LoadedRow[]; readonly at: string },
  ): Promise<void> {
    const unfit = await unfitUnits(tx, loaded);
    if (unfit.length === 0) return;
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId: delivery.siteId,
      cause: 'left-with-unfit-units',
      facts: { order: delivery.orderNumber, units: unfit.map((unit) => unit.name).join(', ') },
      subject: { kind: 'delivery', id: delivery.id },
      role: 'quality-officer',
      at,
    });
  }
}

function refuseUnclosed({ status, orderNumber, noteNumber, closedAt }: DeliveryRow, at: string): void {
  const facts = { order: orderNumber, note: noteNumber };
  if (status === 'left') throw new Refusal('delivery-has-left', facts);
  if (status === 'cancelled') throw new Refusal('delivery-is-cancelled', facts);
  if (status !== 'closed' || closedAt === null) throw new Refusal('papers-not-printed', facts);
  if (at < closedAt) throw new Refusal('left-before-closing', { ...facts, closedAt });
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
