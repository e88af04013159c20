import { ChoiceField, IdField, IdListField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { verdicts, type Verdict } from './standings.js';

const secondPerson = {
  optional: true,
  says: 'Who stands behind a concession too, where the rules of the site ask',
} as const;

export class DecideForm {
  @ChoiceField(['bulk-bag', 'lot', 'pallet'])
  kind!: 'bulk-bag' | 'lot' | 'pallet';

  @TextField({ most: 80, example: 'B0012344', says: 'Number, code, SSCC or id of what is decided on' })
  subject!: string;

  @ChoiceField(verdicts, { example: 'released' })
  verdict!: Verdict;

  @TextField({ optional: true, most: 1000, example: 'All results within', says: 'Needed but for a plain release' })
  reason?: string | null;

  @InstantField({ optional: true, says: 'When it was decided; now where absent' })
  decidedAt?: string | null;

  @IdField(secondPerson)
  secondPersonId?: string | null;
}

export class DecideOnBagsForm {
  @IdListField({ most: 200, says: 'The bags: all are decided on, or none' })
  bagIds!: string[];

  @ChoiceField(verdicts, { example: 'released' })
  verdict!: Verdict;

  @TextField({ optional: true, most: 1000, example: 'All results within', says: 'Needed but for a plain release' })
  reason?: string | null;

  @IdField(secondPerson)
  secondPersonId?: string | null;

  @WholeField({ optional: true, says: 'The last sequence of the journal that the sender had seen when choosing' })
  seenSequence?: number | null;
}

export class AssignGradeForm {
  @TextField({ most: 40, example: 'B0012344', says: 'Short number, SSCC or id of the bag' })
  bag!: string;

  @IdField({ says: 'Id of the grade' })
  gradeId!: string;

  @TextField({ most: 1000, example: 'Colour 47 IU: goes as the next grade' })
  reason!: string;

  @InstantField({ optional: true, says: 'When it was decided; now where absent' })
  assignedAt?: string | null;
}
