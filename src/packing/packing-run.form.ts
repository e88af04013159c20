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
  reason?: string | null;
}

export class ChangeCodeForm {
  @TextField({ most: 120, example: 'L6071A1', says: 'The code as it stands on the pack, with or without its time' })
  code!: string;

  @WholeField({
    optional: true,
    most: mostPacks,
    example: 0,
    says: 'Count before the first pack with it; absent: the last count, if fresh',
  })
  packCount?: number | null;

  @InstantField({ optional: true, says: 'When the coder was changed; absent: now' })
  changedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

const filmKinds = ['film', 'preprinted-bag', 'label', 'glue'] as const;

export class FitFilmForm {
  @TextField({ most: 60, example: 'F-88123', says: 'The lot on the roll, bundle or drum' })
  film!: string;

  @ChoiceField(filmKinds, { optional: true, says: 'What it is; needed for a lot that is new here' })
  kind?: (typeof filmKinds)[number] | null;

  @TextField({
    optional: true,
    most: 60,
    example: 'FS-02',
    says: 'Code of the supplier; needed for a lot that is new here',
  })
  supplierCode?: string | null;

  @WholeField({
    optional: true,
    most: mostPacks,
    example: 1260,
    says: 'Count before the first pack with it; absent: the last count, if fresh',
  })
  packCount?: number | null;

  @InstantField({ optional: true, says: 'When it was fitted; absent: now' })
  fittedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class CountLoosePacksForm {
  @WholeField({ most: 100_000, example: 46, says: 'Accepted packs on belts and tables, on no pallet yet' })
  loosePackCount!: number;

  @WholeField({ most: mostPacks, example: 9840, says: 'Accepted packs since the start of the run' })
  packCount!: number;

  @InstantField({ optional: true, says: 'When they were counted; absent: now' })
  countedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class CloseRunForm {
  @WholeField({ most: mostPacks, example: 19_200, says: 'Accepted packs since the start of the run' })
  packCount!: number;

  @WholeField({ most: 100_000, example: 0, says: 'Accepted packs that are on no pallet: none, or so many' })
  loosePackCount!: number;

  @InstantField({ optional: true, says: 'When it was closed; absent: now' })
  closedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}
