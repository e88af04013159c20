import { ChoiceField, FormListField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { returnCodes, type ReturnCode } from './short-reasons.js';

export class ReturnedUnitForm {
  @TextField({ optional: true, most: 60, example: '095201230000000011', says: 'A whole pallet: SSCC or id' })
  pallet?: string | null;

  @TextField({ optional: true, most: 60, example: '4182-K', says: 'A whole bag: short number, SSCC or id' })
  bag?: string | null;

  @TextField({ optional: true, most: 60, example: 'L6071A1', says: 'Loose packs: the code of their lot, or its id' })
  lot?: string | null;

  @WholeField({ optional: true, least: 1, most: 1_000_000, example: 12, says: 'Packs, with a lot' })
  packCount?: number | null;

  @WholeField({ most: 1_000_000, example: 12, says: 'Packs (1 for a bag) that the customer need not pay' })
  creditedCount!: number;
}

export class TakeBackForm {
  @ChoiceField(returnCodes, { says: 'Why it comes back' })
  why!: ReturnCode;

  @TextField({ optional: true, most: 500, says: 'In words; needed with the reason other' })
  remarks?: string | null;

  @IdField({ says: 'The place where it is put, apart from the stock' })
  placeId!: string;

  @FormListField(() => ReturnedUnitForm, { most: 100 })
  units!: ReturnedUnitForm[];

  @InstantField({ optional: true })
  returnedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export const fates = ['restock', 'destroy'] as const;

export class DecideReturnForm {
  @ChoiceField(fates, { says: 'Back into the stock, or destroyed. What came back from trade is never rework' })
  fate!: (typeof fates)[number];

  @TextField({ most: 200, example: 'Seal and wrapping whole, cold and dry all the way' })
  reason!: string;
}
