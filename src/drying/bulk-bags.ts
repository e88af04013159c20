import { readBagNumber } from '../core/identifiers/bag-number.js';
import { isSscc } from '../core/identifiers/sscc.js';
import { toBoolean, toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { BagStatus } from './bag-status.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { isId } from '../platform/is-id.js';
import type { Page } from '../platform/web/listed.js';

/** A bulk bag with its standing weight and its state. */
export interface BagRow {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly sscc: string;
  readonly origin: 'dryer-run' | 'receipt' | 'opening-stock';
  readonly dryerRunId: string | null;
  readonly dryerId: string | null;
  readonly receiptId: string | null;
  readonly intendedGradeId: string;
  readonly linerLot: string | null;
  readonly safeLoadGrams: number;
  readonly fillStartedAt: string;
  /** End of filling (of the weighing at receipt or stock-taking); null while the bag is not closed. */
  readonly filledAt: string | null;
  readonly status: BagStatus;
  readonly remainingGrams: number;
  readonly placeId: string | null;
  /** Net of the whole bag by its standing weighing: the latest good one while nothing was tipped. */
  readonly netGrams: number | null;
  /** Hard limits of the net, by the scale's maximum permissible error; 0 and the safe load while the bag is not closed. */
  readonly lowerGrams: number;
  readonly upperGrams: number;
  readonly grossGrams: number | null;
  readonly tareGrams: number | null;
  readonly isPresetTare: boolean;
  readonly scaleId: string | null;
  /** The scale was overdue for its check, or had failed it: to be tipped, not sold. */
  readonly isDoubtful: boolean;
}

/** @throws {NotFound} `bulk-bag` */
export async function bagOf(from: ReadFrom, bagId: string): Promise<BagRow> {
  const [bag] = await bagsOf(from, [bagId]);
  if (bag === undefined) throw new NotFound('bulk-bag', bagId);
  return bag;
}

/** Bags by their ids, in the order asked for; unknown and void ones are left out. */
export async function bagsOf(from: ReadFrom, bagIds: readonly string[]): Promise<readonly BagRow[]> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<StoredBag>`
      ${() => bagSelect} WHERE b."voided_by" IS NULL AND b."id" IN (${() => chunk})`,
  );
  const byId = new Map(rows.map((row) => [row.id, bagRow(row)]));
  return [...new Set(bagIds)].flatMap((id) => byId.get(id) ?? []);
}

/**
 * A bag of the site by its short number (however spaced or cased), its SSCC or its id.
 *
 * @throws {NotFound} `bulk-bag`
 */
export async function findBag(from: ReadFrom, siteId: string, text: string): Promise<BagRow> {
  const id = await bagIdOf(from, siteId, text);
  if (id === null) throw new NotFound('bulk-bag', text);
  return bagOf(from, id);
}

/** Bags of a site, latest recorded first, those before the key `before`. */
export async function bagPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly BagRow[]> {
  const rows = await from.sql<StoredBag>`
    ${() => bagSelect} WHERE b."id" IN (SELECT p."id" FROM "bulk_bag" p
        WHERE p."site_id" = ${siteId} AND p."voided_by" IS NULL AND p."id" < ${page.before ?? '~'}
        ORDER BY p."id" DESC LIMIT ${Math.min(page.limit, 200)})
    ORDER BY b."id" DESC`;
  return rows.map(bagRow);
}

/** Bags of one dryer that were filled to their end at or after `fromAt` and before `untilAt`. */
export async function bagsFilledBetween(
  from: ReadFrom,
  dryerId: string,
  fromAt: string,
  untilAt: string,
): Promise<readonly BagRow[]> {
  const rows = await from.sql<StoredBag>`
    ${() => bagSelect} WHERE b."voided_by" IS NULL AND r."dryer_id" = ${dryerId}
      AND b."id" IN (SELECT x."bag_id" FROM "bag_weighing" x WHERE x."occasion" = 'filled'
        AND x."voided_by" IS NULL AND x."weighed_at" >= ${fromAt} AND x."weighed_at" < ${untilAt})
    ORDER BY f."weighed_at", b."id"`;
  return rows.map(bagRow);
}

/** One kind of key is looked up, not all three with OR: each has its own index. */
async function bagIdOf(from: ReadFrom, siteId: string, text: string): Promise<string | null> {
  if (isId(text)) return ownIdOf(siteId, await keysOf(from, 'id', text.trim().toLowerCase()));
  const number = readBagNumber(text)?.bagNumber;
  if (number !== undefined) {
    const rows = await from.sql<{ id: string; siteId: string }>`
      SELECT "id", "site_id" AS "siteId" FROM "bulk_bag" WHERE "site_id" = ${siteId} AND "number" = ${number}`;
    return ownIdOf(siteId, rows);
  }
  const digits = text.replaceAll(/[\s()]/g, '');
  const sscc = [digits, digits.replace(/^00/, '')].find(isSscc);
  return sscc === undefined ? null : ownIdOf(siteId, await keysOf(from, 'sscc', sscc));
}

function keysOf(from: ReadFrom, column: 'id' | 'sscc', key: string): Promise<{ id: string; siteId: string }[]> {
  return from.sql`
    SELECT "id", "site_id" AS "siteId" FROM "bulk_bag" WHERE ${() => `"${column}"`} = ${key}`;
}

function ownIdOf(siteId: string, rows: readonly { id: string; siteId: string }[]): string | null {
  return rows.find((row) => row.siteId === siteId)?.id ?? null;
}

const bagSelect = `
  SELECT b."id", b."site_id" AS "siteId", b."number", b."sscc", b."origin", b."dryer_run_id" AS "dryerRunId",
    r."dryer_id" AS "dryerId", b."receipt_id" AS "receiptId", b."intended_grade_id" AS "intendedGradeId",
    b."liner_lot" AS "linerLot", b."safe_load_grams" AS "safeLoadGrams", b."fill_started_at" AS "fillStartedAt",
    f."weighed_at" AS "filledAt", t."status", t."remaining_grams" AS "remainingGrams", t."place_id" AS "placeId",
    w."net_grams" AS "netGrams", w."gross_grams" AS "grossGrams", w."tare_grams" AS "tareGrams",
    w."is_preset_tare" AS "isPresetTare", w."scale_id" AS "scaleId", w."is_doubtful" AS "isDoubtful",
    s."maximum_permissible_error_milligrams" AS "errorMilligrams"
  FROM "bulk_bag" b
  JOIN "bag_state" t ON t."bag_id" = b."id"
  LEFT JOIN "dryer_run" r ON r."id" = b."dryer_run_id"
  LEFT JOIN "bag_weighing" f ON f."bag_id" = b."id" AND f."occasion" = 'filled' AND f."voided_by" IS NULL
  LEFT JOIN "bag_weighing" w ON w."id" = (
    SELECT x."id" FROM "bag_weighing" x
    WHERE x."bag_id" = b."id" AND x."voided_by" IS NULL AND x."occasion" <> 'weighed-back'
    ORDER BY x."weighed_at" DESC, x."id" DESC LIMIT 1)
  LEFT JOIN "scale" s ON s."id" = w."scale_id"`;

interface StoredBag extends Omit<BagRow, 'isPresetTare' | 'isDoubtful' | 'lowerGrams' | 'upperGrams'> {
  readonly isPresetTare: boolean | number | null;
  readonly isDoubtful: boolean | number | null;
  readonly errorMilligrams: number | string | null;
}

function bagRow(bag: StoredBag): BagRow {
  const isPresetTare = toBoolean(bag.isPresetTare ?? false);
  const { lowerGrams, upperGrams } = limitsOf(bag, toWhole(bag.errorMilligrams ?? 0) * (isPresetTare ? 1 : 2));
  // Field by field: hundreds of bags are read at once, and a rest with a spread takes several times as long.
  return {
    id: bag.id,
    siteId: bag.siteId,
    number: bag.number,
    sscc: bag.sscc,
    origin: bag.origin,
    dryerRunId: bag.dryerRunId,
    dryerId: bag.dryerId,
    receiptId: bag.receiptId,
    intendedGradeId: bag.intendedGradeId,
    linerLot: bag.linerLot,
    safeLoadGrams: bag.safeLoadGrams,
    fillStartedAt: bag.fillStartedAt,
    filledAt: bag.filledAt,
    status: bag.status,
    remainingGrams: bag.remainingGrams,
    placeId: bag.placeId,
    netGrams: bag.netGrams,
    grossGrams: bag.grossGrams,
    tareGrams: bag.tareGrams,
    scaleId: bag.scaleId,
    lowerGrams,
    upperGrams,
    isPresetTare,
    isDoubtful: toBoolean(bag.isDoubtful ?? false),
  };
}

/** Gross and tare are two readings, each with its own error, unless the tare was not read at all but preset. */
function limitsOf(
  bag: Pick<BagRow, 'netGrams' | 'safeLoadGrams'>,
  errorMilligrams: number,
): Pick<BagRow, 'lowerGrams' | 'upperGrams'> {
  if (bag.netGrams === null) return { lowerGrams: 0, upperGrams: bag.safeLoadGrams };
  const errorGrams = Math.ceil(errorMilligrams / 1000);
  return { lowerGrams: Math.max(0, bag.netGrams - errorGrams), upperGrams: bag.netGrams + errorGrams };
}
