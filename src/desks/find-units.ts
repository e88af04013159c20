import type { Swap } from '../core/identifiers/look-alike.js';
import { deliveriesOfOrder, findDelivery, type DeliveryRow } from '../dispatch/deliveries.js';
import { findBag } from '../drying/bulk-bags.js';
import { findLinerLot } from '../drying/liner-lots.js';
import { filmLotOf, findFilmLots, findRun, lotOf } from '../packing/packing-runs.js';
import { findPallet } from '../pallets/pallet-list.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { isId } from '../platform/is-id.js';
import { NotFound } from '../platform/refusal.js';
import { fit, fitsOfSwaps, named, tierOf, type Finding, type Fit } from './finding.js';

/** Reads everything but lots: units, papers, runs, packaging of one site. */
export class UnitFinder {
  constructor(
    private readonly from: ReadFrom,
    private readonly siteId: string,
  ) {}

  async bySscc(sscc: string, swaps: readonly Swap[]): Promise<readonly Finding[]> {
    const fits = [fit('fits-sscc'), ...fitsOfSwaps(swaps)];
    const pallets = await this.pallets(sscc, fits);
    const found = pallets.length > 0 ? pallets : await this.bags(sscc, fits);
    return found.map((finding) => ({ ...finding, tier: tierOf(swaps) }));
  }

  async byBagNumber(bagNumber: string, swaps: readonly Swap[]): Promise<readonly Finding[]> {
    const found = await this.bags(bagNumber, [fit('fits-bag-number'), ...fitsOfSwaps(swaps)]);
    return found.map((finding) => ({ ...finding, tier: tierOf(swaps) }));
  }

  async byNote(deliveryNumber: string, swaps: readonly Swap[]): Promise<readonly Finding[]> {
    const fits = [fit('fits-note'), ...fitsOfSwaps(swaps)];
    const found = await orNone(async () => findDelivery(this.from, this.siteId, deliveryNumber));
    return found.map((row) => delivery(row, fits)).map((finding) => ({ ...finding, tier: tierOf(swaps) }));
  }

  /** A customer's order: all deliveries on it. */
  async byOrder(order: string): Promise<readonly Finding[]> {
    const rows = await deliveriesOfOrder(this.from, this.siteId, order);
    return rows.map((row) => delivery(row, [fit('fits-order')]));
  }

  /** Names that follow no pattern of the house: they are compared whole, and nothing in them is forgiven but case. */
  async byText(text: string): Promise<readonly Finding[]> {
    const films = await findFilmLots(this.from, this.siteId, text);
    const liner = await findLinerLot(this.from, this.siteId, text);
    const runs = await orNone(async () => findRun(this.from, this.siteId, text));
    return [
      ...films.map(({ id, code, supplierCode }) =>
        named('film-lot', { id, name: code, about: supplierCode }, [fit('fits-film')]),
      ),
      ...(liner === null
        ? []
        : [
            named('liner-lot', { id: liner.linerLot, name: liner.linerLot, about: '' }, [
              fit('fits-liner', { count: liner.bagCount }),
            ]),
          ]),
      ...runs.map(({ id, number, formatName }) =>
        named('packing-run', { id, name: number, about: formatName }, [fit('fits-run')]),
      ),
      ...(await this.byOrder(text)),
      ...(isId(text) ? await this.byId(text) : await this.bags(text, [fit('fits-bag-number')])),
    ];
  }

  /** Pages that know a thing only by its id lead here too. */
  private async byId(id: string): Promise<readonly Finding[]> {
    const key = id.trim().toLowerCase();
    const fits = [fit('fits-id')];
    const lots = await orNone(async () => lotOf(this.from, key));
    const films = await orNone(async () => filmLotOf(this.from, key));
    const deliveries = await orNone(async () => findDelivery(this.from, this.siteId, key));
    return [
      ...(await this.pallets(id, fits)),
      ...(await this.bags(id, fits)),
      ...deliveries.map((row) => delivery(row, fits)),
      ...lots.map(({ code, formatName }) => named('lot', { id: key, name: code, about: formatName }, fits)),
      ...films.map(({ code, supplierCode }) => named('film-lot', { id: key, name: code, about: supplierCode }, fits)),
    ];
  }

  private async pallets(text: string, fits: readonly Fit[]): Promise<readonly Finding[]> {
    const rows = await orNone(async () => findPallet(this.from, this.siteId, text));
    return rows.map(({ id, sscc, formatName }) => named('pallet', { id, name: sscc, about: formatName }, fits));
  }

  private async bags(text: string, fits: readonly Fit[]): Promise<readonly Finding[]> {
    const rows = await orNone(async () => findBag(this.from, this.siteId, text));
    return rows.map(({ id, number }) => named('bulk-bag', { id, name: number, about: '' }, fits));
  }
}

function delivery({ id, noteNumber, orderNumber }: DeliveryRow, fits: readonly Fit[]): Finding {
  return named('delivery', { id, name: noteNumber ?? orderNumber, about: orderNumber }, fits);
}

/** A finder that does not know it says so; here that only means: not this kind. */
export async function orNone<Found>(find: () => Promise<Found>): Promise<readonly Found[]> {
  try {
    return [await find()];
  } catch (error) {
    if (error instanceof NotFound) return [];
    throw error;
  }
}
