import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
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
 * the columns of a whole bag take half of its time.
 */
export async function bagOriginsOf(from: ReadFrom, bagIds: readonly string[]): Promise<readonly BagOrigin[]> {
  const rows = await inChunks(
    bagIds,
    (chunk) => from.sql<StoredOrigin>`
      SELECT b."id", b."number", b."sscc", b."dryer_run_id" AS "dryerRunId", r."dryer_id" AS "dryerId",
        b."receipt_id" AS "receiptId", b."intended_grade_id" AS "intendedGradeId",
        b."fill_started_at" AS "fillStartedAt", f."weighed_at" AS "filledAt", w."net_grams" AS "netGrams",
        w."is_doubtful" AS "isDoubtful"
      FROM "bulk_bag" b
      LEFT JOIN "dryer_run" r ON r."id" = b."dryer_run_id"
      LEFT JOIN "bag_weighing" f ON f."bag_id" = b."id" AND f."occasion" = 'filled' AND f."voided_by" IS NULL
      LEFT JOIN "bag_weighing" w ON w."id" = (
        SELECT x."id" FROM "bag_weighing" x
        WHERE x."bag_id" = b."id" AND x."voided_by" IS NULL AND x."occasion" <> 'weighed-back'
        ORDER BY x."weighed_at" DESC, x."id" DESC LIMIT 1)
      WHERE b."voided_by" IS NULL AND b."id" IN (${() => chunk})`,
  );
  const byId = new Map(rows.map((row) => [row.id, originOf(row)]));
  return [...new Set(bagIds)].flatMap((id) => byId.get(id) ?? []);
}

type StoredOrigin = Omit<BagOrigin, 'isDoubtful'> & { readonly isDoubtful: boolean | number | null };

/** Field by field, as where whole bags are read. */
function originOf(bag: StoredOrigin): BagOrigin {
  return {
    id: bag.id,
    number: bag.number,
    sscc: bag.sscc,
    dryerRunId: bag.dryerRunId,
    dryerId: bag.dryerId,
    receiptId: bag.receiptId,
    intendedGradeId: bag.intendedGradeId,
    fillStartedAt: bag.fillStartedAt,
    filledAt: bag.filledAt,
    netGrams: bag.netGrams,
    isDoubtful: toBoolean(bag.isDoubtful ?? false),
  };
}
