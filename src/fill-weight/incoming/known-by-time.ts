import { instantOf } from '../kept/instants-of-weights.js';
import { readBytes } from '../kept/kept-weights.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { SeriesKey } from '../received-ranges.js';
import type { CheckedWeights } from './check-weights.js';
import type { WeightRows } from './weight-rows.js';

/** Weights that a machine sent by other series, by ascending time. */
interface KeptByTime {
  readonly at: Float64Array;
  readonly net: Int32Array;
}

/**
 * The places of rows that are new, where rows have no sequence of the machine's own: a row of the same time and net as a
 * weight that is kept of the machine by another series is known. Each kept weight makes one row known, so that two packs
 * of the same weight within one tick of a clock stay two.
 */
export async function newByTime(
  from: ReadFrom,
  key: SeriesKey,
  { rows, checked }: { readonly rows: WeightRows; readonly checked: CheckedWeights },
): Promise<Uint32Array> {
  const { places } = checked;
  const [first, last] = extentOf(rows, places);
  if (first > last) return places;
  const kept = await keptBetween(from, key, first, last);
  if (kept.at.length === 0) return places;
  const isUsed = new Uint8Array(kept.at.length);
  return places.filter((row) => {
    const at = rows.atCentiseconds[row] as number;
    for (let place = firstAt(kept.at, at); kept.at[place] === at; place += 1) {
      if (isUsed[place] === 1 || kept.net[place] !== rows.netMilligrams[row]) continue;
      isUsed[place] = 1;
      return false;
    }
    return true;
  });
}

function extentOf(rows: WeightRows, places: Uint32Array): readonly [number, number] {
  let [first, last] = [Infinity, -Infinity];
  for (const row of places) {
    const at = rows.atCentiseconds[row] as number;
    first = Math.min(first, at);
    last = Math.max(last, at);
  }
  return [first, last];
}

async function keptBetween(from: ReadFrom, key: SeriesKey, first: number, last: number): Promise<KeptByTime> {
  const [firstAt, lastAt] = [instantOf(first), instantOf(last)];
  const parts = await from.sql<{ id: string }>`
    SELECT b."id" FROM "weight_batch" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    WHERE w."device_id" = ${key.deviceId} AND b."series" <> ${key.series}
      AND b."first_at" <= ${lastAt} AND b."last_at" >= ${firstAt}
    UNION ALL
    SELECT b."id" FROM "weight_block" b JOIN "pack_weigher" w ON w."id" = b."weigher_id"
    WHERE w."device_id" = ${key.deviceId} AND b."series" <> ${key.series}
      AND b."first_at" <= ${lastAt} AND b."last_at" >= ${firstAt}`;
  const [ats, nets]: [number[], number[]] = [[], []];
  for (const { id } of parts) {
    const [row] = await from.sql<{ weights: Uint8Array | null }>`
      SELECT "weights" FROM "weight_batch" WHERE "id" = ${id}
      UNION ALL SELECT "weights" FROM "weight_block" WHERE "id" = ${id}`;
    const columns = readBytes(row?.weights ?? null);
    if (typeof columns === 'string') continue;
    columns.atCentiseconds.forEach((at, place) => {
      if (at < first || at > last) return;
      ats.push(at);
      nets.push(columns.netMilligrams[place] ?? 0);
    });
  }
  const order = Uint32Array.from(ats.keys()).sort((one, other) => (ats[one] ?? 0) - (ats[other] ?? 0));
  return {
    at: Float64Array.from(order, (place) => ats[place] ?? 0),
    net: Int32Array.from(order, (place) => nets[place] ?? 0),
  };
}

/** The first place whose time is not before this. */
function firstAt(at: Float64Array, sought: number): number {
  let [low, high] = [0, at.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((at[middle] as number) < sought) low = middle + 1;
    else high = middle;
  }
  return low;
}
