import { IdField, TextField } from '../../platform/web/fields.js';
import { KilogramsField } from '../../platform/web/kilograms-field.js';

/** The heaviest that a bag's page takes. Common practice, no source. */
const mostGrams = 2_500_000;

export class StartRunForm {
  @IdField({ says: 'Id of the grade that the dryer makes' })
  gradeId!: string;
}

export class EndRunForm {
  @TextField({ most: 40, says: 'The run in hand' })
  run!: string;
}

export class BagOnForm {
  @TextField({ most: 40, says: 'The run in hand' })
  run!: string;

  @IdField({ optional: true, says: 'Type of the bag' })
  bagTypeId?: string | null;

  @KilogramsField({ optional: true, least: 1_000, most: mostGrams, says: 'Safe load, where no type is set up' })
  safeLoadGrams?: number | null;

  @TextField({ optional: true, most: 60, example: 'LN-5521' })
  linerLot?: string | null;
}

export class CloseHereForm {
  @IdField()
  bagId!: string;

  @KilogramsField({ most: mostGrams })
  grossGrams!: number;

  @KilogramsField({ optional: true, most: 100_000, says: 'Weighed tare; the usual one of the type where absent' })
  tareGrams?: number | null;

  @IdField()
  scaleId!: string;

  @TextField({ optional: true, most: 40 })
  confirmed?: string | null;
}

export class SampleHereForm {
  @TextField({ most: 40 })
  bag!: string;
}

export class CorrectHereForm {
  @KilogramsField({ optional: true, most: mostGrams })
  grossGrams?: number | null;

  @KilogramsField({ optional: true, most: 100_000 })
  tareGrams?: number | null;

  @TextField({ most: 300, example: 'Two digits the wrong way round' })
  reason!: string;
}

export class MoveHereForm {
  @TextField({ most: 60, example: 'B0012344', says: 'Short number or SSCC of the bag' })
  bag!: string;

  @IdField()
  placeId!: string;
}

export class CheckHereForm {
  @IdField()
  scaleId!: string;

  @KilogramsField({ most: mostGrams, says: 'The known weight that was put on' })
  knownGrams!: number;

  @KilogramsField({ most: mostGrams, says: 'What the scale showed' })
  shownGrams!: number;
}
