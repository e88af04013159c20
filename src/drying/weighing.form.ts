import { correctionReasons } from '../journal/void-fact.js';
import { ChoiceField, FlagField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { heaviestGrams } from './bag-fill.form.js';

export class ReweighBagForm {
  @TextField({ most: 40, example: 'B0012344', says: 'Short number, SSCC or id of the bag' })
  bag!: string;

  @WholeField({ least: 0, most: heaviestGrams, example: 998_300 })
  grossGrams!: number;

  @WholeField({ least: 0, most: 100_000, example: 1_800 })
  tareGrams!: number;

  @FlagField({ says: "The tare was not weighed but taken from the bag's type" })
  isPresetTare!: boolean;

  @IdField({ says: 'Id of the scale' })
  scaleId!: string;

  @InstantField({ optional: true, says: 'When it was weighed; now where absent' })
  weighedAt?: string | null;

  @FlagField({ optional: true, says: 'It is so already: a bag over its safe load is recorded and a point opened' })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}

export class CorrectWeighingForm {
  @ChoiceField(correctionReasons)
  why!: 'did-not-occur' | 'incorrect-data';

  @TextField({ most: 300, example: 'Tare of the other bag type' })
  reason!: string;

  @WholeField({ optional: true, least: 0, most: heaviestGrams, example: 998_300 })
  grossGrams?: number | null;

  @WholeField({ optional: true, least: 0, most: 100_000, example: 2_300 })
  tareGrams?: number | null;

  @FlagField({ optional: true })
  isPresetTare?: boolean | null;

  @IdField({ optional: true })
  scaleId?: string | null;

  @InstantField({ optional: true })
  weighedAt?: string | null;
}
