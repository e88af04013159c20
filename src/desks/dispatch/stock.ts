import { contentsOf, palletsOf } from '../../pallets/pallet-list.js';
import { standingsOfPallets } from '../../pallets/pallet-standing.js';
import type { StateWord } from '../../disposition/worst-state.js';
import { millisecondsBetween, type Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** A pallet in store as the map shows it. */
export interface StockPallet {
  readonly id: string;
  readonly sscc: string;
  readonly lots: readonly string[];
  readonly packCount: number;
  readonly isFull: boolean;
  readonly state: StateWord;
  /** Whole days since it was built. */
  readonly ageDays: number;
  /** Code of the store place; null where nobody said. */
  readonly place: string | null;
}

/** A format with how many of its pallets are in store. */
export interface StockFormat {
  readonly id: string;
  readonly name: string;
  readonly palletCount: number;
}

/** So many pallets are shown, the oldest first: their standings are computed for the page. */
export const stockShown = 200;

export async function stockFormats(from: ReadFrom, siteId: string): Promise<readonly StockFormat[]> {
  const rows = await from.sql<{ id: string; name: string; palletCount: number | string }>`
    SELECT f."id", f."name", COUNT(p."id") AS "palletCount" FROM "pack_format" f
    JOIN "pallet" p ON p."format_id" = f."id" AND p."voided_by" IS NULL
    JOIN "pallet_state" s ON s."pallet_id" = p."id" AND s."status" = 'in-store'
    WHERE f."site_id" = ${siteId} GROUP BY f."id", f."name" ORDER BY f."name"`;
  return rows.map((row) => ({ ...row, palletCount: Number(row.palletCount) }));
}

/** The oldest pallets of a format in store, with how each stands. Takes over ten milliseconds: read it from a snapshot. */
export async function stockOf(
  from: ReadFrom,
  { formatId, now }: { readonly formatId: string; readonly now: Instant },
): Promise<readonly StockPallet[]> {
  const rows = await from.sql<{ id: string; place: string | null }>`
    SELECT p."id", w."code" AS "place" FROM "pallet" p
    JOIN "pallet_state" s ON s."pallet_id" = p."id"
    LEFT JOIN "store_place" w ON w."id" = s."place_id"
    WHERE p."format_id" = ${formatId} AND s."status" = 'in-store' AND p."voided_by" IS NULL
    ORDER BY p."built_at", p."id" LIMIT ${stockShown}`;
  const ids = rows.map(({ id }) => id);
  const places = new Map(rows.map(({ id, place }) => [id, place]));
  const standings = await standingsOfPallets(from, ids);
  const contents = await contentsOf(from, ids);
  return (await palletsOf(from, ids)).map(({ id, sscc, packCount, isFull, builtAt }) => ({
    id,
    sscc,
    packCount,
    isFull,
    lots: [...new Set(contents.filter((row) => row.palletId === id).map((row) => row.lotCode))],
    state: standings.get(id)?.state ?? 'waiting',
    ageDays: Math.floor(millisecondsBetween(builtAt, now) / 86_400_000),
    place: places.get(id) ?? null,
  }));
}
