import type { Mass } from '../core/hopper-flow/hopper-event.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { PeriodRow } from './hopper-period-rows.js';
import { windowOfTip, type Stretch, type TimeUncertainty, type TimeWindow } from './record-times.js';
import { pouredMass, weighingsOfBags, type BagWeighings, type Poured } from './poured-mass.js';
import type { Tip } from './tip.entity.js';

/** Sugar that went into a hopper: a tip, or what the period began with. */
export interface AdditionFact extends TimeWindow {
  /** The tip's; `residue:` and the period's where it is what was left from the period before. */
  readonly id: string;
  readonly source: Tip['source'] | 'residue';
  /** The bag; several where it may have been any of them; none for a bin or a residue. */
  readonly bagIds: readonly string[];
  readonly binId: string | null;
  /** The period whose residue it is. */
  readonly previousPeriodId: string | null;
  readonly mass: Mass;
  readonly openedAt: Instant;
  /** Null: the bag hangs still. */
  readonly offAt: Instant | null;
  readonly isLate: boolean;
  readonly hasHappened: boolean;
}

interface StoredTip {
  readonly id: string;
  readonly source: Tip['source'];
  readonly bagId: string | null;
  readonly binId: string | null;
  readonly netGrams: number;
  readonly openedAt: Instant;
  readonly isLate: boolean | number;
  readonly hasHappened: boolean | number;
  readonly offAt: Instant | null;
  readonly restGrams: number | null;
  readonly weighingId: string | null;
}

/** All that went into a hopper in a period, in the order of the records: the residue first, then by opening. */
export async function readAdditions(
  from: ReadFrom,
  period: PeriodRow,
  doubt: TimeUncertainty,
  stretch: Stretch,
): Promise<readonly AdditionFact[]> {
  const tips = await tipsOfPeriod(from, period.id);
  const candidates = await candidatesOf(from, period.id);
  const bagIds = tips.flatMap((tip) => [...(tip.bagId === null ? [] : [tip.bagId]), ...(candidates.get(tip.id) ?? [])]);
  const weighings = await weighingsOfBags(from, bagIds);
  const bins = await binMasses(
    from,
    tips.flatMap(({ binId }) => binId ?? []),
  );
  const additions = tips.map((tip): AdditionFact => {
    const own = tip.bagId === null ? (candidates.get(tip.id) ?? []) : [tip.bagId];
    const isLate = toBoolean(tip.isLate);
    const { openedAt, offAt, binId } = tip;
    return {
      id: tip.id,
      source: tip.source,
      bagIds: own,
      binId,
      previousPeriodId: null,
      mass: (binId === null ? null : bins.get(binId)) ?? massOfBags(tip, own, weighings),
      openedAt,
      offAt,
      isLate,
      hasHappened: toBoolean(tip.hasHappened),
      ...windowOfTip({ openedAt, isLate, hasOff: offAt !== null, offAt }, doubt, stretch),
    };
  });
  return [...residueOf(period), ...additions];
}

/** What was left in the hopper when the period before was proven empty. */
function residueOf(period: PeriodRow): readonly AdditionFact[] {
  if (period.previousPeriodId === null) return [];
  const at = period.startedAt;
  return [
    {
      id: residueId(period.id),
      source: 'residue',
      bagIds: [],
      binId: null,
      previousPeriodId: period.previousPeriodId,
      mass: {
        lowerGrams: period.residueLowerGrams,
        grams: period.residueGrams,
        upperGrams: Math.max(period.residueGrams, period.residueUpperGrams),
      },
      openedAt: at,
      offAt: at,
      isLate: false,
      hasHappened: false,
      ...{ earliestAt: at, likelyAt: at, latestAt: at },
    },
  ];
}

export const residueId = (periodId: string): string => `residue:${periodId}`;

/** Where it may have been any of several bags, the mass may be that of any. */
function massOfBags(tip: StoredTip, bagIds: readonly string[], weighings: BagWeighings): Mass {
  const [only] = bagIds;
  if (only !== undefined && bagIds.length === 1) return pouredMass(poured(tip, only), weighings);
  const masses = bagIds.map((bagId) => pouredMass(poured(tip, bagId), weighings));
  if (masses.length === 0) return { lowerGrams: 0, grams: tip.netGrams, upperGrams: tip.netGrams * 2 };
  const grams = masses.reduce((sum, mass) => sum + mass.grams, 0) / masses.length;
  return {
    lowerGrams: Math.min(...masses.map((mass) => mass.lowerGrams)),
    grams: Math.round(grams),
    upperGrams: Math.max(...masses.map((mass) => mass.upperGrams)),
  };
}

function poured({ netGrams, openedAt, restGrams, weighingId }: StoredTip, bagId: string): Poured {
  return { bagId, netGrams, openedAt, restGrams, weighingId };
}

function tipsOfPeriod(from: ReadFrom, periodId: string): Promise<StoredTip[]> {
  return from.sql<StoredTip>`
    SELECT t."id", t."source", t."bag_id" AS "bagId", t."bin_id" AS "binId", t."net_grams" AS "netGrams",
      t."opened_at" AS "openedAt", t."is_late" AS "isLate", t."has_happened" AS "hasHappened", o."off_at" AS "offAt",
      o."rest_grams" AS "restGrams", o."weighing_id" AS "weighingId"
    FROM "tip" t LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
    WHERE t."period_id" = ${periodId} AND t."voided_by" IS NULL ORDER BY t."opened_at", t."id"`;
}

async function candidatesOf(from: ReadFrom, periodId: string): Promise<ReadonlyMap<string, readonly string[]>> {
  const rows = await from.sql<{ tipId: string; bagId: string }>`
    SELECT c."tip_id" AS "tipId", c."bag_id" AS "bagId" FROM "tip_candidate" c JOIN "tip" t ON t."id" = c."tip_id"
    WHERE t."period_id" = ${periodId} AND t."voided_by" IS NULL AND c."voided_by" IS NULL ORDER BY c."id"`;
  const byTip = new Map<string, string[]>();
  for (const { tipId, bagId } of rows) byTip.set(tipId, [...(byTip.get(tipId) ?? []), bagId]);
  return byTip;
}

/** A weighed bin within two readings of its scale; one that was not weighed holds no more than its parents' packs. */
async function binMasses(from: ReadFrom, binIds: readonly string[]): Promise<ReadonlyMap<string, Mass>> {
  const bins = await inChunks(
    binIds,
    (chunk) => from.sql<{ id: string; netGrams: number; errorMilligrams: number | null }>`
      SELECT b."id", b."net_grams" AS "netGrams", s."maximum_permissible_error_milligrams" AS "errorMilligrams"
      FROM "rework_bin" b LEFT JOIN "scale" s ON s."id" = b."scale_id" WHERE b."id" IN (${() => chunk})`,
  );
  const parents = await parentsOfBins(from, binIds);
  const nets = await meanNetsOf(from, [...new Set(parents.map(({ runId }) => runId))]);
  return new Map(
    bins.map(({ id, netGrams, errorMilligrams }) => {
      if (errorMilligrams !== null) {
        const errorGrams = Math.ceil((2 * errorMilligrams) / 1000);
        return [
          id,
          { lowerGrams: Math.max(0, netGrams - errorGrams), grams: netGrams, upperGrams: netGrams + errorGrams },
        ];
      }
      const own = parents.filter(({ binId }) => binId === id);
      const mostGrams = own.reduce(
        (sum, { runId, fromCount, toCount }) =>
          sum + Math.ceil(((toCount - fromCount) * (nets.get(runId)?.upperMilligrams ?? 0)) / 1000),
        0,
      );
      return [id, { lowerGrams: 0, grams: netGrams, upperGrams: Math.max(netGrams, mostGrams) }];
    }),
  );
}

/** The ranges of packs that rework bins came from. */
export async function parentsOfBins(
  from: ReadFrom,
  binIds: readonly string[],
): Promise<{ readonly binId: string; readonly runId: string; readonly fromCount: number; readonly toCount: number }[]> {
  return inChunks(
    binIds,
    (chunk) => from.sql<{ binId: string; runId: string; fromCount: number; toCount: number }>`
      SELECT "bin_id" AS "binId", "run_id" AS "runId", "from_count" AS "fromCount", "to_count" AS "toCount"
      FROM "rework_parent" WHERE "bin_id" IN (${() => chunk}) AND "voided_by" IS NULL ORDER BY "id"`,
  );
}
