import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { ComplaintClass } from './complaint-class.entity.js';
import { refuseClosed, settleStatus, standingComplaint } from './complaint-in-unit.js';
import { raiseComplaintPoint } from './complaint-points.js';
import type { ClassComplaintForm } from './complaint.form.js';

/**
 * Quality takes a complaint to be of another category or severity than it was taken in with.
 * Refusals: `complaint-class-unchanged`, `complaint-withdrawn`, `complaint-closed`, `complaint-moved-on`.
 */
@Injectable()
export class ClassComplaint {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, complaintId: string, form: ClassComplaintForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { complaintId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const complaint = await standingComplaint(tx, siteId, complaintId);
      refuseClosed(complaint);
      const { id, number } = complaint;
      const { category, severity, reason } = form;
      const before = { category: complaint.category, severity: complaint.severity };
      if (category === before.category && severity === before.severity) {
        throw new Refusal('complaint-class-unchanged', { complaint: number });
      }
      const nextId = (): string => this.ids.next();
      const setAt = change.recordedAt;
      await tx.insert(ComplaintClass, { id: nextId(), complaintId: id, category, severity, reason, setAt });
      await settleStatus(tx, complaint);
      if (severity === 'food-safety' && before.severity !== severity) {
        await raiseComplaintPoint(tx, { id, number, severity }, { nextId, siteId, at: setAt });
      }
      const after = { category, severity };
      const subject = { kind: 'complaint', id };
      return { answer: { id }, entry: { action: 'class-complaint', subject, before, after, reason } };
    });
  }
}
