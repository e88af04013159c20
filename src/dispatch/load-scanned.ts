import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { canonicalText } from '../platform/canonical-text.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { loadedOn } from './deliveries.js';
import { findUnit, type ScannedUnit } from './find-unit.js';
import { LoadBag } from './load-bag.js';
import { LoadPallet } from './load-pallet.js';
import { RefusedScan } from './refused-scan.entity.js';
import { takeDelivery } from './take-delivery.js';

export interface ScanAnswer {
  readonly unit: ScannedUnit;
  readonly place: number;
}

/** Refusals that are about the unit, and so worth keeping; the others are about the delivery or its vehicle. */
const aboutUnits: ReadonlySet<string> = new Set([
  'scan-is-no-unit',
  'loaded-elsewhere',
  'already-dispatched',
  'pallet-not-in-store',
  'bag-not-whole',
  'bag-weight-doubtful',
  'scale-not-for-trade',
  'not-ordered',
  'more-than-ordered',
  'unit-waits',
  'unit-on-hold',
  'unit-rejected',
]);

/**
 * Whatever is scanned at the dock goes onto the vehicle if it may. The same scan twice does nothing the second time. A unit
 * that may not go is refused, and the refusal is kept.
 * Refusals: `scan-is-no-unit`, and those of loading a pallet or a bag.
 */
@Injectable()
export class LoadScanned {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    private readonly loadPallet: LoadPallet,
    private readonly loadBag: LoadBag,
  ) {}

  async execute(asked: Asked, delivery: string, form: { readonly scan: string }): Promise<ScanAnswer> {
    try {
      const unit = await findUnit(this.reader, asked.actor.siteId, form.scan);
      return { unit, place: await this.load(asked, delivery, unit) };
    } catch (error) {
      if (error instanceof Refusal && aboutUnits.has(error.code)) await this.keep(asked, delivery, form.scan, error);
      throw error;
    }
  }

  private async load(asked: Asked, delivery: string, unit: ScannedUnit): Promise<number> {
    try {
      const { place } =
        unit.kind === 'pallet'
          ? await this.loadPallet.execute(asked, delivery, { pallet: unit.id })
          : await this.loadBag.execute(asked, delivery, { bag: unit.id });
      return place;
    } catch (error) {
      if (!(error instanceof Refusal) || error.code !== 'already-loaded') throw error;
      const on = (await loadedOn(this.reader, delivery)).find((row) => (row.palletId ?? row.bagId) === unit.id);
      if (on === undefined) throw error;
      return on.place;
    }
  }

  /** The same unit refused for the same reason again is not kept twice. */
  private async keep(asked: Asked, delivery: string, scan: string, refusal: Refusal): Promise<void> {
    const scanned = scan.trim().slice(0, 200);
    const { code } = refusal;
    const kept = await this.reader.sql`
      SELECT "id" FROM "refused_scan" WHERE "delivery_id" = ${delivery} AND "scanned" = ${scanned}
        AND "code" = ${code} AND "voided_by" IS NULL LIMIT 1`;
    if (kept.length > 0) return;
    const route = `${asked.route} refused`;
    await this.changes.run({ ...asked, route, seen: null }, { delivery, scanned }, async (tx, change) => {
      const { id: deliveryId } = await takeDelivery(tx, asked.actor.siteId, delivery);
      const id = this.ids.next();
      const facts = canonicalText(refusal.facts);
      const refusedAt = change.recordedAt;
      await tx.insert(RefusedScan, { id, deliveryId, scanned, code, facts, refusedAt, voidedBy: null });
      return {
        answer: null,
        entry: {
          action: 'refuse-scan',
          subject: { kind: 'delivery', id: deliveryId },
          after: { refusedScanId: id, code, scanned },
        },
      };
    });
  }
}
