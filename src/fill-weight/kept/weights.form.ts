import { IdField, InstantField, TextField, WholeField } from '../../platform/web/fields.js';

const largestShiftMilligrams = 1_000_000;

export class CorrectTareForm {
  @IdField({ says: 'The run whose packs were tared wrongly' })
  runId!: string;

  @IdField({ says: 'The pack weigher that weighed them' })
  weigherId!: string;

  @TextField({ most: 40, example: '1', says: 'Its counter, as it names it' })
  series!: string;

  @WholeField({ most: Number.MAX_SAFE_INTEGER, example: 12_000, says: 'The first sequence of the range' })
  fromSequence!: number;

  @WholeField({ most: Number.MAX_SAFE_INTEGER, example: 19_999, says: 'The last sequence of the range, included' })
  toSequence!: number;

  @WholeField({
    least: -largestShiftMilligrams,
    most: largestShiftMilligrams,
    example: -500,
    says: 'What is added to each net; below zero where packs were tared too lightly',
  })
  addedMilligrams!: number;

  @TextField({ most: 300, example: 'New film is 0.5 g heavier' })
  reason!: string;
}

export class WithdrawTareCorrectionForm {
  @TextField({ most: 300, example: 'The film was the old one' })
  reason!: string;
}

export class DropWeightsForm {
  @InstantField({ says: 'Single weights before this instant go; sums and packs beyond T2 stay' })
  before!: string;

  @TextField({ most: 300, example: 'Kept for 24 months' })
  reason!: string;
}
