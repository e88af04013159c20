import { FlagField, FormListField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { heaviestGrams } from './bag-fill.form.js';

/** A bag that is there already and goes over our scale. */
export class WeighedBagForm {
  @WholeField({ least: 0, most: heaviestGrams, example: 1_001_200 })
  grossGrams!: number;

  @WholeField({ least: 0, most: 100_000, example: 1_800 })
  tareGrams!: number;

  @FlagField({ says: "The tare was not weighed but taken from the bag's type" })
  isPresetTare!: boolean;

  @WholeField({ least: 1, most: heaviestGrams, example: 1_250_000, says: "Safe working load, from the maker's label" })
  safeLoadGrams!: number;

  @TextField({ optional: true, most: 60, example: 'LN-5521', says: 'Lot of the bag or its liner' })
  linerLot?: string | null;

  @TextField({
    optional: true,
    pattern: /^\d{18}$/,
    form: 'sscc',
    example: '395212340000000014',
    says: 'The SSCC that it brings with it; it gets one of ours where absent',
  })
  sscc?: string | null;

  @IdField({ optional: true, says: 'Id of the store place where it was put' })
  placeId?: string | null;
}

export class ReceiveBagsForm {
  @IdField({ says: 'Id of the grade' })
  gradeId!: string;

  @TextField({ most: 40, example: 'SUP-07', says: 'Our code of the supplier' })
  supplierCode!: string;

  @TextField({ most: 60, example: 'A-4471' })
  supplierLot!: string;

  @TextField({ most: 60, example: 'DN 88213', says: "Number of the supplier's document" })
  documentNumber!: string;

  @IdField({ says: 'Id of the scale on which the bags were weighed' })
  scaleId!: string;

  @FormListField(() => WeighedBagForm, { most: 60 })
  bags!: WeighedBagForm[];

  @InstantField({ optional: true, says: 'When they were received; now where absent' })
  receivedAt?: string | null;

  @FlagField({ optional: true, says: 'It is so already: a bag over its safe load is recorded and a point opened' })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}

export class RecordOpeningStockForm {
  @IdField({ says: 'Id of the grade' })
  gradeId!: string;

  @IdField({ says: 'Id of the scale on which the bags were weighed' })
  scaleId!: string;

  @FormListField(() => WeighedBagForm, { most: 60 })
  bags!: WeighedBagForm[];

  @InstantField({ optional: true, says: 'When the stock was taken; now where absent' })
  countedAt?: string | null;

  @FlagField({ optional: true, says: 'It is so already: a bag over its safe load is recorded and a point opened' })
  happened?: boolean | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}
