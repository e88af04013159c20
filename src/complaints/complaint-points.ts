import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import type { ComplaintRow } from './complaints.js';
import type { ComplaintSeverity } from './complaint-words.js';

interface PointAsked {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly at: Instant;
}

/** Quality is to look at a complaint; at once where somebody may be hurt. */
export async function raiseComplaintPoint(
  tx: Tx,
  complaint: Pick<ComplaintRow, 'id' | 'number'> & { readonly severity: ComplaintSeverity },
  { nextId, siteId, at }: PointAsked,
): Promise<void> {
  const common = { siteId, at, role: 'quality-officer' as const, subject: { kind: 'complaint', id: complaint.id } };
  const facts = { complaint: complaint.number };
  if (complaint.severity === 'food-safety') {
    await raisePoint(tx, { ...common, id: nextId(), cause: 'complaint-food-safety', facts });
    return;
  }
  await raisePoint(tx, { ...common, id: nextId(), cause: 'complaint-came-in', facts });
}

/** Somebody looks into it, or it was withdrawn. */
export async function clearComplaintPoints(
  tx: Tx,
  complaintId: string,
  { personId, ...asked }: PointAsked & { readonly personId: string | null },
): Promise<void> {
  const subject = { kind: 'complaint', id: complaintId };
  for (const cause of ['complaint-food-safety', 'complaint-came-in']) {
    await clearPoints(tx, { ...asked, personId, cause, subject });
  }
}
