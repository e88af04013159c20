import { Injectable } from '@nestjs/common';
import { takeDocumentNumber } from '../drying/take-document-number.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { customerOf } from '../plant/plant-facts.js';
import { ComplaintClass } from './complaint-class.entity.js';
import { ComplaintContact } from './complaint-contact.entity.js';
import { raiseComplaintPoint } from './complaint-points.js';
import { ComplaintState } from './complaint-state.entity.js';
import { Complaint } from './complaint.entity.js';
import type { TakeComplaintForm } from './complaint.form.js';
import { insertLink } from './insert-link.js';

export interface ComplaintTaken {
  readonly id: string;
  readonly number: string;
  readonly severity: TakeComplaintForm['severity'];
  readonly isLinked: boolean;
}

/**
 * Somebody takes a complaint in, with or without the thing that it is about. Quality gets a point to look at. The
 * journal holds no words and no name.
 * Refusals: `contact-without-name`, those of the time; not found: the subject, the customer.
 */
@Injectable()
export class TakeComplaint {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: TakeComplaintForm): Promise<ComplaintTaken> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const { recordedAt } = change;
      const nextId = (): string => this.ids.next();
      const stated = { statedAt: form.receivedAt ?? null, reason: form.reason ?? null };
      const { occurredAt, statedAt, reason } = settleAsked(asked, stated, recordedAt);
      refuseNamelessReach(form);
      const customerId = await customerOfSite(tx, siteId, form.customerId ?? null);
      const number = await takeDocumentNumber(tx, siteId, 'complaint', recordedAt);
      const id = nextId();
      const { category, severity } = form;
      const told = {
        customerId,
        codeAsRead: form.codeAsRead ?? null,
        boughtOn: form.boughtOn ?? null,
        packCount: form.packCount ?? null,
      };
      await tx.insert(Complaint, {
        ...{ id, siteId, number, ...told, words: form.words, boughtWhere: form.boughtWhere ?? null },
        ...{ receivedAt: occurredAt, voidedBy: null },
      });
      await tx.insert(ComplaintClass, {
        ...{ id: nextId(), complaintId: id, category, severity, reason: null, setAt: occurredAt, voidedBy: null },
      });
      await tx.insert(ComplaintState, { complaintId: id, siteId, status: 'open', changeCount: 0 });
      const link = await insertLink(tx, { nextId, siteId, complaintId: id, at: recordedAt }, subjectOf(form));
      await insertContact(tx, id, form);
      await raiseComplaintPoint(tx, { id, number, severity }, { nextId, siteId, at: recordedAt });
      return {
        answer: { id, number, severity, isLinked: link !== null },
        entry: {
          action: 'take-complaint',
          subject: { kind: 'complaint', id },
          touches: link === null ? [] : [{ kind: link.subjectKind, id: link.subjectId }],
          after: { number, ...told, category, severity, link: link === null ? null : { ...link } },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** A kind without an id, or the other way round, is no subject. */
function subjectOf(form: TakeComplaintForm) {
  const { subjectKind = null, subjectId = null } = form;
  if (subjectKind === null && subjectId === null) return null;
  if (subjectKind === null) throw new BadForm([{ field: 'subjectKind', code: 'field-missing', facts: {} }]);
  if (subjectId === null) throw new BadForm([{ field: 'subjectId', code: 'field-missing', facts: {} }]);
  return { ...form, subjectKind, subjectId };
}

function refuseNamelessReach({ contactName, contactReach }: TakeComplaintForm): void {
  if (contactReach != null && contactName == null) throw new Refusal('contact-without-name');
}

async function customerOfSite(tx: Tx, siteId: string, customerId: string | null): Promise<string | null> {
  if (customerId === null) return null;
  const customer = await customerOf(tx, customerId);
  if (customer.siteId !== siteId) throw new NotFound('customer', customerId);
  return customer.id;
}

async function insertContact(tx: Tx, complaintId: string, form: TakeComplaintForm): Promise<void> {
  if (form.contactName == null) return;
  await tx.insert(ComplaintContact, { complaintId, name: form.contactName, reach: form.contactReach ?? null });
}
