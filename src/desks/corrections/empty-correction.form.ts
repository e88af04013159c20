import { correctionReasons, type CorrectionReason } from '../../journal/void-fact.js';
import { ChoiceField, IdField, InstantField, TextField } from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';

export class EmptyCorrectionForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @InstantField({ optional: true })
  provenAt?: string | null;

  @KilogramsField({ optional: true, most: 100_000_000 })
  residueGrams?: number | null;

  @IdField({ optional: true })
  secondPersonId?: string | null;

  @TextField({ most: 300 })
  reason!: string;
}
