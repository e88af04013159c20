import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { ChoiceField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { stopReasons, type StopReason } from './line-stop.form.js';
import { mostPacks } from './packing-run.form.js';
import { removalFates, removalKinds, removalReasons } from './removal.form.js';

export class CorrectCountForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'Two digits were swapped' })
  reason!: string;

  @WholeField({ optional: true, most: mostPacks, example: 1620, says: 'The right count; needed for incorrect-data' })
  packCount?: number | null;
}

export class CorrectCoderChangeForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'Read off the wrong pack' })
  reason!: string;

  @TextField({ optional: true, most: 120, example: 'L6071A1', says: 'The right code; absent: as it was' })
  code?: string | null;

  @WholeField({ optional: true, most: mostPacks, example: 0, says: 'The right count before the first pack' })
  packCount?: number | null;

  @InstantField({ optional: true, says: 'The right time; absent: as it was' })
  changedAt?: string | null;
}

export class CorrectFilmUseForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'The roll beside it was meant' })
  reason!: string;

  @TextField({ optional: true, most: 60, example: 'F-88123', says: 'The right lot, known here; absent: as it was' })
  film?: string | null;

  @WholeField({ optional: true, most: mostPacks, example: 1260, says: 'The right count before the first pack' })
  packCount?: number | null;
}

export class CorrectRemovalForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'Tare of the bin was not taken off' })
  reason!: string;

  @ChoiceField(removalKinds, { optional: true })
  kind?: (typeof removalKinds)[number] | null;

  @WholeField({ optional: true, least: 1, most: 100_000, example: 12 })
  packCount?: number | null;

  @WholeField({ optional: true, least: 1, most: 5_000_000, example: 24_300 })
  netGrams?: number | null;

  @IdField({ optional: true })
  scaleId?: string | null;

  @ChoiceField(removalReasons, { optional: true })
  removalReason?: (typeof removalReasons)[number] | null;

  @ChoiceField(removalFates, { optional: true })
  fate?: (typeof removalFates)[number] | null;

  @InstantField({ optional: true, says: 'When it was really taken away; absent: as it was' })
  removedAt?: string | null;
}

export class CorrectStopForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'It was the other line' })
  reason!: string;

  @ChoiceField(stopReasons, { optional: true, says: 'The right word; needed for incorrect-data' })
  stopReason?: StopReason | null;
}

export class CorrectLooseCountForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'The table behind the shrink tunnel was forgotten' })
  reason!: string;

  @WholeField({ optional: true, most: 100_000, example: 46, says: 'The right number; needed for incorrect-data' })
  loosePackCount?: number | null;
}
