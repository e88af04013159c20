import { standingsOf } from '../../disposition/standings.js';
import { bagsOf } from '../../drying/bulk-bags.js';
import type { ReadFrom } from '../../platform/database/reading.js';

/** A bag in store, as a device remembers it for when the network is away. */
export interface BagInStore {
  readonly number: string;
  readonly sscc: string;
  readonly gradeCode: string;
  readonly state: 'waiting' | 'released' | 'rejected' | 'concession' | 'on-hold';
}

/** The grades that the run on a line takes. */
export interface LineGrades {
  readonly id: string;
  readonly grades: readonly string[];
}

/** More bags than a plant keeps before its hoppers; the newest. */
const mostBags = 2000;

/** The bags in store that may come to a hopper, each with how it stands. */
export async function bagsInStore(from: ReadFrom, siteId: string): Promise<readonly BagInStore[]> {
  const ids = await from.sql<{ id: string }>`
    SELECT b."id" AS "id" FROM "bulk_bag" b JOIN "bag_state" s ON s."bag_id" = b."id"
    WHERE b."site_id" = ${siteId} AND b."voided_by" IS NULL AND s."status" IN ('full', 'opened')
    ORDER BY b."id" DESC LIMIT ${mostBags}`;
  const bags = await bagsOf(
    from,
    ids.map(({ id }) => id),
  );
  const standings = await standingsOf(from, bags);
  const grades = await gradeCodes(from, siteId);
  return bags.flatMap(({ id, number, sscc }) => {
    const standing = standings.get(id);
    if (standing === undefined) return [];
    const state = standing.isOnHold ? 'on-hold' : standing.decision.verdict;
    return [{ number, sscc, gradeCode: grades.get(standing.gradeId) ?? '', state }];
  });
}

/** What the open run of each line takes; lines without a run are left out. */
export async function gradesOfLines(from: ReadFrom, siteId: string): Promise<readonly LineGrades[]> {
  const rows = await from.sql<{ id: string; code: string }>`
    SELECT s."open_line_id" AS "id", g."code" AS "code" FROM "packing_run_state" s
    JOIN "packing_run" r ON r."id" = s."run_id"
    JOIN "pack_format_grade" fg ON fg."format_id" = r."format_id" AND fg."voided_by" IS NULL
    JOIN "grade" g ON g."id" = fg."grade_id"
    WHERE r."site_id" = ${siteId} AND s."open_line_id" IS NOT NULL`;
  const lines = new Map<string, string[]>();
  for (const { id, code } of rows) lines.set(id, [...(lines.get(id) ?? []), code]);
  return [...lines].map(([id, grades]) => ({ id, grades }));
}

async function gradeCodes(from: ReadFrom, siteId: string): Promise<ReadonlyMap<string, string>> {
  const rows = await from.sql<{ id: string; code: string }>`
    SELECT "id", "code" FROM "grade" WHERE "site_id" = ${siteId}`;
  return new Map(rows.map(({ id, code }) => [id, code]));
}
