import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Refusal } from '../platform/refusal.js';
import { ComplaintContact } from './complaint-contact.entity.js';
import { findComplaint } from './complaints.js';

/**
 * Who complained is not needed any more: name and reach go, the complaint stays.
 * Refusals: `complaint-contact-gone`; not found: complaint.
 */
@Injectable()
export class RemoveComplaintContact {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, complaintId: string): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { complaintId }, async (tx) => {
      const { id, number } = await findComplaint(tx, asked.actor.siteId, complaintId);
      const removed = await tx.remove(ComplaintContact, { complaintId: id });
      if (removed === 0) throw new Refusal('complaint-contact-gone', { complaint: number });
      return {
        answer: { id },
        entry: { action: 'remove-complaint-contact', subject: { kind: 'complaint', id } },
      };
    });
  }
}
