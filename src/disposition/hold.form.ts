import { ChoiceField, TextField } from '../platform/web/fields.js';

export class SetHoldClassForm {
  @TextField({ most: 40, example: 'H-2026-000007', says: 'Number or id of the hold' })
  hold!: string;

  @ChoiceField(['safety', 'quality'])
  hazard!: 'safety' | 'quality';

  @TextField({ most: 1000, example: 'Colour only, no hazard' })
  reason!: string;
}

export class LiftHoldForm {
  @TextField({ most: 40, example: 'H-2026-000007', says: 'Number or id of the hold' })
  hold!: string;

  @TextField({ most: 1000, example: 'Sieve was whole; nothing found in 40 packs' })
  reason!: string;
}
