import { bagOf } from '../../drying/bulk-bags.js';
import { weighingsOf, type WeighingRow } from '../../drying/bag-weighings.js';
import type { RemovalRow } from '../../packing/packing-run-rows.js';
import { removalColumns } from '../../packing/packing-runs.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { standing, type MayBeVoid } from './standing.js';

/**
 * @throws {NotFound} `removal`, also for one of another site
 * @throws {Refusal} `already-corrected`
 */
export async function removalOf(from: ReadFrom, siteId: string, removalId: string): Promise<RemovalRow> {
  const [known] = await from.sql<MayBeVoid>`
    SELECT "voided_by" AS "voidedBy" FROM "removal" WHERE "id" = ${removalId} AND "site_id" = ${siteId}`;
  standing(known, 'removal', removalId);
  const [row] = await from.sql<RemovalRow>`SELECT ${removalColumns} WHERE m."id" = ${removalId}`;
  if (row === undefined) throw new NotFound('removal', removalId);
  return row;
}

interface WeighingOnBag {
  readonly bagId: string;
  readonly bagNumber: string;
  readonly weighing: WeighingRow;
}

/** @throws {NotFound} `bag-weighing`, likewise */
export async function weighingOf(from: ReadFrom, siteId: string, weighingId: string): Promise<WeighingOnBag> {
  const [row] = await from.sql<{ bagId: string } & MayBeVoid>`
    SELECT w."bag_id" AS "bagId", w."voided_by" AS "voidedBy" FROM "bag_weighing" w JOIN "bulk_bag" b ON b."id" = w."bag_id"
    WHERE w."id" = ${weighingId} AND b."site_id" = ${siteId}`;
  const { id: bagId, number: bagNumber } = await bagOf(from, standing(row, 'bag-weighing', weighingId).bagId);
  const weighing = (await weighingsOf(from, bagId)).find(({ id }) => id === weighingId);
  if (weighing === undefined) throw new NotFound('bag-weighing', weighingId);
  return { bagId, bagNumber, weighing };
}
