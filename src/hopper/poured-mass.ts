import type { Mass } from '../core/hopper-flow/hopper-event.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { Instant } from '../platform/clock.js';
import { toBoolean, toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';

interface Weighing extends Mass {
  readonly id: string;
  readonly weighedAt: Instant;
}

/** All good weighings of bags, each bag's in the order of time, with hard limits. */
export type BagWeighings = ReadonlyMap<string, readonly Weighing[]>;

interface StoredWeighing {
  readonly id: string;
  readonly bagId: string;
  readonly netGrams: number;
  readonly isPresetTare: boolean | number;
  readonly weighedAt: Instant;
  readonly errorMilligrams: number | string;
}

export async function weighingsOfBags(from: ReadFrom, bagIds: readonly string[]): Promise<BagWeighings> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<StoredWeighing>`
      SELECT w."id", w."bag_id" AS "bagId", w."net_grams" AS "netGrams", w."is_preset_tare" AS "isPresetTare",
        w."weighed_at" AS "weighedAt", s."maximum_permissible_error_milligrams" AS "errorMilligrams"
      FROM "bag_weighing" w JOIN "scale" s ON s."id" = w."scale_id"
      WHERE w."bag_id" IN (${() => chunk}) AND w."voided_by" IS NULL ORDER BY w."weighed_at", w."id"`,
  );
  const byBag = new Map<string, Weighing[]>();
  for (const row of rows) {
    const own = byBag.get(row.bagId);
    if (own === undefined) byBag.set(row.bagId, [weighing(row)]);
    else own.push(weighing(row));
  }
  return byBag;
}

/** Gross and tare are two readings, each with its own error, unless the tare was preset. */
function weighing({ id, netGrams, isPresetTare, weighedAt, errorMilligrams }: StoredWeighing): Weighing {
  const errorGrams = Math.ceil((toWhole(errorMilligrams) * (toBoolean(isPresetTare) ? 1 : 2)) / 1000);
  return {
    id,
    weighedAt,
    lowerGrams: Math.max(0, netGrams - errorGrams),
    grams: netGrams,
    upperGrams: netGrams + errorGrams,
  };
}

/** A tip as far as its mass goes. */
export interface Poured {
  readonly bagId: string;
  readonly netGrams: number;
  readonly openedAt: Instant;
  readonly restGrams: number | null;
  readonly weighingId: string | null;
}

/**
 * What a tip brought: what the bag held when it was opened, by its latest good weighing until then (so that a corrected
 * weighing corrects the tip), less what was weighed back.
 */
export function pouredMass(tip: Poured, weighings: BagWeighings): Mass {
  const all = weighings.get(tip.bagId) ?? [];
  const own = tip.weighingId === null ? all : all.filter(({ id }) => id !== tip.weighingId);
  // A tip whose time was set back may stand before the weighing that it followed: then the first is its own.
  const before = own.findLast(({ weighedAt }) => weighedAt <= tip.openedAt) ?? own[0];
  const held = before ?? { lowerGrams: tip.netGrams, grams: tip.netGrams, upperGrams: tip.netGrams };
  const rest = tip.weighingId === null ? undefined : all.find(({ id }) => id === tip.weighingId);
  const restGrams = rest?.grams ?? tip.restGrams ?? 0;
  const lowerGrams = Math.max(0, held.lowerGrams - (rest?.upperGrams ?? restGrams));
  const grams = Math.max(lowerGrams, held.grams - restGrams);
  return { lowerGrams, grams, upperGrams: Math.max(grams, held.upperGrams - (rest?.lowerGrams ?? restGrams)) };
}
