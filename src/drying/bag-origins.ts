import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { BagRow } from './bulk-bags.js';

/** Where a bag comes from and what it held: what a thread says of it. */
export type BagOrigin = Pick<
  BagRow,
  | 'id'
  | 'number'
  | 'sscc'
  | 'dryerRunId'
  | 'dryerId'
  | 'receiptId'
  | 'intendedGradeId'
  | 'fillStartedAt'
  | 'filledAt'
  | 'netGrams'
  | 'isDoubtful'
>;

/**
 * Bags by their ids, in the order asked for; unknown and void ones are left out. A thread names hundreds: half of
 * the columns of a whole bag take half of its time, and runs and weighings read apart half of that.
 */
export async function bagOriginsOf(from: ReadFrom, bagIds: readonly string[]): Promise<readonly BagOrigin[]> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<StoredBag>`
      SELECT b."id", b."number", b."sscc", b."dryer_run_id" AS "dryerRunId", b."receipt_id" AS "receiptId",
        b."intended_grade_id" AS "intendedGradeId", b."fill_started_at" AS "fillStartedAt"
      FROM "bulk_bag" b WHERE b."voided_by" IS NULL AND b."id" IN (${() => chunk})`,
  );
  const weighings = groupBy(await weighingsOf(from, bagIds), ({ bagId }) => bagId);
  const dryers = await dryersOfRuns(
    from,
    rows.flatMap(({ dryerRunId }) => dryerRunId ?? []),
  );
  const byId = new Map(
    rows.map((row) => [row.id, originOf(row, dryers.get(row.dryerRunId ?? '') ?? null, weighings.get(row.id) ?? [])]),
  );
  return [...new Set(bagIds)].flatMap((id) => byId.get(id) ?? []);
}

type StoredBag = Omit<BagOrigin, 'dryerId' | 'filledAt' | 'netGrams' | 'isDoubtful'>;

interface StoredWeighing {
  readonly bagId: string;
  readonly occasion: string;
  readonly weighedAt: string;
  readonly netGrams: number;
  readonly isDoubtful: boolean | number;
}

/** Those of a bag in their order. */
function weighingsOf(from: ReadFrom, bagIds: readonly string[]): Promise<StoredWeighing[]> {
  return inChunks(
    bagIds,
    (chunk) => from.sql<StoredWeighing>`
      SELECT "bag_id" AS "bagId", "occasion", "weighed_at" AS "weighedAt", "net_grams" AS "netGrams",
        "is_doubtful" AS "isDoubtful"
      FROM "bag_weighing" WHERE "voided_by" IS NULL AND "bag_id" IN (${() => chunk})
      ORDER BY "bag_id", "weighed_at", "id"`,
  );
}

/** By the ids of the runs. */
async function dryersOfRuns(from: ReadFrom, runIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<{ id: string; dryerId: string }>`
      SELECT "id", "dryer_id" AS "dryerId" FROM "dryer_run" WHERE "id" IN (${() => chunk})`,
  );
  return new Map(rows.map(({ id, dryerId }) => [id, dryerId]));
}

/** Field by field, as where whole bags are read. What was weighed back is no weight of the whole bag. */
function originOf(bag: StoredBag, dryerId: string | null, weighings: readonly StoredWeighing[]): BagOrigin {
  const filled = weighings.find(({ occasion }) => occasion === 'filled');
  const latest = weighings.findLast(({ occasion }) => occasion !== 'weighed-back');
  return {
    id: bag.id,
    number: bag.number,
    sscc: bag.sscc,
    dryerRunId: bag.dryerRunId,
    dryerId,
    receiptId: bag.receiptId,
    intendedGradeId: bag.intendedGradeId,
    fillStartedAt: bag.fillStartedAt,
    filledAt: filled?.weighedAt ?? null,
    netGrams: latest?.netGrams ?? null,
    isDoubtful: toBoolean(latest?.isDoubtful ?? false),
  };
}
