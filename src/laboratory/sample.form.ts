import { correctionReasons } from '../journal/void-fact.js';
import { ChoiceField, DecimalField, FlagField, IdField, InstantField, TextField } from '../platform/web/fields.js';

const late = { optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' } as const;
const property = {
  most: 60,
  pattern: /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/,
  form: 'property',
  example: 'moisture-percent',
} as const;
const method = { most: 60, example: 'GS2/1/3/9-15', says: 'The laboratory method with its edition' } as const;
const amount = {
  least: '-1000000',
  example: '0.035',
  says: 'The figure as reported, in the unit of the property',
} as const;

export class TakeSampleForm {
  @ChoiceField(['bag', 'hour', 'shift'])
  standsFor!: 'bag' | 'hour' | 'shift';

  @TextField({ optional: true, most: 40, example: 'B0012344', says: 'For a bag: its short number, SSCC or id' })
  bag?: string | null;

  @IdField({ optional: true, says: 'For an hour or a shift: id of the dryer' })
  dryerId?: string | null;

  @InstantField({ optional: true, says: 'The beginning of the hour, or any instant of the shift' })
  fromAt?: string | null;

  @InstantField({ optional: true, says: 'When it was taken; now where absent' })
  takenAt?: string | null;

  @TextField(late)
  reason?: string | null;
}

export class ReportResultForm {
  @TextField({ most: 40, example: 'S-2026-000123', says: 'Number or id of the sample' })
  sample!: string;

  @TextField(property)
  property!: string;

  @TextField(method)
  method!: string;

  @DecimalField(amount)
  amount!: string;

  @FlagField({ optional: true, says: 'There is a result of this property by this method already, and this is another' })
  isRetest?: boolean | null;

  @InstantField({ optional: true, says: 'When it was analysed; now where absent' })
  analysedAt?: string | null;

  @TextField(late)
  reason?: string | null;
}

export class CorrectResultForm {
  @ChoiceField(correctionReasons)
  why!: 'did-not-occur' | 'incorrect-data';

  @TextField({ most: 300, example: 'Typed with the point in the wrong place' })
  reason!: string;

  @TextField({ ...property, optional: true })
  property?: string | null;

  @TextField({ ...method, optional: true })
  method?: string | null;

  @DecimalField({ ...amount, optional: true })
  amount?: string | null;

  @InstantField({ optional: true })
  analysedAt?: string | null;
}

export class CorrectSampleForm {
  @TextField({ most: 40, example: 'S-2026-000123', says: 'Number or id of the sample' })
  sample!: string;

  @TextField({ most: 300, example: 'Entered for the wrong dryer', says: 'Why it stands for nothing' })
  reason!: string;
}
