import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { packsIn } from '../packing/run-ranges.js';
import type { ContentRow, PalletRow } from './pallet-rows.js';

/** What people know a pallet by, and where it is. */
export type PalletInShort = Pick<PalletRow, 'id' | 'sscc' | 'formatName' | 'packCount' | 'status' | 'placeId'>;

/**
 * Pallets by their ids; unknown and void ones are left out. A thread names hundreds and says no more of each.
 *
 * @param contents what stands on them, by their ids: it has been read where a thread is
 */
export async function palletsInShort(
  from: ReadFrom,
  palletIds: readonly string[],
  contents: ReadonlyMap<string, readonly ContentRow[]>,
): Promise<ReadonlyMap<string, PalletInShort>> {
  const rows = await inChunks(
    palletIds,
    (chunk) => from.sql<StoredPallet>`
      SELECT p."id", p."sscc", f."name" AS "formatName", p."pack_count" AS "builtCount", s."status",
        s."place_id" AS "placeId"
      FROM "pallet" p
      JOIN "pack_format" f ON f."id" = p."format_id"
      JOIN "pallet_state" s ON s."pallet_id" = p."id"
      WHERE p."voided_by" IS NULL AND p."id" IN (${() => chunk})`,
  );
  return new Map(rows.map((row) => [row.id, inShort(row, contents.get(row.id) ?? [])]));
}

type StoredPallet = Omit<PalletInShort, 'packCount'> & {
  readonly builtCount: number;
};

/** What stands on it counts, as where whole pallets are read. */
function inShort(
  { id, sscc, formatName, status, placeId, builtCount }: StoredPallet,
  contents: readonly ContentRow[],
): PalletInShort {
  const packCount = contents.length === 0 ? builtCount : packsIn(contents);
  return { id, sscc, formatName, status, placeId, packCount };
}
