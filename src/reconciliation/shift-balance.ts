import { meanNetsOf } from '../fill-weight/mean-nets.js';
import type { HopperLevel } from '../hopper/hopper-level.js';
import { removalsOfHopper } from '../packing/packing-runs.js';
import type { RemovalRow } from '../packing/packing-run-rows.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { runStretches, type RunStretch } from './packs-of-account.js';

/** A tip in a shift, as the shift's tape shows it. */
export interface ShiftTip {
  readonly id: string;
  readonly name: string;
  readonly pouredGrams: number;
  readonly openedAt: Instant;
  readonly isLate: boolean;
  /** The bag hangs still. */
  readonly isHanging: boolean;
}

/** What went through a hopper in a shift, by the records. Whole grams. */
export interface ShiftBalance {
  /** Inside when the shift began, reckoned back from what is inside now. */
  readonly openingGrams: number;
  readonly tippedGrams: number;
  readonly packedGrams: number;
  readonly rejectGrams: number;
  readonly sampleGrams: number;
  readonly sweepingGrams: number;
  readonly insideGrams: number;
  readonly insideLowerGrams: number;
  readonly insideUpperGrams: number;
  /** By how much the records cannot be true; 0: they can. Below 0: sugar is missing in them. */
  readonly doubtGrams: number;
  /** Something that was packed was never weighed by hand: the nominal quantity stands in. */
  readonly hasAssumed: boolean;
  readonly tips: readonly ShiftTip[];
  readonly removals: readonly RemovalRow[];
  readonly stretches: readonly RunStretch[];
}

export interface ShiftAsked {
  readonly siteId: string;
  readonly hopperId: string;
  readonly fromAt: Instant;
  /** Up to now, or the shift's end. */
  readonly untilAt: Instant;
  /** What is inside at `untilAt`. */
  readonly level: HopperLevel;
}

/** The sums of a shift around one hopper: a handful of statements, whatever the period before holds. */
export async function shiftBalanceOf(from: ReadFrom, asked: ShiftAsked): Promise<ShiftBalance> {
  const { hopperId, fromAt, untilAt, level } = asked;
  const tips = await tipsBetween(from, asked);
  const removals = await removalsOfHopper(from, hopperId, fromAt, untilAt);
  const stretches = await runStretches(from, asked);
  const nets = await meanNetsOf(from, [...new Set(stretches.map(({ runId }) => runId))]);
  const packedGrams = stretches.reduce((sum, { runId, from: before, until }) => {
    const packCount = Math.max(0, until.packCount - before.packCount);
    return sum + Math.round((packCount * (nets.get(runId)?.meanMilligrams ?? 0)) / 1000);
  }, 0);
  const removed = (kind: RemovalRow['kind']): number =>
    removals.filter((row) => row.kind === kind).reduce((sum, { grams }) => sum + grams, 0);
  const outs = { rejectGrams: removed('reject'), sampleGrams: removed('sample'), sweepingGrams: removed('sweepings') };
  const tippedGrams = tips.reduce((sum, { pouredGrams }) => sum + pouredGrams, 0);
  const outGrams = packedGrams + outs.rejectGrams + outs.sampleGrams + outs.sweepingGrams;
  return {
    openingGrams: level.grams - tippedGrams + outGrams,
    ...{ tippedGrams, packedGrams, ...outs },
    insideGrams: level.grams,
    insideLowerGrams: level.lowerGrams,
    insideUpperGrams: level.upperGrams,
    doubtGrams: doubtOf(level),
    hasAssumed: [...nets.values()].some(({ basis }) => basis === 'assumed'),
    ...{ tips, removals, stretches },
  };
}

function doubtOf({ findings }: HopperLevel): number {
  const last = findings.at(-1);
  if (last === undefined) return 0;
  return last.kind === 'below-zero' || last.kind === 'below-seen' ? -last.byGrams : last.byGrams;
}

async function tipsBetween(from: ReadFrom, { hopperId, fromAt, untilAt }: ShiftAsked): Promise<ShiftTip[]> {
  const rows = await from.sql<{
    id: string;
    name: string | null;
    pouredGrams: number;
    openedAt: Instant;
    isLate: boolean | number;
    offAt: Instant | null;
  }>`
    SELECT t."id", COALESCE(b."number", r."number") AS "name",
      t."net_grams" - COALESCE(o."rest_grams", 0) AS "pouredGrams", t."opened_at" AS "openedAt",
      t."is_late" AS "isLate", o."off_at" AS "offAt"
    FROM "tip" t
    JOIN "hopper_period" p ON p."id" = t."period_id"
    LEFT JOIN "bulk_bag" b ON b."id" = t."bag_id"
    LEFT JOIN "rework_bin" r ON r."id" = t."bin_id"
    LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
    WHERE p."hopper_id" = ${hopperId} AND t."opened_at" >= ${fromAt} AND t."opened_at" <= ${untilAt}
      AND t."voided_by" IS NULL ORDER BY t."opened_at", t."id"`;
  return rows.map(({ name, isLate, offAt, ...row }) => ({
    ...row,
    name: name ?? '?',
    isLate: isLate === true || isLate === 1,
    isHanging: offAt === null,
  }));
}
