import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { countsOf } from './packing-runs.js';
import { RunCourse } from './run-course.entity.js';
import { writeCourse } from './run-course.js';

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
