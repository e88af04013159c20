import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { settleStatus, standingComplaint } from './complaint-in-unit.js';
import { ComplaintStep } from './complaint-step.entity.js';
import type { WithdrawForm } from './complaint.form.js';
import type { ComplaintStatus } from './complaint-words.js';
import { stepsOf } from './complaints.js';

/**
 * A step was not taken, or was written down wrongly: it is withdrawn and stays in the records. Of a closed complaint
 * only the closing can be; everything else asks for reopening first.
 * Refusals: `already-corrected`, `complaint-closed`, `complaint-withdrawn`, `complaint-moved-on`.
 */
@Injectable()
export class WithdrawComplaintStep {
  constructor(private readonly changes: RecordChange) {}

  execute(
    asked: Asked,
    stepId: string,
    form: WithdrawForm,
  ): Promise<{ readonly complaintId: string; readonly status: ComplaintStatus }> {
    return this.changes.run(asked, { stepId, ...form }, async (tx, change) => {
      const step = await tx.findOne(ComplaintStep, { id: stepId });
      if (step === null) throw new NotFound('complaint-step', stepId);
      const complaint = await standingComplaint(tx, asked.actor.siteId, step.complaintId);
      const last = (await stepsOf(tx, complaint.id)).at(-1);
      if (complaint.status === 'closed' && last?.id !== stepId) {
        throw new Refusal('complaint-closed', { complaint: complaint.number });
      }
      await voidFact(tx, ComplaintStep, stepId, change);
      const status = await settleStatus(tx, complaint);
      return {
        answer: { complaintId: complaint.id, status },
        entry: {
          action: 'void-complaint-step',
          subject: { kind: 'complaint', id: complaint.id },
          before: { stepId, kind: step.kind, status: complaint.status },
          after: { status, why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}
