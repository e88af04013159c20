import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { ProofForm } from '../people/proof.form.js';
import { ChoiceField, FormListField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import {
  recallAnswers,
  recallKinds,
  recallMarks,
  recallScopeKinds,
  recallSurenesses,
  type RecallAnswerKind,
  type RecallKind,
  type RecallMark,
  type RecallScopeKind,
  type RecallSureness,
} from './recall-words.js';

/** One thing that a recall is of. */
export class RecallScopeForm {
  @ChoiceField(recallScopeKinds, { example: 'lot' })
  scopeKind!: RecallScopeKind;

  @IdField({ says: 'The bag, lot or run; the dryer or packing line of a shift' })
  scopeId!: string;

  @InstantField({ optional: true, says: 'Of a shift: a time within it. Of a run: from when' })
  fromAt?: string | null;

  @InstantField({ optional: true, says: 'Until when; left out for a shift, it is the whole shift' })
  untilAt?: string | null;
}

export class OpenRecallForm {
  @ChoiceField(recallKinds, { example: 'exercise' })
  kind!: RecallKind;

  @ChoiceField(['safety', 'quality'])
  hazard!: 'safety' | 'quality';

  @TextField({ most: 1000, example: 'Yearly exercise from a pack bought in a shop', says: 'Why' })
  reason!: string;

  @FormListField(() => RecallScopeForm, { least: 0, most: 50 })
  scopes!: RecallScopeForm[];

  @ChoiceField(recallSurenesses, { optional: true, says: 'All that is possible unless said otherwise' })
  sureness?: RecallSureness | null;

  @TextField({ optional: true, most: 1000, says: 'Why only what is sure and likely is recalled' })
  surenessReason?: string | null;

  @ChoiceField(['hold', 'complaint'], { optional: true })
  originKind?: 'hold' | 'complaint' | null;

  @IdField({ optional: true, says: 'The hold or complaint that it begins with' })
  originId?: string | null;
}

export class MarkRecallForm {
  @ChoiceField(recallMarks)
  mark!: RecallMark;
}

export class RecallAnswerForm {
  @IdField({ says: 'The customer' })
  customerId!: string;

  @ChoiceField(recallAnswers)
  answer!: RecallAnswerKind;

  @WholeField({ optional: true, most: 10_000_000, example: 480 })
  packCount?: number | null;

  @WholeField({ optional: true, most: 1_000_000_000, says: 'Grams of sugar in whole bags' })
  bagGrams?: number | null;

  @TextField({ optional: true, most: 500, example: 'Return note 4711', says: 'What shows it, without names' })
  remarks?: string | null;
}

export class WithdrawRecallAnswerForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 500, example: 'It was another customer' })
  reason!: string;
}

export class HoldRecallForm {
  @TextField({ optional: true, most: 500, says: 'Why; the reason of the recall unless said otherwise' })
  reason?: string | null;
}

/** What the command is told of a signing: the proof of who signs has been looked at before. */
export type RecallSigned = Pick<SignRecallForm, 'explanation'>;

export class SignRecallForm extends ProofForm {
  @TextField({ optional: true, most: 2000, says: 'Needed where packs or kilograms do not add up' })
  explanation?: string | null;
}
