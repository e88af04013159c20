import { InstantField, TextField } from '../platform/web/fields.js';

export class CheckPalletLabelForm {
  @TextField({ most: 200, example: '00095201230000000141', says: 'What was scanned from the label on the pallet' })
  label!: string;

  @TextField({ optional: true, most: 120, example: 'L6071A1', says: 'The code of a pack on it, where one was scanned' })
  packCode?: string | null;

  @InstantField({ optional: true, says: 'When it was scanned back; absent: now' })
  checkedAt?: string | null;

  @TextField({ optional: true, says: 'Why it comes late' })
  reason?: string | null;
}

export class SwapPalletLabelsForm {
  @TextField({ most: 200, example: '095201230000000141', says: 'SSCC or id of one pallet' })
  one!: string;

  @TextField({ most: 200, example: '095201230000000158', says: 'SSCC or id of the other' })
  other!: string;

  @TextField({ most: 200, example: 'The labels of the two were put on the wrong way round', says: 'What was wrong' })
  reason!: string;
}
