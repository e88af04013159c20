import { toWhole } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { BagStatus } from './bag-status.js';

/** A state row as the facts give it. */
export interface RebuiltBagState {
  readonly status: BagStatus;
  readonly remainingGrams: number;
  readonly placeId: string | null;
}

/** What a later step did to a bag, as that step's own facts give it. */
export interface LaterBagChange extends Omit<RebuiltBagState, 'remainingGrams'> {
  readonly bagId: string;
  /** Null: nothing was taken out, so it is what its standing weighing says. */
  readonly remainingGrams: number | null;
  readonly at: string;
}

/**
 * The states of all bags of a site from their facts: filled, weighed again, moved; then what later steps (tips,
 * loadings) did to them, in the order of time. Reads only; a test and the keeper of the database compare.
 */
export async function rebuildBagStates(
  from: ReadFrom,
  siteId: string,
  later: readonly LaterBagChange[] = [],
): Promise<ReadonlyMap<string, RebuiltBagState>> {
  const rows = await from.sql<{ bagId: string; netGrams: number | string | null; placeId: string | null }>`
    SELECT b."id" AS "bagId",
      (SELECT w."net_grams" FROM "bag_weighing" w
        WHERE w."bag_id" = b."id" AND w."voided_by" IS NULL AND w."occasion" <> 'weighed-back'
        ORDER BY w."weighed_at" DESC, w."id" DESC LIMIT 1) AS "netGrams",
      (SELECT m."place_id" FROM "bag_move" m WHERE m."bag_id" = b."id" AND m."voided_by" IS NULL
        ORDER BY m."id" DESC LIMIT 1) AS "placeId"
    FROM "bulk_bag" b WHERE b."site_id" = ${siteId} AND b."voided_by" IS NULL`;
  const filled = new Map<string, RebuiltBagState>(
    rows.map(({ bagId, netGrams, placeId }) => [
      bagId,
      { status: netGrams === null ? 'filling' : 'full', remainingGrams: toWhole(netGrams ?? 0), placeId },
    ]),
  );
  const inOrder = [...later].sort((one, other) => (one.at < other.at ? -1 : Number(one.at > other.at)));
  const states = new Map(filled);
  for (const { bagId, status, remainingGrams, placeId } of inOrder) {
    const whole = filled.get(bagId);
    if (whole !== undefined)
      states.set(bagId, { status, remainingGrams: remainingGrams ?? whole.remainingGrams, placeId });
  }
  return states;
}
