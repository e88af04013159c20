import { Injectable } from '@nestjs/common';
import { changeBagState } from '../drying/change-bag-state.js';
import { bagOf } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { raisePoint } from '../open-points/raise-point.js';
import { changePalletState } from '../pallets/change-pallet-state.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { placeOf } from '../plant/plant-facts.js';
import { DeliveryReturn } from './delivery-return.entity.js';
import type { DeliveryRow } from './delivery-rows.js';
import type { TakeBackForm } from './return.form.js';
import { refuseMoreThanDelivered, unitsComingBack, type ComingBack } from './units-coming-back.js';
import { ReturnedUnit } from './returned-unit.entity.js';
import { takeDelivery } from './take-delivery.js';

export interface TakeBackAnswer {
  readonly id: string;
  readonly unitIds: readonly string[];
}

/**
 * Pallets, bags or loose packs of a delivery come back. They stand apart as *returned* until quality decides; the delivery
 * stays as it was, and nothing comes back that did not go.
 * Refusals: `not-left-yet`, `returned-before-leaving`, `return-words-needed`, `not-on-this-delivery`, `came-back-already`,
 * `lot-not-delivered`, `more-than-delivered`, `credit-over-returned`, `same-unit-twice`, those of the time; not found:
 * store-place, pallet, bulk-bag.
 */
@Injectable()
export class TakeBack {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: TakeBackForm): Promise<TakeBackAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.returnedAt ?? null, change.recordedAt, reason);
      const taken = await takeDelivery(tx, siteId, delivery);
      refuseUnsent(taken, form, occurredAt);
      const place = await placeOf(tx, form.placeId);
      if (place.siteId !== siteId) throw new NotFound('store-place', form.placeId);
      const units = await unitsComingBack(tx, taken, form.units);
      await refuseMoreThanDelivered(tx, taken, units);
      const id = this.ids.next();
      const { why, placeId } = form;
      const remarks = form.remarks ?? null;
      const back = { siteId, deliveryId: taken.id, why, remarks, placeId, returnedAt: occurredAt };
      await tx.insert(DeliveryReturn, { id, ...back, voidedBy: null });
      const unitIds = await this.putBack(tx, units, { returnId: id, placeId, at: occurredAt });
      await this.point(tx, taken, change.recordedAt);
      return {
        answer: { id, unitIds },
        entry: {
          action: 'take-back',
          subject: { kind: 'delivery', id: taken.id },
          touches: units.map(({ kind, id: unit }) => ({ kind, id: unit })),
          after: { returnId: id, why, place: place.code, units: units.map(inJournal) },
          reason: reason ?? remarks,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async putBack(
    tx: Tx,
    units: readonly ComingBack[],
    back: { readonly returnId: string; readonly placeId: string; readonly at: string },
  ): Promise<readonly string[]> {
    const { returnId, placeId, at } = back;
    const unitIds: string[] = [];
    for (const { kind, id, name, loadingId, unitCount, creditedCount } of units) {
      const isBack = await standsApart(tx, { kind, id, placeId, at });
      if (!isBack) throw new Refusal('came-back-already', { unit: name });
      const unitId = this.ids.next();
      const lotId = kind === 'lot' ? id : null;
      await tx.insert(ReturnedUnit, {
        id: unitId,
        returnId,
        loadingId,
        lotId,
        unitCount,
        creditedCount,
        voidedBy: null,
      });
      unitIds.push(unitId);
    }
    return unitIds;
  }

  /** Quality has to look at what came back; one point a delivery, however often something comes. */
  private async point(tx: Tx, { id, siteId, orderNumber }: DeliveryRow, at: string): Promise<void> {
    const subject = { kind: 'delivery', id };
    const facts = { order: orderNumber };
    const cause = 'return-waits';
    await raisePoint(tx, { id: this.ids.next(), siteId, cause, facts, subject, role: 'quality-officer', at });
  }
}

function inJournal({ kind, name, unitCount, creditedCount }: ComingBack): Record<string, string | number> {
  return { kind, name, unitCount, creditedCount };
}

function refuseUnsent(delivery: DeliveryRow, { why, remarks }: TakeBackForm, at: string): void {
  const { status, leftAt, orderNumber } = delivery;
  if (status !== 'left' || leftAt === null) throw new Refusal('not-left-yet', { order: orderNumber });
  if (at < leftAt) throw new Refusal('returned-before-leaving', { order: orderNumber, leftAt });
  if (why === 'other' && (remarks ?? null) === null) throw new Refusal('return-words-needed');
}

/** Loose packs have no state of their own: the row of the return is all there is of them. */
async function standsApart(
  tx: Tx,
  unit: { readonly kind: ComingBack['kind']; readonly id: string; readonly placeId: string; readonly at: string },
): Promise<boolean> {
  const { kind, id, placeId, at } = unit;
  if (kind === 'lot') return true;
  if (kind === 'pallet') {
    return changePalletState(tx, id, { status: ['dispatched'] }, { status: 'returned', placeId, at });
  }
  const { remainingGrams } = await bagOf(tx, id);
  return changeBagState(tx, id, { status: ['dispatched'] }, { status: 'returned', remainingGrams, placeId, at });
}
