import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { ComplaintState } from './complaint-state.entity.js';
import { statusAfter } from './complaint-status.js';
import type { ComplaintStatus } from './complaint-words.js';
import { findComplaint, stepsOf, type ComplaintRow } from './complaints.js';

/**
 * A complaint that something is to be done about.
 *
 * @throws {NotFound} `complaint`
 * @throws {Refusal} `complaint-withdrawn`
 */
export async function standingComplaint(tx: Tx, siteId: string, text: string): Promise<ComplaintRow> {
  const complaint = await findComplaint(tx, siteId, text);
  if (complaint.status === 'withdrawn') throw new Refusal('complaint-withdrawn', { complaint: complaint.number });
  return complaint;
}

/** @throws {Refusal} `complaint-closed` */
export function refuseClosed({ status, number }: ComplaintRow): void {
  if (status === 'closed') throw new Refusal('complaint-closed', { complaint: number });
}

/**
 * Sets how a complaint stands by its good steps, as seen by whoever changed it.
 *
 * @throws {Refusal} `complaint-moved-on` where somebody else changed it meanwhile
 */
export async function settleStatus(
  tx: Tx,
  { id, number, changeCount }: Pick<ComplaintRow, 'id' | 'number' | 'changeCount'>,
  status?: 'withdrawn',
): Promise<ComplaintStatus> {
  const now = status ?? statusAfter(await stepsOf(tx, id));
  const set = { status: now, changeCount: changeCount + 1 };
  const changed = await tx.update(ComplaintState, { complaintId: id, changeCount }, set);
  if (changed !== 1) throw new Refusal('complaint-moved-on', { complaint: number });
  return now;
}
