import { IdField, InstantField, TextField } from '../platform/web/fields.js';

export class MoveBagForm {
  @TextField({ most: 40, example: 'B0012344', says: 'Short number, SSCC or id of the bag' })
  bag!: string;

  @IdField({ says: 'Id of the store place' })
  placeId!: string;

  @InstantField({ optional: true, says: 'When it was moved; now where absent' })
  movedAt?: string | null;

  @TextField({ optional: true, most: 300, says: 'Why this is entered late', example: 'Network was down' })
  reason?: string | null;
}

export class CorrectBagForm {
  @TextField({ most: 40, example: 'B0012344', says: 'Short number, SSCC or id of the bag' })
  bag!: string;

  @TextField({ most: 300, example: 'Started twice', says: 'Why this bag does not exist' })
  reason!: string;
}

export class PrintBagLabelForm {
  @TextField({ most: 40, example: 'B0012344', says: 'Short number, SSCC or id of the bag' })
  bag!: string;

  @TextField({ optional: true, most: 300, example: 'First one was torn', says: 'Why it is printed again' })
  reason?: string | null;
}
