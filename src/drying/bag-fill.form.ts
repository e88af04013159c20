import { FlagField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';

/** Limits that no bulk bag goes beyond: two and a half tonnes with its own weight. Common practice, no source. */
export const heaviestGrams = 2_500_000;

export class StartBagForm {
  @TextField({ most: 40, example: 'DR-2026-000012', says: 'Number or id of the dryer run' })
  run!: string;

  @IdField({ optional: true, says: 'Type of the bag; its safe load is taken where none is given' })
  bagTypeId?: string | null;

  @WholeField({
    optional: true,
    least: 1,
    most: heaviestGrams,
    example: 1_250_000,
    says: "Safe working load, from the maker's label",
  })
  safeLoadGrams?: number | null;

  @TextField({ optional: true, most: 60, example: 'LN-5521', says: 'Lot of the bag or its liner' })
  linerLot?: string | null;

  @InstantField({ optional: true, says: 'When filling began; now where absent' })
  startedAt?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}

export class CloseBagForm {
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

  @InstantField({ optional: true, says: 'When filling ended and it was weighed; now where absent' })
  filledAt?: string | null;

  @IdField({ optional: true, says: 'Id of the store place where it was put' })
  placeId?: string | null;

  @FlagField({ optional: true, says: 'It is so already: a bag over its safe load is recorded and a point opened' })
  happened?: boolean | null;

  @FlagField({ optional: true, says: 'A person typed it: what is not usual is asked about once more' })
  isTyped?: boolean | null;

  @TextField({ optional: true, most: 40, example: '998300/1800', says: 'Gross and tare that were looked at once more' })
  confirmed?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}

export class FillBagForm {
  @TextField({ most: 40, example: 'DR-2026-000012', says: 'Number or id of the dryer run' })
  run!: string;

  @WholeField({ least: 1, most: heaviestGrams, example: 1_250_000, says: "Safe working load, from the maker's label" })
  safeLoadGrams!: number;

  @TextField({ optional: true, most: 60, example: 'LN-5521', says: 'Lot of the bag or its liner' })
  linerLot?: string | null;

  @InstantField({ optional: true, says: 'When filling began; as filledAt where absent' })
  startedAt?: string | null;

  @WholeField({ least: 0, most: heaviestGrams, example: 998_300 })
  grossGrams!: number;

  @WholeField({ least: 0, most: 100_000, example: 1_800 })
  tareGrams!: number;

  @FlagField({ says: "The tare was not weighed but taken from the bag's type" })
  isPresetTare!: boolean;

  @IdField({ says: 'Id of the scale' })
  scaleId!: string;

  @InstantField({ optional: true, says: 'When filling ended and it was weighed; now where absent' })
  filledAt?: string | null;

  @IdField({ optional: true, says: 'Id of the store place where it was put' })
  placeId?: string | null;

  @FlagField({ optional: true, says: 'It is so already: a bag over its safe load is recorded and a point opened' })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}
