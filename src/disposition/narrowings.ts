import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import type { NarrowedPart } from './narrowed-part.entity.js';

/** A bag whose sugar may have been in a part when it was taken out of a hold. */
export interface BagGround {
  readonly bagId: string;
  readonly periodId: string;
  readonly mostGrams: number;
  readonly word: 'sure' | 'likely' | 'possible';
}

/** Packs of a run, by its cumulative count. */
interface PackGround {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number;
}

/** What a hold reaches a thing by: packs, and bags whose sugar may be in it. */
export interface Ground {
  readonly packs: readonly PackGround[];
  readonly bags: readonly BagGround[];
}

/** A part that was taken out of a hold, with the ground for it. */
export interface PartRow {
  readonly id: string;
  readonly unitKind: NarrowedPart['unitKind'];
  readonly unitId: string;
  readonly fromAt: string | null;
  readonly untilAt: string | null;
  readonly ground: Ground;
}

/** A narrowing of a hold that stands. */
export interface NarrowingRow {
  readonly id: string;
  readonly holdId: string;
  readonly hazard: 'safety' | 'quality';
  readonly reason: string;
  readonly assessment: string | null;
  readonly personId: string | null;
  readonly narrowedAt: string;
  readonly parts: readonly PartRow[];
}

/** The narrowings of holds that were not taken back, the oldest first. */
export async function narrowingsOf(from: ReadFrom, holdIds: readonly string[]): Promise<readonly NarrowingRow[]> {
  const rows = await inChunks(
    holdIds,
    (chunk) => from.sql<JoinedRow>`
      SELECT n."id", n."hold_id" AS "holdId", n."hazard", n."reason", n."assessment", n."person_id" AS "personId",
        n."narrowed_at" AS "narrowedAt", p."id" AS "partId", p."unit_kind" AS "unitKind", p."unit_id" AS "unitId",
        p."from_at" AS "fromAt", p."until_at" AS "untilAt", g."run_id" AS "runId", g."from_count" AS "fromCount",
        g."to_count" AS "toCount", g."bag_id" AS "bagId", g."period_id" AS "periodId", g."most_grams" AS "mostGrams",
        g."word"
      FROM "hold_narrowing" n
      JOIN "narrowed_part" p ON p."narrowing_id" = n."id"
      LEFT JOIN "narrowing_ground" g ON g."part_id" = p."id"
      WHERE n."hold_id" IN (${() => chunk}) AND n."voided_by" IS NULL
      ORDER BY n."narrowed_at", n."id", p."id", g."id"`,
  );
  return [...groupBy(rows, (row) => row.id).values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const { id, holdId, hazard, reason, assessment, personId, narrowedAt } = first;
    const parts = [...groupBy(own, (row) => row.partId).values()].flatMap(partOf);
    return [{ id, holdId, hazard, reason, assessment, personId, narrowedAt, parts }];
  });
}

/** What of an open hold says whether its narrowings narrow it. */
interface NarrowedHold {
  readonly id: string;
  readonly hazard: 'safety' | 'quality';
  readonly isNarrowed: boolean;
}

/** Whether a narrowing narrows the hold as it is now: without an assessment it never narrows a safety hold. */
export function narrowsNow(
  hold: Pick<NarrowedHold, 'hazard'>,
  { assessment }: Pick<NarrowingRow, 'assessment'>,
): boolean {
  return hold.hazard === 'quality' || assessment !== null;
}

/** The bags that were taken out of holds, by the hold's id. A bag is in a hold or out of it: nothing is added to it. */
export async function bagsTakenOut(
  from: ReadFrom,
  holds: readonly NarrowedHold[],
): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const narrowed = new Map(holds.filter(({ isNarrowed }) => isNarrowed).map((hold) => [hold.id, hold]));
  const taken = new Map<string, Set<string>>();
  for (const narrowing of await narrowingsOf(from, [...narrowed.keys()])) {
    const hold = narrowed.get(narrowing.holdId);
    if (hold === undefined || !narrowsNow(hold, narrowing)) continue;
    const own = taken.get(hold.id) ?? new Set<string>();
    for (const { unitKind, unitId } of narrowing.parts) if (unitKind === 'bulk-bag') own.add(unitId);
    taken.set(hold.id, own);
  }
  return taken;
}

interface JoinedRow extends Omit<NarrowingRow, 'parts'> {
  readonly partId: string;
  readonly unitKind: PartRow['unitKind'];
  readonly unitId: string;
  readonly fromAt: string | null;
  readonly untilAt: string | null;
  readonly runId: string | null;
  readonly fromCount: number | null;
  readonly toCount: number | null;
  readonly bagId: string | null;
  readonly periodId: string | null;
  readonly mostGrams: number | null;
  readonly word: BagGround['word'] | null;
}

function partOf(rows: readonly JoinedRow[]): readonly PartRow[] {
  const [first] = rows;
  if (first === undefined) return [];
  const { partId: id, unitKind, unitId, fromAt, untilAt } = first;
  const packs = rows.flatMap(({ runId, fromCount, toCount }) =>
    runId === null || fromCount === null || toCount === null ? [] : [{ runId, fromCount, toCount }],
  );
  const bags = rows.flatMap(({ bagId, periodId, mostGrams, word }) =>
    bagId === null || periodId === null || mostGrams === null || word === null
      ? []
      : [{ bagId, periodId, mostGrams, word }],
  );
  return [{ id, unitKind, unitId, fromAt, untilAt, ground: { packs, bags } }];
}
