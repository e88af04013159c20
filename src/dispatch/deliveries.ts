import { readDocumentNumber } from '../core/identifiers/document-number.js';
import { makeDocumentNumber } from '../core/identifiers/document-number.js';
import type { Instant } from '../platform/clock.js';
import type { Page } from '../platform/web/listed.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { once, onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { DeliveryRow, LineRow, LoadedRow } from './delivery-rows.js';

export type { DeliveryRow } from './delivery-rows.js';

/** The letters that delivery notes' numbers begin with. */
export const notePrefix = 'DN';

/** @throws {NotFound} `delivery` */
export function deliveryOf(from: ReadFrom, deliveryId: string): Promise<DeliveryRow> {
  return once(from, `delivery ${deliveryId}`, () => readDelivery(from, deliveryId));
}

async function readDelivery(from: ReadFrom, deliveryId: string): Promise<DeliveryRow> {
  const row = onlyRow(await from.sql<DeliveryRow>`${() => deliverySelect} AND d."id" = ${deliveryId}`);
  if (row === null) throw new NotFound('delivery', deliveryId);
  return row;
}

/** Several at once, by their ids; unknown ones are left out. */
export async function deliveriesOf(
  from: ReadFrom,
  deliveryIds: readonly string[],
): Promise<ReadonlyMap<string, DeliveryRow>> {
  const rows = await inChunks(
    [...new Set(deliveryIds)],
    (chunk) => from.sql<DeliveryRow>`${() => deliverySelect} AND d."id" IN (${() => chunk})`,
  );
  return new Map(rows.map((row) => [row.id, row]));
}

/**
 * A delivery of the site by the number of a note of it (a void one too), its order number or its id. Where several have the
 * same order number, the latest.
 *
 * @throws {NotFound} `delivery`
 */
export async function findDelivery(from: ReadFrom, siteId: string, numberOrId: string): Promise<DeliveryRow> {
  const asked = numberOrId.trim();
  const typed = readDocumentNumber(asked, notePrefix);
  const number = typed === null ? asked : makeDocumentNumber(typed);
  const papers = await from.sql<{ id: string }>`
    SELECT w."subject_id" AS "id" FROM "paper" w
    WHERE w."site_id" = ${siteId} AND w."number" = ${number} AND w."subject_kind" = 'delivery'`;
  const found = await from.sql<DeliveryRow>`
    ${() => deliverySelect} AND d."site_id" = ${siteId}
      AND d."id" IN (${() => [asked.toLowerCase(), ...papers.map(({ id }) => id)]})
    ORDER BY d."id" DESC LIMIT 1`;
  const [row] = [...found, ...(await deliveriesOfOrder(from, siteId, asked))].sort((a, b) => (a.id < b.id ? 1 : -1));
  if (row === undefined) throw new NotFound('delivery', asked);
  return row;
}

/** All deliveries of a site on a customer's order, the latest first: an order may go on several vehicles. */
export async function deliveriesOfOrder(
  from: ReadFrom,
  siteId: string,
  orderNumber: string,
): Promise<readonly DeliveryRow[]> {
  const key = orderNumber.trim().toUpperCase();
  // Which ones is asked first: in one statement PostgreSQL reads every delivery there is.
  const named = await from.sql<{ id: string }>`
    SELECT x."id" FROM "delivery" x WHERE UPPER(x."order_number") = ${key}
    UNION SELECT y."delivery_id" AS "id" FROM "delivery_plan" y WHERE UPPER(y."order_number") = ${key}`;
  if (named.length === 0) return [];
  return from.sql<DeliveryRow>`
    ${() => deliverySelect} AND d."site_id" = ${siteId} AND d."id" IN (${() => named.map(({ id }) => id)})
      AND UPPER(COALESCE(n."order_number", d."order_number")) = ${key}
    ORDER BY d."id" DESC LIMIT 50`;
}

/** Deliveries of a site, newest first, by key. */
export async function deliveryPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly DeliveryRow[]> {
  return from.sql<DeliveryRow>`
    ${() => deliverySelect} AND d."site_id" = ${siteId} AND d."id" < ${page.before ?? '~'}
    ORDER BY d."id" DESC LIMIT ${page.limit}`;
}

/**
 * Deliveries that concern today: those that have not left yet and are planned for no later than the day, and what left
 * since an instant. The next to leave first; those without a time after the others of their day.
 */
export async function deliveriesToGo(
  from: ReadFrom,
  siteId: string,
  { on, leftSince }: { readonly on: string; readonly leftSince: Instant },
): Promise<readonly DeliveryRow[]> {
  const rows = await from.sql<DeliveryRow>`
    ${() => deliverySelect} AND d."site_id" = ${siteId} AND (
      (s."status" IN ('planned', 'loading', 'closed') AND COALESCE(n."planned_on", d."planned_on") <= ${on})
      OR (s."status" = 'left' AND g."left_at" >= ${leftSince}))
    ORDER BY d."id" LIMIT 200`;
  const orderOf = (row: DeliveryRow): string => row.leavesAt ?? `${row.plannedOn}~`;
  return rows.sort((one, other) => (orderOf(one) < orderOf(other) ? -1 : Number(orderOf(one) > orderOf(other))));
}

export async function linesOf(from: ReadFrom, deliveryId: string): Promise<readonly LineRow[]> {
  return from.sql<LineRow>`
    SELECT l."id", l."line_number" AS "lineNumber", l."format_id" AS "formatId", l."grade_id" AS "gradeId",
      COALESCE(f."name", g."name") AS "name", COALESCE(f."code", g."code") AS "code",
      l."ordered_count" AS "orderedCount"
    FROM "delivery_line" l
    LEFT JOIN "pack_format" f ON f."id" = l."format_id"
    LEFT JOIN "grade" g ON g."id" = l."grade_id"
    WHERE l."delivery_id" = ${deliveryId} AND l."voided_by" IS NULL ORDER BY l."line_number"`;
}

/** What is on (or went with) a delivery, in the order of loading. */
export async function loadedOn(from: ReadFrom, deliveryId: string): Promise<readonly LoadedRow[]> {
  return from.sql<LoadedRow>`${() => loadedSelect} AND l."delivery_id" = ${deliveryId} ORDER BY l."place"`;
}

/** The ids of the units on (or gone with) a delivery, in the order of loading. */
export async function loadedUnitsOf(
  from: ReadFrom,
  deliveryId: string,
): Promise<{ readonly palletIds: readonly string[]; readonly bagIds: readonly string[] }> {
  const rows = await loadedOn(from, deliveryId);
  return { palletIds: rows.flatMap((row) => row.palletId ?? []), bagIds: rows.flatMap((row) => row.bagId ?? []) };
}

/** The delivery that a whole bag is on or went with; null: it is on none. */
export async function bagDeliveryOf(from: ReadFrom, bagId: string): Promise<DeliveryRow | null> {
  const [row] = await deliveriesOfUnits(from, { palletIds: [], bagIds: [bagId] });
  return row === undefined ? null : deliveryOf(from, row.deliveryId);
}

/** The deliveries that these units are on or went with, one row a unit. What came back is on none any more. */
export async function deliveriesOfUnits(
  from: ReadFrom,
  units: { readonly palletIds: readonly string[]; readonly bagIds: readonly string[] },
): Promise<readonly LoadedRow[]> {
  const ofPallets = await inChunks(
    units.palletIds,
    (chunk) =>
      from.sql<LoadedRow>`${() => loadedSelect} ${() => notReturned} AND l."pallet_id" IN (${() => chunk}) ORDER BY l."id"`,
  );
  const ofBags = await inChunks(
    units.bagIds,
    (chunk) =>
      from.sql<LoadedRow>`${() => loadedSelect} ${() => notReturned} AND l."bag_id" IN (${() => chunk}) ORDER BY l."id"`,
  );
  return [...ofPallets, ...ofBags];
}

const deliverySelect = `
  SELECT d."id", d."site_id" AS "siteId", d."customer_id" AS "customerId", c."code" AS "customerCode",
    k."name" AS "customerName", COALESCE(n."order_number", d."order_number") AS "orderNumber",
    COALESCE(n."planned_on", d."planned_on") AS "plannedOn", n."leaves_at" AS "leavesAt", s."status",
    s."loaded_count" AS "loadedCount", p."number" AS "noteNumber", x."paper_id" AS "notePaperId",
    x."closed_at" AS "closedAt", g."left_at" AS "leftAt"
  FROM "delivery" d
  JOIN "delivery_state" s ON s."delivery_id" = d."id"
  JOIN "customer" c ON c."id" = d."customer_id"
  LEFT JOIN "customer_contact" k ON k."customer_id" = d."customer_id"
  LEFT JOIN "delivery_close" x ON x."delivery_id" = d."id" AND x."voided_by" IS NULL
  LEFT JOIN "paper" p ON p."id" = x."paper_id"
  LEFT JOIN "delivery_departure" g ON g."delivery_id" = d."id" AND g."voided_by" IS NULL
  LEFT JOIN "delivery_plan" n ON n."id" = (
    SELECT MAX(y."id") FROM "delivery_plan" y WHERE y."delivery_id" = d."id" AND y."voided_by" IS NULL)
  WHERE d."voided_by" IS NULL`;

/** Loadings that stand: not void, and not taken off again. */
const loadedSelect = `
  SELECT l."id" AS "loadingId", l."delivery_id" AS "deliveryId", l."pallet_id" AS "palletId", l."bag_id" AS "bagId",
    l."place", l."loaded_at" AS "loadedAt"
  FROM "loading" l
  WHERE l."voided_by" IS NULL
    AND NOT EXISTS (SELECT 1 FROM "unloading" u WHERE u."loading_id" = l."id" AND u."voided_by" IS NULL)`;

/** Nor come back from the customer. */
const notReturned = `
    AND NOT EXISTS (SELECT 1 FROM "returned_unit" r WHERE r."loading_id" = l."id" AND r."voided_by" IS NULL)`;
