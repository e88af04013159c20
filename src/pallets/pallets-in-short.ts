import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { PalletRow } from './pallet-rows.js';

/** What people know a pallet by, and where it is. */
export type PalletInShort = Pick<PalletRow, 'id' | 'sscc' | 'formatName' | 'packCount' | 'status' | 'placeId'>;

/** Pallets by their ids; unknown and void ones are left out. A thread names hundreds and says no more of each. */
export async function palletsInShort(
  from: ReadFrom,
  palletIds: readonly string[],
): Promise<ReadonlyMap<string, PalletInShort>> {
  const rows = await inChunks(
    palletIds,
    (chunk) => from.sql<StoredPallet>`
      SELECT p."id", p."sscc", f."name" AS "formatName", (
          SELECT SUM(c."to_count" - c."from_count") FROM "pallet_content" c
          WHERE c."pallet_id" = p."id" AND c."voided_by" IS NULL) AS "contentCount",
        p."pack_count" AS "builtCount", s."status", s."place_id" AS "placeId"
      FROM "pallet" p
      JOIN "pack_format" f ON f."id" = p."format_id"
      JOIN "pallet_state" s ON s."pallet_id" = p."id"
      WHERE p."voided_by" IS NULL AND p."id" IN (${() => chunk})`,
  );
  return new Map(rows.map((row) => [row.id, inShort(row)]));
}

type StoredPallet = Omit<PalletInShort, 'packCount'> & {
  readonly contentCount: number | string | null;
  readonly builtCount: number;
};

/** What stands on it counts, as where whole pallets are read. */
function inShort({ id, sscc, formatName, status, placeId, contentCount, builtCount }: StoredPallet): PalletInShort {
  return { id, sscc, formatName, status, placeId, packCount: toWhole(contentCount ?? builtCount) };
}
