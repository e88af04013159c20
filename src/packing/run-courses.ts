import { inChunks } from '../platform/database/in-chunks.js';
import { once, type ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { countsOf } from './packing-runs.js';
import { RunCourse } from './run-course.entity.js';
import { readCourse, writeCourse, type CountPoint } from './run-course.js';

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

/** Writes a run's course anew where it is closed; of an open run none is kept. */
export async function followCourse(tx: Tx, runId: string): Promise<void> {
  const course = await courseByFacts(tx, runId);
  await tx.remove(RunCourse, { runId });
  if (course !== null) await tx.insert(RunCourse, { runId, course });
}

/** The course of a run as its counts say it; null for one that is open. */
async function courseByFacts(from: ReadFrom, runId: string): Promise<string | null> {
  const closed = await from.sql`
    SELECT "id" FROM "packing_run_close" WHERE "run_id" = ${runId} AND "voided_by" IS NULL`;
  return closed.length === 0 ? null : writeCourse(await countsOf(from, [runId]));
}

/** Sets the courses of some runs anew by their counts; answers how many were not as the counts say. */
export async function rebuildCourses(tx: Tx, runIds: readonly string[]): Promise<number> {
  let wrong = 0;
  for (const runId of runIds) {
    const [stored] = await tx.sql<{ course: string }>`
      SELECT "course" FROM "run_course" WHERE "run_id" = ${runId}`;
    if ((stored?.course ?? null) === (await courseByFacts(tx, runId))) continue;
    wrong += 1;
    await followCourse(tx, runId);
  }
  return wrong;
}
