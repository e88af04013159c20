import { FlagField, FormListField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';

/** No pallet holds more packs than this: small packs of 100 g, a tonne (common practice, no source). */
const mostPacksOfPallet = 20_000;
const mostCount = 10_000_000;

/** Packs of a run by its cumulative count: from this one on, up to before `toCount`. */
export class PalletRangeForm {
  @TextField({ most: 40, example: 'PR-2026-000042', says: 'Number or id of the packing run' })
  run!: string;

  @WholeField({ most: mostCount, example: 480 })
  fromCount!: number;

  @WholeField({ most: mostCount, example: 960 })
  toCount!: number;
}

export class BuildPalletForm {
  @TextField({
    optional: true,
    most: 40,
    example: 'PR-2026-000042',
    says: 'The run, for the packs that come next on it',
  })
  run?: string | null;

  @WholeField({
    optional: true,
    least: 1,
    most: mostPacksOfPallet,
    example: 480,
    says: 'How many of them; absent: as many as a full pallet takes',
  })
  packCount?: number | null;

  @FormListField(() => PalletRangeForm, {
    optional: true,
    most: 50,
    says: 'Which packs, instead of the next of one run',
  })
  ranges?: PalletRangeForm[] | null;

  @IdField({ optional: true, says: 'The format that is meant; refused where the packs are of another' })
  formatId?: string | null;

  @IdField({ optional: true, says: 'Where it was put' })
  placeId?: string | null;

  @InstantField({ optional: true, says: 'When it was full; absent: now' })
  builtAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;

  @FlagField({ optional: true, says: 'false: no label is printed', example: true })
  label?: boolean | null;

  @TextField({
    optional: true,
    most: 24,
    pattern: /^(\(00\)|00)?\d{18}$/,
    form: 'the 18 digits of an SSCC',
    example: '095201230000000141',
    says: 'A number set aside for this device or sheet, which the pallet bears already; absent: the next',
  })
  sscc?: string | null;
}

/** Packs of one lot for a part of a split pallet. */
export class LotShareForm {
  @TextField({
    optional: true,
    most: 60,
    example: 'L6071A1',
    says: 'The code on the packs; absent where the pallet has one lot',
  })
  lot?: string | null;

  @WholeField({ least: 1, most: mostPacksOfPallet, example: 240 })
  packCount!: number;
}

export class PalletPartForm {
  @FormListField(() => LotShareForm, { most: 50, says: 'What goes onto this part, counted per lot' })
  shares!: LotShareForm[];

  @IdField({ optional: true, says: 'Where it was put' })
  placeId?: string | null;
}

export class SplitPalletForm {
  @FormListField(() => PalletPartForm, {
    least: 2,
    most: 20,
    says: 'The new pallets; together they hold all packs of the old one',
  })
  parts!: PalletPartForm[];

  @TextField({ most: 200, example: 'The customer takes half pallets' })
  reason!: string;

  @InstantField({ optional: true })
  splitAt?: string | null;

  @FlagField({ optional: true, says: 'false: no labels are printed', example: true })
  label?: boolean | null;
}

/** A pallet gets another SSCC: its packs were put onto another pallet, or its label is gone. */
export class ReplacePalletForm {
  @TextField({ most: 200, example: 'Broken board' })
  reason!: string;

  @InstantField({ optional: true })
  happenedAt?: string | null;

  @IdField({ optional: true, says: 'Where it was put; absent: where it was' })
  placeId?: string | null;
}

export class MergePalletsForm {
  @FormListField(() => MergedPalletForm, { least: 2, most: 20 })
  pallets!: MergedPalletForm[];

  @TextField({ most: 200, example: 'Two part pallets of the same lot' })
  reason!: string;

  @InstantField({ optional: true })
  happenedAt?: string | null;

  @IdField({ optional: true, says: 'Where it was put' })
  placeId?: string | null;
}

export class MergedPalletForm {
  @TextField({ most: 60, example: '095201230000000011', says: 'SSCC or id' })
  pallet!: string;
}

export class MovePalletForm {
  @IdField({ says: 'The store place' })
  placeId!: string;

  @InstantField({ optional: true })
  movedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class TakeApartForm {
  @TextField({ most: 200, example: 'Packs go back to the line for new cartons' })
  reason!: string;

  @InstantField({ optional: true })
  takenApartAt?: string | null;
}

export class CorrectPalletForm {
  @TextField({ most: 200, example: 'Built twice in the records' })
  reason!: string;
}
