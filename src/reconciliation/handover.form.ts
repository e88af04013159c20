import { mostPacks } from '../packing/packing-run.form.js';
import { FlagField, IdField, TextField, WholeField } from '../platform/web/fields.js';

export class SignHandoverForm {
  @IdField({ says: 'Id of the packing line' })
  lineId!: string;

  @WholeField({
    optional: true,
    most: 100_000,
    example: 46,
    says: 'Packs on belts and tables; needed while a run is open',
  })
  loosePackCount?: number | null;

  @WholeField({ optional: true, most: mostPacks, example: 9840, says: 'The counter; absent: as it was counted last' })
  packCount?: number | null;

  @TextField({
    optional: true,
    most: 1000,
    example: 'The seal of lane 2 is worn',
    says: 'What the next lead must know',
  })
  notes?: string | null;
}

export class AnswerHandoverForm {
  @FlagField({ optional: true, says: 'false: not agreed; that blocks nothing', example: true })
  agrees?: boolean | null;

  @TextField({ optional: true, most: 1000, example: 'The reject bin was not empty', says: 'What is not agreed' })
  disagreement?: string | null;
}
