import { Injectable } from '@nestjs/common';
import type { Asked, JournalAction } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { settleStatus, standingComplaint } from './complaint-in-unit.js';
import { clearComplaintPoints } from './complaint-points.js';
import { faultOf } from './complaint-status.js';
import { ComplaintStep } from './complaint-step.entity.js';
import type { ComplaintStepForm } from './complaint.form.js';
import type { ComplaintStatus } from './complaint-words.js';
import { stepsOf } from './complaints.js';

export interface StepTakenAnswer {
  readonly id: string;
  readonly complaintId: string;
  readonly number: string;
  readonly status: ComplaintStatus;
}

/**
 * Quality looks into a complaint, records its cause or an action, answers the customer, closes or reopens it.
 * Refusals: `complaint-closed`, `complaint-not-closed`, `complaint-without-cause`, `complaint-not-answered`,
 * `complaint-withdrawn`, `complaint-moved-on`; not found: complaint.
 */
@Injectable()
export class TakeComplaintStep {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, complaintId: string, form: ComplaintStepForm): Promise<StepTakenAnswer> {
    const { words, way } = content(form);
    return this.changes.run(asked, { complaintId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const { recordedAt: at } = change;
      const complaint = await standingComplaint(tx, siteId, complaintId);
      const { id, number } = complaint;
      const fault = faultOf(await stepsOf(tx, id), form.kind);
      if (fault !== null) throw new Refusal(fault, { complaint: number });
      const stepId = this.ids.next();
      const step = { id: stepId, complaintId: id, kind: form.kind, words, way, personId, doneAt: at };
      await tx.insert(ComplaintStep, { ...step, voidedBy: null });
      const status = await settleStatus(tx, complaint);
      await clearComplaintPoints(tx, id, { nextId: () => this.ids.next(), siteId, personId, at });
      return {
        answer: { id: stepId, complaintId: id, number, status },
        entry: {
          action: actionOf(form.kind),
          subject: { kind: 'complaint', id },
          before: { status: complaint.status },
          after: { status, stepId, way },
        },
      };
    });
  }
}

function actionOf(kind: ComplaintStepForm['kind']): JournalAction {
  switch (kind) {
    case 'look-into':
      return 'look-into-complaint';
    case 'cause':
      return 'record-complaint-cause';
    case 'action':
      return 'record-complaint-action';
    case 'answer':
      return 'answer-complaint';
    case 'close':
      return 'close-complaint';
    case 'reopen':
      return 'reopen-complaint';
  }
}

/** Words are needed but for looking into it; a way belongs to an answer. @throws {BadForm} */
function content({ kind, words = null, way = null }: ComplaintStepForm): Pick<ComplaintStep, 'words' | 'way'> {
  const missing = (field: string): BadForm => new BadForm([{ field, code: 'field-missing', facts: {} }]);
  if (kind !== 'look-into' && words === null) throw missing('words');
  if (kind === 'answer' && way === null) throw missing('way');
  return { words, way: kind === 'answer' ? way : null };
}
