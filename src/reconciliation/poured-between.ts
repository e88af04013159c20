import { inChunks } from '../platform/database/in-chunks.js';
import { readAdditions, type AdditionFact } from '../hopper/addition-facts.js';
import { periodOf } from '../hopper/hopper-period-rows.js';
import { noEnd, timeUncertaintyAt } from '../hopper/record-times.js';
import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** A stretch of time over one hopper; half-open. */
export interface HopperTime {
  readonly siteId: string;
  readonly hopperId: string;
  readonly fromAt: Instant;
  readonly untilAt: Instant;
}

/** Everything that was opened over a hopper in a time, whatever periods that spans; residues are not poured. */
export async function pouredBetween(from: ReadFrom, time: HopperTime): Promise<readonly AdditionFact[]> {
  const { siteId, hopperId, fromAt, untilAt } = time;
  const periods = await from.sql<{ id: string }>`
    SELECT p."id" FROM "hopper_period" p
    LEFT JOIN "proven_empty" e ON e."period_id" = p."id" AND e."voided_by" IS NULL
    WHERE p."hopper_id" = ${hopperId} AND p."voided_by" IS NULL
      AND p."started_at" < ${untilAt} AND (e."proven_at" IS NULL OR e."proven_at" >= ${fromAt})
    ORDER BY p."number"`;
  const doubt = await timeUncertaintyAt(from, siteId, fromAt);
  const poured: AdditionFact[] = [];
  for (const { id } of periods) {
    const period = await periodOf(from, id);
    const stretch = { fromAt: period.startedAt, untilAt: period.endedAt ?? noEnd };
    poured.push(...(await readAdditions(from, period, doubt, stretch)));
  }
  return poured.filter(({ source, openedAt }) => source !== 'residue' && openedAt >= fromAt && openedAt < untilAt);
}

/** A bag on a scale. */
export interface BagOnScale {
  readonly id: string;
  readonly bagId: string;
  readonly netGrams: number;
  readonly isPresetTare: boolean;
  readonly isDoubtful: boolean;
  readonly scaleId: string;
  readonly weighedAt: Instant;
}

/** All good weighings of bags in the order of time. */
export async function weighingsOnScales(from: ReadFrom, bagIds: readonly string[]): Promise<readonly BagOnScale[]> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<
      Omit<BagOnScale, 'isPresetTare' | 'isDoubtful'> & { isPresetTare: boolean | number; isDoubtful: boolean | number }
    >`
      SELECT "id", "bag_id" AS "bagId", "net_grams" AS "netGrams", "is_preset_tare" AS "isPresetTare",
        "is_doubtful" AS "isDoubtful", "scale_id" AS "scaleId", "weighed_at" AS "weighedAt"
      FROM "bag_weighing" WHERE "bag_id" IN (${() => chunk}) AND "voided_by" IS NULL ORDER BY "weighed_at", "id"`,
  );
  return rows.map((row) => ({
    ...row,
    isPresetTare: toBoolean(row.isPresetTare),
    isDoubtful: toBoolean(row.isDoubtful),
  }));
}

/** A bag was off: with this rest, weighed where a weighing is named. */
export interface BagOff {
  readonly tipId: string;
  readonly offAt: Instant;
  readonly restGrams: number;
  readonly weighingId: string | null;
}

export async function offsOfTips(from: ReadFrom, tipIds: readonly string[]): Promise<ReadonlyMap<string, BagOff>> {
  const rows = await inChunks(
    tipIds,
    (chunk) => from.sql<BagOff>`
      SELECT "tip_id" AS "tipId", "off_at" AS "offAt", "rest_grams" AS "restGrams", "weighing_id" AS "weighingId"
      FROM "tip_off" WHERE "tip_id" IN (${() => chunk}) AND "voided_by" IS NULL`,
  );
  return new Map(rows.map((row) => [row.tipId, row]));
}

/** The number of each bag and bin, and the scale of each bin. */
export interface PouredLabels {
  readonly numbers: ReadonlyMap<string, string>;
  readonly binScales: ReadonlyMap<string, string | null>;
}

export async function labelsOfPoured(from: ReadFrom, poured: readonly AdditionFact[]): Promise<PouredLabels> {
  const bags = await inChunks(
    poured.flatMap(({ bagIds }) => bagIds),
    (chunk) => from.sql<{ id: string; number: string }>`
      SELECT "id", "number" FROM "bulk_bag" WHERE "id" IN (${() => chunk})`,
  );
  const bins = await inChunks(
    poured.flatMap(({ binId }) => binId ?? []),
    (chunk) => from.sql<{ id: string; number: string; scaleId: string | null }>`
      SELECT "id", "number", "scale_id" AS "scaleId" FROM "rework_bin" WHERE "id" IN (${() => chunk})`,
  );
  return {
    numbers: new Map([...bags, ...bins].map(({ id, number }) => [id, number])),
    binScales: new Map(bins.map(({ id, scaleId }) => [id, scaleId])),
  };
}
