import { TakeComplaintForm } from '../../complaints/complaint.form.js';
import { FlagField, TextField } from '../../platform/web/fields.js';

/** A complaint as it is told: the code is looked up, so that nobody has to know ids. */
export class IntakeForm extends TakeComplaintForm {
  @TextField({ optional: true, most: 120, says: 'Which of several things the code means, as the search answers it' })
  meant?: string | null;

  @FlagField({ optional: true, says: 'Take it in although nothing carries the code' })
  isUnlinked?: boolean | null;
}

/** The code of what a complaint is about, found out later. */
export class LinkByCodeForm {
  @TextField({ most: 200, example: 'L6071A2 14:32' })
  code!: string;

  @TextField({ optional: true, most: 120 })
  meant?: string | null;
}

/** What the page of taking in may begin with. */
export class IntakeQuery {
  @TextField({ optional: true, most: 200 })
  code?: string | null;
}

/** Pressing it is all there is to say. */
export class RemoveContactForm {
  @FlagField({ optional: true })
  isSure?: boolean | null;
}
