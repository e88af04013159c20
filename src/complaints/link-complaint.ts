import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { refuseClosed, settleStatus, standingComplaint } from './complaint-in-unit.js';
import type { LinkComplaintForm } from './complaint.form.js';
import { insertLink } from './insert-link.js';

/**
 * What a complaint is about was found out, or is another thing than was thought.
 * Refusals: `complaint-withdrawn`, `complaint-closed`, `complaint-moved-on`; not found: complaint, the subject.
 */
@Injectable()
export class LinkComplaint {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, complaintId: string, form: LinkComplaintForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { complaintId, ...form }, async (tx, change) => {
      const complaint = await standingComplaint(tx, asked.actor.siteId, complaintId);
      refuseClosed(complaint);
      const { id, subjectKind, subjectId, localTime, printedAt } = complaint;
      const nextId = (): string => this.ids.next();
      const link = await insertLink(
        tx,
        { nextId, siteId: asked.actor.siteId, complaintId: id, at: change.recordedAt },
        form,
      );
      await settleStatus(tx, complaint);
      return {
        answer: { id },
        entry: {
          action: 'link-complaint',
          subject: { kind: 'complaint', id },
          touches: [{ kind: form.subjectKind, id: form.subjectId }],
          before: { subjectKind, subjectId, localTime, printedAt },
          after: { ...link },
        },
      };
    });
  }
}
