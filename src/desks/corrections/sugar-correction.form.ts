import { heaviestGrams } from '../../drying/bag-fill.form.js';
import { correctionReasons, type CorrectionReason } from '../../journal/void-fact.js';
import { removalFates, removalKinds, removalReasons } from '../../packing/removal.form.js';
import { ChoiceField, IdField, InstantField, TextField, WholeField } from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';

/** What a page says of a removal that was recorded wrongly, in kilograms. */
export class RemovalCorrectionForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @ChoiceField(removalKinds, { optional: true })
  kind?: (typeof removalKinds)[number] | null;

  @WholeField({ optional: true, least: 1, most: 100_000 })
  packCount?: number | null;

  @KilogramsField({ optional: true, least: 1, most: 5_000_000 })
  netGrams?: number | null;

  @IdField({ optional: true })
  scaleId?: string | null;

  @ChoiceField(removalReasons, { optional: true })
  removalReason?: (typeof removalReasons)[number] | null;

  @ChoiceField(removalFates, { optional: true })
  fate?: (typeof removalFates)[number] | null;

  @InstantField({ optional: true })
  removedAt?: string | null;

  @TextField({ most: 300 })
  reason!: string;
}

/** Likewise of the weighing of a bulk bag. */
export class WeighingCorrectionForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @KilogramsField({ optional: true, most: heaviestGrams })
  grossGrams?: number | null;

  @KilogramsField({ optional: true, most: 100_000 })
  tareGrams?: number | null;

  @IdField({ optional: true })
  scaleId?: string | null;

  @InstantField({ optional: true })
  weighedAt?: string | null;

  @TextField({ most: 300 })
  reason!: string;
}
