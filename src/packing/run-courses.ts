import { inChunks } from '../platform/database/in-chunks.js';
import { once, type ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { countsOf } from './packing-runs.js';
import { columnsOf, pointsOf, readColumns, type CountColumns, type CountPoint } from './run-course.js';

/**
 * All good counts of some runs, each run's in the order of time: of closed runs from their course, of the others (and
 * where no course is kept yet) count by count.
 */
export async function coursesOf(
  from: ReadFrom,
  runIds: readonly string[],
): Promise<ReadonlyMap<string, readonly CountPoint[]>> {
  return once(from, `run-counts ${[...runIds].join()}`, async () => {
    const columns = await courseColumnsOf(from, runIds);
    return new Map(Array.from(columns, ([runId, own]) => [runId, pointsOf(own)]));
  });
}

/** The same in columns. */
export async function courseColumnsOf(
  from: ReadFrom,
  runIds: readonly string[],
): Promise<ReadonlyMap<string, CountColumns>> {
  const ids = [...new Set(runIds)].sort();
  return ids.length === 0 ? new Map() : once(from, `run-courses ${ids.join()}`, () => readCourses(from, ids));
}

async function readCourses(from: ReadFrom, runIds: readonly string[]): Promise<ReadonlyMap<string, CountColumns>> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<{ runId: string; course: string }>`
      SELECT "run_id" AS "runId", "course" FROM "run_course" WHERE "run_id" IN (${() => chunk})`,
  );
  const courses = new Map(rows.map(({ runId, course }) => [runId, readColumns(runId, course)]));
  const counts = await countsOf(
    from,
    runIds.filter((id) => !courses.has(id)),
  );
  for (const [runId, own] of groupBy(counts, (count) => count.runId)) courses.set(runId, columnsOf(runId, own));
  return courses;
}
