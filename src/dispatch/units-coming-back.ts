import { normaliseCode } from '../core/identifiers/normalise-code.js';
import { findBag } from '../drying/bulk-bags.js';
import { contentsOf, findPallet } from '../pallets/pallet-list.js';
import type { ContentRow } from '../pallets/pallet-rows.js';
import { packsIn } from '../packing/run-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { loadedOn } from './deliveries.js';
import type { DeliveryRow, LoadedRow } from './delivery-rows.js';
import type { ReturnedUnitForm } from './return.form.js';
import { returnedUnitsOf } from './returns.js';

/** A unit that is to come back, found among what went. */
export interface ComingBack {
  readonly kind: 'pallet' | 'bulk-bag' | 'lot';
  readonly id: string;
  readonly name: string;
  /** Null for loose packs. */
  readonly loadingId: string | null;
  /** Packs; 1 for a bag. */
  readonly unitCount: number;
  readonly creditedCount: number;
}

/** What went on a delivery, with the packs of its pallets. */
interface Gone {
  readonly delivery: DeliveryRow;
  readonly loaded: readonly LoadedRow[];
  readonly contents: readonly ContentRow[];
}

/** @throws {Refusal} `not-on-this-delivery`, `lot-not-delivered`, `credit-over-returned`, `same-unit-twice` */
export async function unitsComingBack(
  from: ReadFrom,
  delivery: DeliveryRow,
  forms: readonly ReturnedUnitForm[],
): Promise<readonly ComingBack[]> {
  const gone = await goneOn(from, delivery);
  const units: ComingBack[] = [];
  for (const [place, form] of forms.entries()) {
    const unit = await unitComingBack(from, gone, { form, place });
    if (form.creditedCount > unit.unitCount) {
      throw new Refusal('credit-over-returned', {
        unit: unit.name,
        credited: form.creditedCount,
        count: unit.unitCount,
      });
    }
    if (units.some(({ id }) => id === unit.id)) throw new Refusal('same-unit-twice', { unit: unit.name });
    units.push({ ...unit, creditedCount: form.creditedCount });
  }
  return units;
}

/**
 * Of each lot no more comes back than went, whole pallets and loose packs together, whatever came back before.
 *
 * @throws {Refusal} `came-back-already`, `more-than-delivered`
 */
export async function refuseMoreThanDelivered(
  from: ReadFrom,
  delivery: DeliveryRow,
  units: readonly ComingBack[],
): Promise<void> {
  const { contents } = await goneOn(from, delivery);
  const earlier = await returnedUnitsOf(from, delivery.id);
  const again = units.find(
    ({ id, kind }) => kind !== 'lot' && earlier.some((row) => [row.palletId, row.bagId].includes(id)),
  );
  if (again !== undefined) throw new Refusal('came-back-already', { unit: again.name });
  const packs = (lotId: string, ids: readonly (string | null)[]): number =>
    packsIn(contents.filter((row) => row.lotId === lotId && ids.includes(row.palletId)));
  for (const lotId of new Set(contents.map((row) => row.lotId))) {
    const whole = [...earlier.map((row) => row.palletId), ...units.map((unit) => unit.id)];
    const loose = [
      ...earlier.filter((row) => row.lotId === lotId),
      ...units.filter((unit) => unit.kind === 'lot' && unit.id === lotId),
    ].reduce((sum, { unitCount }) => sum + unitCount, 0);
    const ofLot = contents.filter((row) => row.lotId === lotId);
    const [back, delivered] = [packs(lotId, whole) + loose, packsIn(ofLot)];
    if (back > delivered) {
      throw new Refusal('more-than-delivered', { lot: ofLot[0]?.lotCode ?? null, back, delivered });
    }
  }
}

async function goneOn(from: ReadFrom, delivery: DeliveryRow): Promise<Gone> {
  const loaded = await loadedOn(from, delivery.id);
  const contents = await contentsOf(
    from,
    loaded.flatMap((row) => row.palletId ?? []),
  );
  return { delivery, loaded, contents };
}

async function unitComingBack(
  from: ReadFrom,
  gone: Gone,
  { form, place }: { readonly form: ReturnedUnitForm; readonly place: number },
): Promise<Omit<ComingBack, 'creditedCount'>> {
  const { pallet = null, bag = null, lot = null, packCount = null } = form;
  const named = [pallet, bag, lot].filter((text) => text !== null);
  if (named.length !== 1 || (lot === null) !== (packCount === null)) {
    throw new BadForm([{ field: `units.${place}.pallet`, code: 'returned-unit-unclear', facts: {} }]);
  }
  if (lot !== null) return looseOf(gone, lot, packCount ?? 0);
  if (pallet !== null) {
    const { id, sscc, packCount: count } = await findPallet(from, gone.delivery.siteId, pallet);
    return { kind: 'pallet', id, name: sscc, loadingId: loadingOf(gone, id, sscc), unitCount: count };
  }
  const { id, number } = await findBag(from, gone.delivery.siteId, bag ?? '');
  return { kind: 'bulk-bag', id, name: number, loadingId: loadingOf(gone, id, number), unitCount: 1 };
}

function looseOf({ contents, delivery }: Gone, text: string, unitCount: number): Omit<ComingBack, 'creditedCount'> {
  const code = normaliseCode(text);
  const row = contents.find(({ lotId, lotCode }) => lotId === text || normaliseCode(lotCode) === code);
  if (row === undefined) throw new Refusal('lot-not-delivered', { lot: text, order: delivery.orderNumber });
  return { kind: 'lot', id: row.lotId, name: row.lotCode, loadingId: null, unitCount };
}

function loadingOf({ loaded, delivery }: Gone, id: string, name: string): string {
  const row = loaded.find(({ palletId, bagId }) => (palletId ?? bagId) === id);
  if (row === undefined) throw new Refusal('not-on-this-delivery', { unit: name, order: delivery.orderNumber });
  return row.loadingId;
}
