import { correctionReasons, type CorrectionReason } from '../journal/void-fact.js';
import { ChoiceField, IdField, InstantField, TextField, WholeListField } from '../platform/web/fields.js';

const nets = { least: 2, most: 200, smallest: 1, largest: 1_000_000, example: [20_010, 20_030, 19_990, 20_010] };

export class WeighHandSampleForm {
  @TextField({ most: 40, example: 'PR-2026-000042', says: 'Number or id of the run' })
  run!: string;

  @WholeListField({ ...nets, says: 'The net of each pack, in tenths of a gram' })
  netDecigrams!: number[];

  @IdField({ says: 'The scale that they were weighed on' })
  scaleId!: string;

  @InstantField({ optional: true, says: 'When they were weighed; absent: now' })
  weighedAt?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why it comes late' })
  reason?: string | null;
}

export class CorrectHandSampleForm {
  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @TextField({ most: 300, example: 'Gross was entered in the place of net' })
  reason!: string;

  @WholeListField({ ...nets, optional: true, says: 'The right nets; absent: as they were' })
  netDecigrams?: number[] | null;

  @IdField({ optional: true, says: 'The right scale; absent: as it was' })
  scaleId?: string | null;
}
