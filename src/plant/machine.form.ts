import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { ChoiceField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { codeForm, codePattern, printedForm, printedPattern } from './code-patterns.js';

export class AddDryerForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'D1' })
  code!: string;

  @TextField({ most: 60, example: 'Dryer 1' })
  name!: string;
}

export class AddHopperForm {
  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'H1' })
  code!: string;

  @TextField({ most: 60, example: 'Hopper 1' })
  name!: string;

  @WholeField({ least: 1000, example: 4_000_000, says: 'All that can be inside, chute and hanging bag included' })
  capacityGrams!: number;

  @WholeField({
    optional: true,
    most: 1000,
    example: 1,
    says: 'A bag is likely from this share of some packs on (‰), at most one sold unit',
  })
  likelyPermille?: number | null;
}

export class AddPackingLineForm {
  @TextField({ most: 4, pattern: printedPattern, form: printedForm, example: '1', says: 'As the coder prints it' })
  code!: string;

  @TextField({ most: 60, example: 'Line 1' })
  name!: string;
}

export class SetUpLineForm {
  @TextField({ most: 4, pattern: printedPattern, form: printedForm, example: '1', says: 'As the coder prints it' })
  code!: string;

  @TextField({ most: 60, example: 'Line 1' })
  name!: string;

  @IdField({ says: 'The hopper that feeds it from now on' })
  hopperId!: string;

  @TextField({
    optional: true,
    most: 20,
    pattern: codePattern,
    form: codeForm,
    example: 'C1',
    says: 'Absent: C and the line’s code',
  })
  coderCode?: string | null;
}

export class LinkHopperToLineForm {
  @IdField()
  lineId!: string;

  @IdField({ optional: true, says: 'Absent: from then on no hopper feeds the line' })
  hopperId?: string | null;

  @InstantField({ optional: true, says: 'Since when; absent: now' })
  validFrom?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why it is entered late' })
  reason?: string | null;
}

export class AddCoderForm {
  @IdField()
  lineId!: string;

  @TextField({ most: 20, pattern: codePattern, form: codeForm, example: 'C1' })
  code!: string;
}

/** About twelve years: a coder whose clock was never set may begin that far back. Our own value, no source. */
export const mostOffsetSeconds = 400_000_000;
export const mostUncertaintySeconds = 1_000_000;

export class SetCoderClockForm {
  @IdField()
  coderId!: string;

  @WholeField({
    least: -mostOffsetSeconds,
    most: mostOffsetSeconds,
    example: -42,
    says: 'Above zero: the coder is ahead',
  })
  offsetSeconds!: number;

  @WholeField({ most: mostUncertaintySeconds, example: 30, says: 'How far off this may be, either way' })
  uncertaintySeconds!: number;

  @InstantField({ optional: true, says: 'Since when; absent: now' })
  validFrom?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why it is entered late' })
  reason?: string | null;
}

export class CorrectCoderClockForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'Ahead, not behind' })
  reason!: string;

  @WholeField({ optional: true, least: -mostOffsetSeconds, most: mostOffsetSeconds, example: 42 })
  offsetSeconds?: number | null;

  @WholeField({ optional: true, most: mostUncertaintySeconds, example: 30 })
  uncertaintySeconds?: number | null;

  @InstantField({ optional: true, says: 'Since when it really stood so; absent: as it was' })
  validFrom?: string | null;
}
