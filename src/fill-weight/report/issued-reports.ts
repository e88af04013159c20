import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { weightReportKind } from './weight-report.paper.js';

/** A report of a run's weights that was issued. */
export interface IssuedReport {
  readonly paperId: string;
  readonly issuedAt: Instant;
}

/** The last reports of a run, the newest first. */
export function issuedReportsOf(from: ReadFrom, runId: string): Promise<readonly IssuedReport[]> {
  return from.sql<IssuedReport>`
    SELECT "id" AS "paperId", "issued_at" AS "issuedAt" FROM "paper"
    WHERE "subject_kind" = 'packing-run' AND "subject_id" = ${runId} AND "kind" = ${weightReportKind}
      AND "voided_by" IS NULL ORDER BY "id" DESC LIMIT 20`;
}
