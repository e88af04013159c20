import { ChoiceField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';

export const removalKinds = ['reject', 'sample', 'sweepings'] as const;
export const removalFates = ['rework', 'waste', 'laboratory', 'retained'] as const;

/** Why sugar was taken away. Our own list of words that packers use (common practice, no source). */
export const removalReasons = [
  'underweight',
  'overweight',
  'metal',
  'seal',
  'code',
  'torn',
  'start-up',
  'jam',
  'weight-check',
  'laboratory',
  'retained',
  'floor',
  'machine',
  'filter',
  'other',
] as const;

export class RemoveSugarForm {
  @ChoiceField(removalKinds)
  kind!: (typeof removalKinds)[number];

  @IdField({ optional: true, says: 'The line it left; its run and hopper at that time are found by it' })
  lineId?: string | null;

  @IdField({ optional: true, says: 'The hopper it left, where it was no line' })
  hopperId?: string | null;

  @WholeField({ optional: true, least: 1, most: 100_000, example: 12, says: 'Whole packs; only with a line' })
  packCount?: number | null;

  @WholeField({
    optional: true,
    least: 1,
    most: 5_000_000,
    example: 24_300,
    says: 'Net, weighed; absent: packs times mean',
  })
  netGrams?: number | null;

  @IdField({ optional: true, says: 'The scale; needed with netGrams' })
  scaleId?: string | null;

  @ChoiceField(removalReasons)
  removalReason!: (typeof removalReasons)[number];

  @ChoiceField(removalFates, { says: 'Where it goes' })
  fate!: (typeof removalFates)[number];

  @InstantField({ optional: true, says: 'When it was taken away; absent: now' })
  removedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}
