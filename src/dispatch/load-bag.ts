import { Injectable } from '@nestjs/common';
import { changeBagState } from '../drying/change-bag-state.js';
import { findBag, type BagRow } from '../drying/bulk-bags.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Instant } from '../platform/clock.js';
import { onlyRow } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { gradeOf, scaleStandingAt } from '../plant/plant-facts.js';
import { addLoading, refuseBeyondOrder, refuseLoaded } from './add-loading.js';
import type { DeliveryRow } from './delivery-rows.js';
import { progressOf } from './line-progress.js';
import type { LoadAnswer } from './load-pallet.js';
import { passedVehicle, takeOpenDelivery } from './take-delivery.js';
import { refuseStopped, refuseUnfit, standingsOfBags } from './unit-standing.js';

/** A whole bag is scanned onto the vehicle. */
export interface LoadBagForm {
  readonly bag: string;
  readonly loadedAt?: string | null;
  readonly reason?: string | null;
}

/**
 * A whole bag goes onto the vehicle, sold by its weight.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `vehicle-not-checked`, `vehicle-failed-check`,
 * `already-loaded`, `loaded-elsewhere`, `already-dispatched`, `bag-not-whole`, `bag-weight-doubtful`,
 * `scale-not-for-trade`, `before-it-was-filled`, `not-ordered`, `more-than-ordered`, `unit-waits`, `unit-on-hold`,
 * `unit-rejected`.
 */
@Injectable()
export class LoadBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: LoadBagForm): Promise<LoadAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.loadedAt ?? null, change.recordedAt, reason);
      const taken = await takeOpenDelivery(tx, siteId, delivery);
      await passedVehicle(tx, taken);
      const bag = await findBag(tx, siteId, form.bag);
      await refuseBag(tx, taken, bag, occurredAt);
      const { remainingGrams } = bag;
      const to = { status: 'loaded', remainingGrams, placeId: taken.id, at: occurredAt } as const;
      const isTaken = await changeBagState(tx, bag.id, { status: ['full'], remainingGrams }, to);
      // Somebody else was first: tipped, or on another vehicle.
      if (!isTaken) throw new Refusal('loaded-elsewhere', { unit: bag.number, order: null, note: null });
      const loadingId = this.ids.next();
      const draft = { id: loadingId, delivery: taken, palletId: null, bagId: bag.id, loadedAt: occurredAt };
      const { place } = await addLoading(tx, draft);
      return {
        answer: { loadingId, place, lines: await progressOf(tx, taken.id) },
        entry: {
          action: 'load-bag',
          subject: { kind: 'delivery', id: taken.id },
          touches: [{ kind: 'bulk-bag', id: bag.id }],
          after: { loadingId, bag: bag.number, netGrams: bag.netGrams, place },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

async function refuseBag(tx: Tx, delivery: DeliveryRow, bag: BagRow, at: Instant): Promise<void> {
  await refuseLoaded(tx, delivery, { name: bag.number, palletId: null, bagId: bag.id });
  if (bag.status !== 'full') throw new Refusal('bag-not-whole', { bag: bag.number, status: bag.status });
  if (bag.filledAt !== null && at < bag.filledAt) {
    throw new Refusal('before-it-was-filled', { bag: bag.number, filledAt: bag.filledAt });
  }
  await refuseUnsaleableWeight(tx, bag);
  const standing = (await standingsOfBags(tx, [bag])).get(bag.id);
  if (standing === undefined) throw new Error(`no standing of bag ${bag.id}`);
  const line = (await progressOf(tx, delivery.id)).find((one) => one.gradeId === standing.gradeId);
  const goods = (await gradeOf(tx, standing.gradeId)).name;
  refuseStopped(bag.number, standing);
  refuseBeyondOrder(line, { name: bag.number, goods, count: 1 });
  refuseUnfit(bag.number, standing);
}

/**
 * Sold by weight only from a scale that was in date, right, and verified for trade when it weighed the bag.
 *
 * @throws {Refusal} `bag-weight-doubtful`, `scale-not-for-trade`
 */
async function refuseUnsaleableWeight(tx: Tx, bag: BagRow): Promise<void> {
  const weighing = onlyRow(
    await tx.sql<{ scaleId: string; weighedAt: Instant }>`
      SELECT "scale_id" AS "scaleId", "weighed_at" AS "weighedAt" FROM "bag_weighing"
      WHERE "bag_id" = ${bag.id} AND "voided_by" IS NULL AND "occasion" <> 'weighed-back'
      ORDER BY "weighed_at" DESC, "id" DESC LIMIT 1`,
  );
  if (weighing === null || bag.isDoubtful) throw new Refusal('bag-weight-doubtful', { bag: bag.number });
  const { scale, isVerifiedForTrade } = await scaleStandingAt(tx, weighing.scaleId, weighing.weighedAt);
  if (!isVerifiedForTrade) throw new Refusal('scale-not-for-trade', { bag: bag.number, scale: scale.code });
}
