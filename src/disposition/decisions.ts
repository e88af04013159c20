import type { ReadFrom } from '../platform/database/reading.js';
import type { Verdict } from './standings.js';

/** A decision as it is shown. */
export interface DecisionLine {
  readonly id: string;
  readonly verdict: Verdict;
  readonly reason: string | null;
  readonly decidedAt: string;
}

/** All good decisions on a thing, the latest first: the first one stands. */
export function decisionsOf(from: ReadFrom, kind: string, id: string): Promise<readonly DecisionLine[]> {
  return from.sql<DecisionLine>`
    SELECT "id", "verdict", "reason", "decided_at" AS "decidedAt" FROM "decision"
    WHERE "subject_kind" = ${kind} AND "subject_id" = ${id} AND "voided_by" IS NULL
    ORDER BY "decided_at" DESC, "id" DESC`;
}

/** A grade that a bag was given. */
export interface AssignmentLine {
  readonly id: string;
  readonly gradeId: string;
  readonly gradeName: string;
  readonly reason: string;
  readonly assignedAt: string;
}

/** All grades that a bag was given after the dryer's, the latest first. */
export function gradeAssignmentsOf(from: ReadFrom, bagId: string): Promise<readonly AssignmentLine[]> {
  return from.sql<AssignmentLine>`
    SELECT a."id", a."grade_id" AS "gradeId", g."name" AS "gradeName", a."reason", a."assigned_at" AS "assignedAt"
    FROM "grade_assignment" a JOIN "grade" g ON g."id" = a."grade_id"
    WHERE a."bag_id" = ${bagId} AND a."voided_by" IS NULL ORDER BY a."assigned_at" DESC, a."id" DESC`;
}
