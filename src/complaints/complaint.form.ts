import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { PageQuery } from '../platform/web/page-query.js';
import { ChoiceField, DayField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { threadKinds, type ThreadKind } from '../tracing/thread.js';
import {
  answerWays,
  complaintCategories,
  complaintSeverities,
  complaintStatuses,
  stepKinds,
  type AnswerWay,
  type ComplaintCategory,
  type ComplaintSeverity,
  type ComplaintStatus,
  type StepKind,
} from './complaint-words.js';

/** Which packs of a thing. */
class PacksMeantForm {
  @TextField({ optional: true, pattern: /^([01]\d|2[0-3]):[0-5]\d$/, form: 'clock-time', example: '14:32' })
  localTime?: string | null;

  @InstantField({ optional: true, says: 'Which coming of that time, where the clock showed it more than once' })
  printedAt?: string | null;

  @InstantField({ optional: true, says: 'Of a code that came back: from when …' })
  codedFromAt?: string | null;

  @InstantField({ optional: true, says: '… until when this use of it was set' })
  codedUntilAt?: string | null;
}

/** What a customer said, taken down. */
export class TakeComplaintForm extends PacksMeantForm {
  @ChoiceField(threadKinds, { optional: true, says: 'What the code means, as the search answers it' })
  subjectKind?: ThreadKind | null;

  @TextField({ optional: true, most: 80, example: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' })
  subjectId?: string | null;

  @TextField({ optional: true, most: 200, example: 'L6071A2 14:32', says: 'The code as the customer reads it' })
  codeAsRead?: string | null;

  @ChoiceField(complaintCategories)
  category!: ComplaintCategory;

  @ChoiceField(complaintSeverities)
  severity!: ComplaintSeverity;

  @TextField({ most: 2000, example: 'A black bit in the pack', says: 'What is wrong, without names' })
  words!: string;

  @TextField({ optional: true, most: 200, example: 'Corner shop, Fernhill' })
  boughtWhere?: string | null;

  @DayField({ optional: true })
  boughtOn?: string | null;

  @WholeField({ optional: true, least: 1, most: 100_000, example: 1 })
  packCount?: number | null;

  @IdField({ optional: true, says: 'The customer of the plant through whom it came' })
  customerId?: string | null;

  @TextField({ optional: true, most: 120, says: 'Who complained; can be removed later' })
  contactName?: string | null;

  @TextField({ optional: true, most: 200, says: 'Where the answer goes; can be removed later' })
  contactReach?: string | null;

  @InstantField({ optional: true, says: 'When it came in; now unless said otherwise' })
  receivedAt?: string | null;

  @TextField({ optional: true, most: 500, says: 'Why it is entered so late' })
  reason?: string | null;
}

/** What a complaint is about, found out later or found to be another thing. */
export class LinkComplaintForm extends PacksMeantForm {
  @ChoiceField(threadKinds)
  subjectKind!: ThreadKind;

  @TextField({ most: 80 })
  subjectId!: string;
}

export class ClassComplaintForm {
  @ChoiceField(complaintCategories)
  category!: ComplaintCategory;

  @ChoiceField(complaintSeverities)
  severity!: ComplaintSeverity;

  @TextField({ most: 1000, example: 'The bit was burnt sugar' })
  reason!: string;
}

export class ComplaintStepForm {
  @ChoiceField(stepKinds)
  kind!: StepKind;

  @TextField({ optional: true, most: 4000, example: 'Worn seal at the screw', says: 'Needed but for look-into' })
  words?: string | null;

  @ChoiceField(answerWays, { optional: true, says: 'Of an answer: how it was given' })
  way?: AnswerWay | null;
}

export class WithdrawForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 500, example: 'Written to the wrong complaint' })
  reason!: string;
}

export class ComplaintQuery extends PageQuery {
  @ChoiceField(complaintStatuses, { optional: true })
  status?: ComplaintStatus | null;
}
