import type { Instant } from '../platform/clock.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { ReturnCode } from './short-reasons.js';

/** A unit that came back from a customer: a pallet, a whole bag, or loose packs of a lot. */
export interface ReturnedUnitRow {
  readonly id: string;
  readonly returnId: string;
  readonly deliveryId: string;
  readonly orderNumber: string;
  readonly customerName: string;
  readonly palletId: string | null;
  readonly bagId: string | null;
  readonly lotId: string | null;
  /** SSCC, short number or the code of the lot. */
  readonly name: string;
  /** Packs; 1 for a bag. */
  readonly unitCount: number;
  readonly creditedCount: number;
  readonly why: ReturnCode;
  readonly remarks: string | null;
  readonly placeId: string;
  readonly placeCode: string;
  readonly returnedAt: Instant;
  /** Null until quality has decided. */
  readonly fate: 'restock' | 'destroy' | null;
  readonly fateReason: string | null;
  readonly decidedAt: Instant | null;
}

/** What came back of a delivery, in the order of coming. */
export async function returnedUnitsOf(from: ReadFrom, deliveryId: string): Promise<readonly ReturnedUnitRow[]> {
  return from.sql<ReturnedUnitRow>`${() => returnedSelect} AND b."delivery_id" = ${deliveryId} ORDER BY r."id"`;
}

/** What came back to a site and waits for quality, the oldest first. */
export async function waitingReturns(from: ReadFrom, siteId: string): Promise<readonly ReturnedUnitRow[]> {
  return from.sql<ReturnedUnitRow>`
    ${() => returnedSelect} AND b."site_id" = ${siteId} AND e."id" IS NULL ORDER BY r."id" LIMIT 200`;
}

/** @throws {NotFound} `returned-unit` */
export async function returnedUnitOf(from: ReadFrom, siteId: string, unitId: string): Promise<ReturnedUnitRow> {
  const [row] = await from.sql<ReturnedUnitRow>`
    ${() => returnedSelect} AND b."site_id" = ${siteId} AND r."id" = ${unitId}`;
  if (row === undefined) throw new NotFound('returned-unit', unitId);
  return row;
}

/** What came back of these pallets, of these bags, and loose of these lots. */
export async function returnsAmong(
  from: ReadFrom,
  units: {
    readonly palletIds: readonly string[];
    readonly bagIds: readonly string[];
    readonly lotIds: readonly string[];
  },
): Promise<readonly ReturnedUnitRow[]> {
  const ofKind = (column: string, ids: readonly string[]): Promise<ReturnedUnitRow[]> =>
    inChunks(
      ids,
      (chunk) => from.sql<ReturnedUnitRow>`${() => returnedSelect} AND ${() => column} IN (${() => chunk})`,
    );
  const rows = [
    ...(await ofKind('l."pallet_id"', units.palletIds)),
    ...(await ofKind('l."bag_id"', units.bagIds)),
    ...(await ofKind('r."lot_id"', units.lotIds)),
  ];
  return rows.sort((one, other) => (one.id < other.id ? -1 : 1));
}

const returnedSelect = `
  SELECT r."id", r."return_id" AS "returnId", b."delivery_id" AS "deliveryId",
    COALESCE(n."order_number", d."order_number") AS "orderNumber", COALESCE(k."name", c."code") AS "customerName",
    l."pallet_id" AS "palletId", l."bag_id" AS "bagId", r."lot_id" AS "lotId",
    COALESCE(p."sscc", w."number", t."code") AS "name", r."unit_count" AS "unitCount",
    r."credited_count" AS "creditedCount", b."why", b."remarks", b."place_id" AS "placeId", s."code" AS "placeCode",
    b."returned_at" AS "returnedAt", e."fate", e."reason" AS "fateReason", e."decided_at" AS "decidedAt"
  FROM "returned_unit" r
  JOIN "delivery_return" b ON b."id" = r."return_id"
  JOIN "delivery" d ON d."id" = b."delivery_id"
  JOIN "customer" c ON c."id" = d."customer_id"
  JOIN "store_place" s ON s."id" = b."place_id"
  LEFT JOIN "customer_contact" k ON k."customer_id" = d."customer_id"
  LEFT JOIN "delivery_plan" n ON n."id" = (
    SELECT MAX(y."id") FROM "delivery_plan" y WHERE y."delivery_id" = d."id" AND y."voided_by" IS NULL)
  LEFT JOIN "loading" l ON l."id" = r."loading_id"
  LEFT JOIN "pallet" p ON p."id" = l."pallet_id"
  LEFT JOIN "bulk_bag" w ON w."id" = l."bag_id"
  LEFT JOIN "lot" t ON t."id" = r."lot_id"
  LEFT JOIN "return_decision" e ON e."unit_id" = r."id" AND e."voided_by" IS NULL
  WHERE r."voided_by" IS NULL AND b."voided_by" IS NULL`;
