import { Injectable } from '@nestjs/common';
import { TakeComplaint, type ComplaintTaken } from '../../complaints/take-complaint.js';
import type { Asked } from '../../journal/entry-draft.js';
import type { IntakeForm } from './complaint-page.form.js';
import { ReadByCustomer } from './read-by-customer.js';

/** Takes a complaint in by the code that the customer reads. */
@Injectable()
export class TakeByCode {
  constructor(
    private readonly takeComplaint: TakeComplaint,
    private readonly readByCustomer: ReadByCustomer,
  ) {}

  /** @throws {Refusal} what `ReadByCustomer` and `TakeComplaint` refuse */
  async execute(asked: Asked, { meant = null, isUnlinked = null, ...told }: IntakeForm): Promise<ComplaintTaken> {
    const { codeAsRead = null } = told;
    const isGiven = told.subjectId != null || codeAsRead === null || isUnlinked === true;
    const link = isGiven ? {} : await this.readByCustomer.linkOf(asked.actor.siteId, codeAsRead, meant);
    return this.takeComplaint.execute(asked, { ...told, ...link });
  }
}
