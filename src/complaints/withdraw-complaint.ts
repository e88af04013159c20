import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { Ids } from '../platform/ids.js';
import { refuseClosed, settleStatus, standingComplaint } from './complaint-in-unit.js';
import { clearComplaintPoints } from './complaint-points.js';
import { Complaint } from './complaint.entity.js';
import type { WithdrawForm } from './complaint.form.js';

/**
 * A complaint was taken in twice, or wrongly: it is withdrawn and stays readable.
 * Refusals: `complaint-withdrawn`, `complaint-closed`, `complaint-moved-on`; not found: complaint.
 */
@Injectable()
export class WithdrawComplaint {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, complaintId: string, form: WithdrawForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { complaintId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const complaint = await standingComplaint(tx, siteId, complaintId);
      refuseClosed(complaint);
      const { id } = complaint;
      await settleStatus(tx, complaint, 'withdrawn');
      await voidFact(tx, Complaint, id, change);
      const nextId = (): string => this.ids.next();
      await clearComplaintPoints(tx, id, { nextId, siteId, personId, at: change.recordedAt });
      return {
        answer: { id },
        entry: {
          action: 'void-complaint',
          subject: { kind: 'complaint', id },
          before: { status: complaint.status },
          after: { status: 'withdrawn', why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}
