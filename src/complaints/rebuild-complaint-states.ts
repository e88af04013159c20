import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { statusAfter } from './complaint-status.js';
import type { ComplaintStatus, StepKind } from './complaint-words.js';

/** How the complaints of a site stand, from their facts alone. Reads only; a test and the keeper of the database compare. */
export async function rebuildComplaintStates(
  from: ReadFrom,
  siteId: string,
): Promise<ReadonlyMap<string, ComplaintStatus>> {
  const complaints = await from.sql<{ id: string; voidedBy: string | null }>`
    SELECT "id", "voided_by" AS "voidedBy" FROM "complaint" WHERE "site_id" = ${siteId}`;
  const steps = await from.sql<{ complaintId: string; kind: StepKind }>`
    SELECT s."complaint_id" AS "complaintId", s."kind" FROM "complaint_step" s
    JOIN "complaint" c ON c."id" = s."complaint_id"
    WHERE c."site_id" = ${siteId} AND s."voided_by" IS NULL ORDER BY s."id"`;
  const byComplaint = groupBy(steps, ({ complaintId }) => complaintId);
  return new Map(
    complaints.map(({ id, voidedBy }) => [
      id,
      voidedBy === null ? statusAfter(byComplaint.get(id) ?? []) : 'withdrawn',
    ]),
  );
}
