import { FillBag } from '../src/drying/fill-bag.js';
import { StartDryerRun } from '../src/drying/start-dryer-run.js';
import type { Asked } from '../src/journal/entry-draft.js';
import type { ReadFrom } from '../src/platform/database/reading.js';

/** A house that is measured. */
export interface Bench {
  readonly get: <Kind>(kind: abstract new (...given: never[]) => Kind) => Kind;
  readonly from: ReadFrom;
  readonly asked: () => Asked;
}

/** Bags that were filled just now, to be tipped into the hopper that was tipped into last. */
export async function bagsToTip(
  bench: Bench,
  count: number,
): Promise<{ readonly bags: readonly string[]; readonly hopperId: string }> {
  const [place] = await bench.from.sql<{ dryerId: string; gradeId: string; scaleId: string; hopperId: string }>`
    SELECT r."dryer_id" AS "dryerId", r."grade_id" AS "gradeId", w."scale_id" AS "scaleId", p."hopper_id" AS "hopperId"
    FROM "tip" t JOIN "bulk_bag" b ON b."id" = t."bag_id" JOIN "dryer_run" r ON r."id" = b."dryer_run_id"
    JOIN "bag_weighing" w ON w."bag_id" = b."id" JOIN "hopper_period" p ON p."id" = t."period_id"
    ORDER BY t."opened_at" DESC LIMIT 1`;
  if (place === undefined) throw new Error('the demo has no tip');
  const [open] = await bench.from.sql<{ number: string }>`
    SELECT r."number" FROM "dryer_run" r LEFT JOIN "dryer_run_end" e ON e."dryer_run_id" = r."id" AND e."voided_by" IS NULL
    WHERE r."dryer_id" = ${place.dryerId} AND e."id" IS NULL ORDER BY r."started_at" DESC LIMIT 1`;
  const run =
    open?.number ??
    (await bench.get(StartDryerRun).execute(bench.asked(), { dryerId: place.dryerId, gradeId: place.gradeId })).number;
  const bags: string[] = [];
  for (let made = 0; made < count; made += 1) {
    const form = {
      run,
      safeLoadGrams: 1_250_000,
      grossGrams: 1_001_800,
      tareGrams: 1800,
      isPresetTare: false,
      scaleId: place.scaleId,
    };
    bags.push((await bench.get(FillBag).execute(bench.asked(), form)).number);
  }
  return { bags, hopperId: place.hopperId };
}
