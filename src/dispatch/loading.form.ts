import { ChoiceField, IdField, InstantField, TextField, WholeField } from '../platform/web/fields.js';
import { shortCodes, type ShortCode } from './short-reasons.js';

export class LoadUnitForm {
  @TextField({ optional: true, most: 60, example: '095201230000000011', says: 'A pallet as scanned: SSCC or id' })
  pallet?: string | null;

  @TextField({ optional: true, most: 60, example: '4182-K', says: 'A whole bag: short number, SSCC or id' })
  bag?: string | null;

  @InstantField({ optional: true })
  loadedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class UnloadUnitForm {
  @TextField({ optional: true, most: 60, example: '095201230000000011', says: 'A pallet: SSCC or id' })
  pallet?: string | null;

  @TextField({ optional: true, most: 60, example: '4182-K', says: 'A bag: short number, SSCC or id' })
  bag?: string | null;

  @TextField({ most: 200, example: 'Wrong lot for this customer' })
  reason!: string;

  @IdField({ optional: true, says: 'The store place where it is put; absent: nobody says' })
  placeId?: string | null;
}

export class CountBlindForm {
  @WholeField({ most: 1000, example: 26, says: 'Units counted by walking round, without the list' })
  unitCount!: number;
}

export class CloseDeliveryForm {
  @TextField({ most: 40, example: 'S123456', says: 'Number of the seal' })
  seal!: string;

  @ChoiceField(shortCodes, { optional: true, says: 'Why less is on than was ordered' })
  shortCode?: ShortCode | null;

  @TextField({ optional: true, most: 200, says: 'The same in words; needed with the reason other' })
  shortReason?: string | null;

  @TextField({ optional: true, most: 500, says: 'Printed on the note as it is' })
  remarks?: string | null;

  @InstantField({ optional: true })
  closedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}
