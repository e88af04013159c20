import { isSscc } from '../core/identifiers/sscc.js';
import { isId } from '../platform/is-id.js';
import type { Page } from '../platform/web/listed.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { lotRangesOfRuns } from '../packing/packing-runs.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { groupBy } from '../platform/group-by.js';
import type { LotRange } from '../packing/packing-run-rows.js';
import { clipped } from '../packing/run-ranges.js';
import type { ContentRow, DescentRow, PalletRow } from './pallet-rows.js';

// Where packs are is part of what is asked of the list; it has a file of its own for its length.
export { palletsOfLot, palletsOfRanges } from './pallets-of-ranges.js';

/** @throws {NotFound} `pallet` */
export async function palletOf(from: ReadFrom, palletId: string): Promise<PalletRow> {
  const [pallet] = await palletsOf(from, [palletId]);
  if (pallet === undefined) throw new NotFound('pallet', palletId);
  return pallet;
}

/** Pallets by their ids, in the order asked for; unknown and void ones are left out. */
export async function palletsOf(from: ReadFrom, palletIds: readonly string[]): Promise<readonly PalletRow[]> {
  const rows = await inChunks(
    palletIds,
    (chunk) => from.sql<StoredPallet>`${() => palletSelect} AND p."id" IN (${() => chunk})`,
  );
  const byId = new Map(rows.map((row) => [row.id, palletRow(row)]));
  return [...new Set(palletIds)].flatMap((id) => byId.get(id) ?? []);
}

/**
 * A pallet of the site by its SSCC (spaces, brackets and identifier forgiven) or its id.
 *
 * @throws {NotFound} `pallet`
 */
export async function findPallet(from: ReadFrom, siteId: string, ssccOrId: string): Promise<PalletRow> {
  const digits = ssccOrId.replaceAll(/[\s()\-.]/g, '').replace(/^\]C1/, '');
  const sscc = [digits, digits.replace(/^00/, '')].find(isSscc) ?? '';
  const id = isId(ssccOrId) ? ssccOrId.trim().toLowerCase() : '';
  const [row] = await from.sql<StoredPallet>`
    ${() => palletSelect} AND p."site_id" = ${siteId} AND (p."sscc" = ${sscc} OR p."id" = ${id})`;
  if (row === undefined) throw new NotFound('pallet', ssccOrId);
  return palletRow(row);
}

/** Pallets of a site, newest first, by key. */
export async function palletPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly PalletRow[]> {
  const rows = await from.sql<StoredPallet>`
    ${() => palletSelect} AND p."site_id" = ${siteId} AND p."id" < ${page.before ?? '~'}
    ORDER BY p."id" DESC LIMIT ${page.limit}`;
  return rows.map(palletRow);
}

/**
 * What stands on pallets, range by range, in the order of the runs' counts. Lots are as the coder's changes say now: a code
 * that was corrected after the pallet was built is the corrected one here.
 */
export async function contentsOf(from: ReadFrom, palletIds: readonly string[]): Promise<readonly ContentRow[]> {
  const stored = await inChunks(
    palletIds,
    (chunk) => from.sql<StoredContent>`
      SELECT c."pallet_id" AS "palletId", c."run_id" AS "runId", c."lot_id" AS "lotId", c."from_count" AS "fromCount",
        c."to_count" AS "toCount"
      FROM "pallet_content" c WHERE c."voided_by" IS NULL AND c."pallet_id" IN (${() => chunk})
      ORDER BY c."pallet_id", c."from_count"`,
  );
  const runIds = [...new Set(stored.map((row) => row.runId))];
  const lots = groupBy(await lotRangesOfRuns(from, runIds), (lot) => lot.runId);
  return (await named(from, stored, runIds)).flatMap((row) => {
    const own = lots.get(row.runId) ?? [];
    const [only] = own;
    // Mostly a run has one code, and a pallet stands within it.
    if (only !== undefined && own.length === 1 && isAllOf(row, only)) return [row];
    const shares = own.flatMap((lot) => {
      const shared = clipped(row, lot);
      return shared === null ? [] : [{ ...row, ...shared, lotId: lot.lotId, lotCode: lot.code }];
    });
    const covered = shares.reduce((sum, share) => sum + share.toCount - share.fromCount, 0);
    // A change that was voided without another in its place leaves packs of no known code: what was written then stands.
    return covered === row.toCount - row.fromCount ? shares : [row];
  });
}

type StoredContent = Omit<ContentRow, 'runNumber' | 'lotCode'>;

/** Hundreds of pallets are of a few runs and lots: these are read once, not with each. In the order of the runs' numbers. */
async function named(
  from: ReadFrom,
  stored: readonly StoredContent[],
  runIds: readonly string[],
): Promise<readonly ContentRow[]> {
  const lotIds = [...new Set(stored.map((row) => row.lotId))];
  const runs = await inChunks(
    runIds,
    (chunk) => from.sql<{ id: string; name: string }>`
      SELECT "id", "number" AS "name" FROM "packing_run" WHERE "id" IN (${() => chunk})`,
  );
  const lots = await inChunks(
    lotIds,
    (chunk) => from.sql<{ id: string; name: string }>`
      SELECT "id", "code" AS "name" FROM "lot" WHERE "id" IN (${() => chunk})`,
  );
  const names = new Map([...runs, ...lots].map(({ id, name }) => [id, name]));
  return stored
    .map((row) => ({
      palletId: row.palletId,
      runId: row.runId,
      runNumber: names.get(row.runId) ?? '',
      lotId: row.lotId,
      lotCode: names.get(row.lotId) ?? '',
      fromCount: row.fromCount,
      toCount: row.toCount,
    }))
    .sort(byPalletAndRun);
}

function byPalletAndRun(one: ContentRow, other: ContentRow): number {
  if (one.palletId !== other.palletId) return one.palletId < other.palletId ? -1 : 1;
  if (one.runNumber !== other.runNumber) return one.runNumber < other.runNumber ? -1 : 1;
  return one.fromCount - other.fromCount;
}

/** Whether all of a range carries this code, and it is the one that was written down with it. */
function isAllOf(row: ContentRow, lot: LotRange): boolean {
  const isWithin = lot.fromCount <= row.fromCount && row.toCount <= (lot.toCount ?? row.toCount);
  return isWithin && row.fromCount < row.toCount && row.lotId === lot.lotId && row.lotCode === lot.code;
}

/** What a pallet was made from and what was made from it. */
export async function descentsOf(from: ReadFrom, palletId: string): Promise<readonly DescentRow[]> {
  return from.sql<DescentRow>`
    SELECT d."parent_id" AS "parentId", p."sscc" AS "parentSscc", d."child_id" AS "childId", c."sscc" AS "childSscc",
      d."how", d."happened_at" AS "happenedAt"
    FROM "pallet_descent" d JOIN "pallet" p ON p."id" = d."parent_id" JOIN "pallet" c ON c."id" = d."child_id"
    WHERE (d."parent_id" = ${palletId} OR d."child_id" = ${palletId}) AND d."voided_by" IS NULL
    ORDER BY d."happened_at", d."id"`;
}

const palletSelect = `
  SELECT p."id", p."site_id" AS "siteId", p."sscc", p."format_id" AS "formatId", f."code" AS "formatCode",
    f."name" AS "formatName", f."gtin", f."nominal_grams" AS "nominalGrams", f."pack_tare_grams" AS "packTareGrams",
    f."pallet_tare_grams" AS "palletTareGrams", p."built_at" AS "builtAt", f."packs_per_pallet" AS "packsPerPallet", (
      SELECT SUM(c."to_count" - c."from_count") FROM "pallet_content" c
      WHERE c."pallet_id" = p."id" AND c."voided_by" IS NULL) AS "contentCount", p."pack_count" AS "builtCount",
     s."status", s."place_id" AS "placeId", s."changed_at" AS "changedAt"
  FROM "pallet" p
  JOIN "pack_format" f ON f."id" = p."format_id"
  JOIN "pallet_state" s ON s."pallet_id" = p."id"
  WHERE p."voided_by" IS NULL`;

type StoredPallet = Omit<PalletRow, 'isFull' | 'packCount'> & {
  readonly packsPerPallet: number;
  readonly contentCount: number | string | null;
  readonly builtCount: number;
};

/** What stands on it counts, not what it was built with: its label may have been on another pallet. */
function palletRow(row: StoredPallet): PalletRow {
  const packCount = toWhole(row.contentCount ?? row.builtCount);
  // Field by field: hundreds of pallets are read at once, and a rest with a spread takes several times as long.
  return {
    id: row.id,
    siteId: row.siteId,
    sscc: row.sscc,
    formatId: row.formatId,
    formatCode: row.formatCode,
    formatName: row.formatName,
    gtin: row.gtin,
    nominalGrams: row.nominalGrams,
    packTareGrams: row.packTareGrams,
    palletTareGrams: row.palletTareGrams,
    builtAt: row.builtAt,
    status: row.status,
    placeId: row.placeId,
    changedAt: row.changedAt,
    packCount,
    isFull: packCount === row.packsPerPallet,
  };
}
