import { correctionReasons, type CorrectionReason } from '../../journal/void-fact.js';
import { ChoiceField, DecimalField, IdField, InstantField, TextField } from '../../platform/web/fields.js';

const grams = { optional: true, least: '0.001', most: '100000' } as const;

/** The figures of a setting, in grams as they stand on the machine; what is left out was left alone. */
export class SettingFigures {
  @DecimalField({ ...grams, example: '1003.5', says: 'What the filler is set to' })
  setpointGrams?: string | null;

  @DecimalField({ ...grams, example: '985', says: 'The weigher pushes out what weighs less' })
  rejectBelowGrams?: string | null;

  @DecimalField({ ...grams, example: '1030', says: 'The weigher pushes out what weighs more' })
  rejectAboveGrams?: string | null;
}

export class ChangeSettingForm extends SettingFigures {
  @IdField({ optional: true, says: 'For which format; absent: that of the run that the line had then' })
  formatId?: string | null;

  @InstantField({ optional: true, says: 'From when on; absent: now' })
  changedAt?: string | null;

  @TextField({ most: 300, example: 'Mean of the last hour 2 g high', says: 'Why it was set otherwise' })
  reason!: string;
}

export class CorrectSettingForm extends SettingFigures {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @InstantField({ optional: true, says: 'The right time; absent: as it was' })
  changedAt?: string | null;

  @TextField({ most: 300, example: 'The setting of the other line was meant' })
  reason!: string;
}

/** What the form of a setting stands filled in with. */
export class SettingPageQuery {
  @IdField({ optional: true, says: 'For which format' })
  formatId?: string | null;

  @DecimalField({ ...grams, says: 'The setpoint that was advised' })
  setpointGrams?: string | null;
}
