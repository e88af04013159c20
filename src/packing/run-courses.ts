import { inChunks } from '../platform/database/in-chunks.js';
import { once, type ReadFrom } from '../platform/database/reading.js';
import { countsOf } from './packing-runs.js';
import { readCourse, type CountPoint } from './run-course.js';

/**
 * All good counts of some runs, each run's in the order of time: of closed runs from their course, of the others (and
 * where no course is kept yet) count by count.
 */
export async function coursesOf(
  from: ReadFrom,
  runIds: readonly string[],
): Promise<ReadonlyMap<string, readonly CountPoint[]>> {
  const ids = [...new Set(runIds)].sort();
  return ids.length === 0 ? new Map() : once(from, `run-courses ${ids.join()}`, () => readCourses(from, ids));
}

async function readCourses(from: ReadFrom, runIds: readonly string[]): Promise<ReadonlyMap<string, CountPoint[]>> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<{ runId: string; course: string }>`
      SELECT "run_id" AS "runId", "course" FROM "run_course" WHERE "run_id" IN (${() => chunk})`,
  );
  const courses = new Map(rows.map(({ runId, course }) => [runId, readCourse(runId, course)]));
  for (const { runId, packCount, countedAt, occasion } of await countsOf(
    from,
    runIds.filter((id) => !courses.has(id)),
  )) {
    const own = courses.get(runId) ?? [];
    courses.set(runId, own);
    own.push({ runId, packCount, countedAt, occasion });
  }
  return courses;
}
