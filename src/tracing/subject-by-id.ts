import { deliveryOf } from '../dispatch/deliveries.js';
import { findLinerLot, isLinerLot } from '../drying/liner-lots.js';
import { bagOf } from '../drying/bulk-bags.js';
import { filmLotOf, lotOf, runOf } from '../packing/packing-runs.js';
import { palletOf } from '../pallets/pallet-list.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { ThreadKind, ThreadSubject } from './thread.js';

/**
 * A subject by its kind and id, with the name that people know it by.
 *
 * @throws {NotFound}
 */
export async function subjectById(from: ReadFrom, kind: ThreadKind, id: string): Promise<ThreadSubject> {
  return { kind, id, name: await nameOf(from, kind, id), localTime: null, printedAt: null, codedBetween: null };
}

/** Where things stand with the site that they belong to; a lot of liners is of each site that has a bag of it. */
const tables = {
  'bulk-bag': 'bulk_bag',
  lot: 'lot',
  pallet: 'pallet',
  'packing-run': 'packing_run',
  'film-lot': 'film_lot',
  delivery: 'delivery',
} as const;

/**
 * The same for who asks at one site: what is another site's is not there.
 *
 * @throws {NotFound}
 */
export async function subjectOfSite(
  from: ReadFrom,
  siteId: string,
  kind: ThreadKind,
  id: string,
): Promise<ThreadSubject> {
  const isHere =
    kind === 'liner-lot'
      ? (await findLinerLot(from, siteId, id)) !== null
      : (await from.sql`SELECT "id" FROM ${() => `"${tables[kind]}"`} WHERE "id" = ${id} AND "site_id" = ${siteId}`)
          .length > 0;
  if (!isHere) throw new NotFound(kind, id);
  return subjectById(from, kind, id);
}

async function nameOf(from: ReadFrom, kind: ThreadKind, id: string): Promise<string> {
  switch (kind) {
    case 'bulk-bag':
      return (await bagOf(from, id)).number;
    case 'lot':
      return (await lotOf(from, id)).code;
    case 'pallet':
      return (await palletOf(from, id)).sscc;
    case 'packing-run':
      return (await runOf(from, id)).number;
    case 'film-lot':
      return (await filmLotOf(from, id)).code;
    case 'liner-lot':
      if (!(await isLinerLot(from, id))) throw new NotFound('liner-lot', id);
      return id;
    case 'delivery': {
      const delivery = await deliveryOf(from, id);
      return delivery.noteNumber ?? delivery.orderNumber;
    }
  }
}
