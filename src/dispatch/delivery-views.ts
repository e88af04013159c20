import { bagsOf } from '../drying/bulk-bags.js';
import { contentsOf, palletsOf } from '../pallets/pallet-list.js';
import { computedGrossGrams } from '../pallets/pallet-rows.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { onlyRow } from '../platform/database/reading.js';
import type { VehicleCheckRules } from '../plant/rule-kinds.js';
import { checkPointsAt } from './check-vehicle.js';
import { findDelivery, loadedOn } from './deliveries.js';
import type { DeliveryRow, LineProgress, NoteRow, VehicleCheckRow } from './delivery-rows.js';
import { notesOf } from './issue-note.js';
import { progressOf } from './line-progress.js';
import { returnedUnitsOf, type ReturnedUnitRow } from './returns.js';
import { lastVehicleCheck } from './take-delivery.js';

/** A unit on a delivery as people know it. */
export interface UnitView {
  readonly kind: 'pallet' | 'bulk-bag';
  readonly id: string;
  /** SSCC of a pallet, short number of a bag. */
  readonly name: string;
  readonly goods: string;
  readonly lots: readonly string[];
  readonly packCount: number | null;
  readonly netGrams: number;
  /** Of a pallet computed, of a bag weighed. */
  readonly grossGrams: number;
  readonly place: number;
  readonly loadedAt: Instant;
}

/** A delivery as its single view shows it. */
export interface DeliveryView extends DeliveryRow {
  readonly lines: readonly LineProgress[];
  readonly units: readonly UnitView[];
  readonly check: VehicleCheckRow | null;
  /** What the vehicle check asks today. */
  readonly checkPoints: VehicleCheckRules['checkPoints'];
  /** All notes, the void ones too. */
  readonly notes: readonly NoteRow[];
  readonly seal: string | null;
  readonly shortCode: string | null;
  readonly shortReason: string | null;
  readonly returned: readonly ReturnedUnitRow[];
}

export async function deliveryView(
  from: ReadFrom,
  siteId: string,
  numberOrId: string,
  now: Instant,
): Promise<DeliveryView> {
  const delivery = await findDelivery(from, siteId, numberOrId);
  const close = onlyRow(
    await from.sql<{ seal: string; shortCode: string | null; shortReason: string | null }>`
      SELECT "seal", "short_code" AS "shortCode", "short_reason" AS "shortReason" FROM "delivery_close"
      WHERE "delivery_id" = ${delivery.id} AND "voided_by" IS NULL`,
  );
  return {
    ...delivery,
    lines: await progressOf(from, delivery.id),
    units: await unitsOf(from, delivery.id),
    check: await lastVehicleCheck(from, delivery.id),
    checkPoints: await checkPointsAt(from, siteId, now),
    notes: await notesOf(from, delivery.id),
    seal: close?.seal ?? null,
    shortCode: close?.shortCode ?? null,
    shortReason: close?.shortReason ?? null,
    returned: await returnedUnitsOf(from, delivery.id),
  };
}

async function unitsOf(from: ReadFrom, deliveryId: string): Promise<readonly UnitView[]> {
  const loaded = await loadedOn(from, deliveryId);
  const palletIds = loaded.flatMap((row) => row.palletId ?? []);
  const pallets = new Map((await palletsOf(from, palletIds)).map((pallet) => [pallet.id, pallet]));
  const contents = await contentsOf(from, palletIds);
  const bags = new Map(
    (
      await bagsOf(
        from,
        loaded.flatMap((row) => row.bagId ?? []),
      )
    ).map((bag) => [bag.id, bag]),
  );
  return loaded.flatMap(({ palletId, bagId, place, loadedAt }): readonly UnitView[] => {
    const pallet = pallets.get(palletId ?? '');
    const bag = bags.get(bagId ?? '');
    if (pallet !== undefined) {
      const lots = contents.filter((row) => row.palletId === pallet.id).map((row) => row.lotCode);
      const { id, sscc: name, formatName: goods, packCount, nominalGrams } = pallet;
      const netGrams = packCount * nominalGrams;
      const shown = {
        name,
        goods,
        lots: [...new Set(lots)],
        packCount,
        netGrams,
        grossGrams: computedGrossGrams(pallet),
      };
      return [{ kind: 'pallet', id, ...shown, place, loadedAt }];
    }
    if (bag === undefined) return [];
    const { id, number: name, netGrams, grossGrams } = bag;
    const weights = { netGrams: netGrams ?? 0, grossGrams: grossGrams ?? 0 };
    return [{ kind: 'bulk-bag', id, name, goods: '', lots: [], packCount: null, ...weights, place, loadedAt }];
  });
}
