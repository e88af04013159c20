import { ChoiceField, FormListField, InstantField, TextField, WholeField } from '../platform/web/fields.js';

/** No line counts more packs than this in one run: 200 a minute for a month (common practice, no source). */
export const mostPacks = 10_000_000;

/** One reading of a counter. */
export class CountForm {
  @WholeField({ most: mostPacks, example: 1260, says: 'Accepted packs since the start of the run' })
  packCount!: number;

  @InstantField({ says: 'When the counter was read' })
  countedAt!: string;
}

export class CountPacksForm {
  @WholeField({ optional: true, most: mostPacks, example: 1260, says: 'Accepted packs since the start of the run' })
  packCount?: number | null;

  @InstantField({ optional: true, says: 'When the counter was read; absent: now' })
  countedAt?: string | null;

  @FormListField(() => CountForm, { optional: true, most: 1500, says: 'Several readings of a device, instead of one' })
  counts?: CountForm[] | null;

  @ChoiceField(['minute', 'pallet', 'stop', 'handover', 'other'], { optional: true, says: 'What it was read for' })
  occasion?: 'minute' | 'pallet' | 'stop' | 'handover' | 'other' | null;

  @TextField({ optional: true, example: 'The tablet had no network', says: 'Why it comes late' })
  lateReason?: string | null;
}
