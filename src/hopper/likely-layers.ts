import type { ReadFrom } from '../platform/database/reading.js';
import { modelInForce } from './flow-models.js';
import { periodOf } from './hopper-period-rows.js';
import { readHopperPeriod } from './hopper-periods.js';
import { layOutPeriod } from './period-flow.js';

/** A bag that is likely inside a hopper, and how much of it. */
export interface LikelyLayer {
  readonly tipId: string;
  /** Null: nobody could read it, or it is a rework bin. */
  readonly bagNumber: string | null;
  readonly name: string;
  readonly grams: number;
}

export interface LikelyLayers {
  /** The newest, on top, first. */
  readonly layers: readonly LikelyLayer[];
  /** Bags of the same period besides these: some of each may still be inside. The newest first. */
  readonly olderBags: readonly string[];
  readonly olderCount: number;
  /** The hopper's model mixes them: these are amounts, and none lies above the other. */
  readonly isMixed: boolean;
}

/** So many tips back are looked at: more never fit into a hopper at once. */
const tipsBack = 30;

/** What makes up less of the content is counted among the others where bags are mixed. Our own value, no source. */
const leastShare = 0.01;

const nothing: LikelyLayers = { layers: [], olderBags: [], olderCount: 0, isMixed: false };

/**
 * What likely lies in a hopper, by the model that its period goes by: first in, first out the newest tips, until they
 * make up the level; where it mixes, what of each is still inside. Other bags of the period are possible, however little
 * of them.
 */
export async function likelyLayersOf(from: ReadFrom, periodId: string, levelGrams: number): Promise<LikelyLayers> {
  if (periodId === '') return nothing;
  const { hopperId, startedAt } = await periodOf(from, periodId);
  const chosen = await modelInForce(from, hopperId, startedAt);
  const isMixed = chosen !== null && chosen.kind !== 'first-in-first-out';
  const tips = await lastTips(from, periodId);
  const level = Math.max(0, levelGrams);
  const insideOf = isMixed ? await mixedInside(from, periodId, level) : newestFirst(tips, level);
  const layers = tips.flatMap(({ tipId, bagNumber, binNumber }): LikelyLayer[] => {
    const grams = insideOf.get(tipId) ?? 0;
    return grams > 0 ? [{ tipId, bagNumber, name: nameOf({ bagNumber, binNumber }), grams }] : [];
  });
  const older = tips.filter(({ tipId }) => (insideOf.get(tipId) ?? 0) <= 0).map(nameOf);
  const [counted] = await from.sql<{ tipCount: number | string }>`
    SELECT COUNT(*) AS "tipCount" FROM "tip" WHERE "period_id" = ${periodId} AND "voided_by" IS NULL`;
  return { layers, olderBags: older, olderCount: Number(counted?.tipCount ?? 0) - layers.length, isMixed };
}

interface LastTip {
  readonly tipId: string;
  readonly bagNumber: string | null;
  readonly binNumber: string | null;
  readonly grams: number;
}

function lastTips(from: ReadFrom, periodId: string): Promise<LastTip[]> {
  return from.sql<LastTip>`
    SELECT t."id" AS "tipId", b."number" AS "bagNumber", r."number" AS "binNumber",
      t."net_grams" - COALESCE(o."rest_grams", 0) AS "grams"
    FROM "tip" t
    LEFT JOIN "bulk_bag" b ON b."id" = t."bag_id"
    LEFT JOIN "rework_bin" r ON r."id" = t."bin_id"
    LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
    WHERE t."period_id" = ${periodId} AND t."voided_by" IS NULL ORDER BY t."opened_at" DESC, t."id" DESC LIMIT ${tipsBack}`;
}

const nameOf = ({ bagNumber, binNumber }: Pick<LastTip, 'bagNumber' | 'binNumber'>): string =>
  bagNumber ?? binNumber ?? '?';

function newestFirst(tips: readonly LastTip[], levelGrams: number): ReadonlyMap<string, number> {
  const inside = new Map<string, number>();
  let left = levelGrams;
  for (const { tipId, grams } of tips) {
    if (left <= 0) break;
    inside.set(tipId, Math.min(grams, left));
    left -= Math.min(grams, left);
  }
  return inside;
}

/** What the model says is inside at the end of the records, brought to the level that is known by now. */
async function mixedInside(from: ReadFrom, periodId: string, levelGrams: number): Promise<ReadonlyMap<string, number>> {
  const { likely } = layOutPeriod(await readHopperPeriod(from, periodId), []);
  const all = likely.inside.reduce((sum, { grams }) => sum + grams, 0);
  const inside = likely.inside.map(({ additionId, grams }) => {
    return [additionId, all === 0 ? 0 : Math.round((grams * levelGrams) / all)] as const;
  });
  return new Map(inside.filter(([, grams]) => grams >= leastShare * levelGrams));
}
