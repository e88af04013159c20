import { ProofForm } from '../people/proof.form.js';
import { ChoiceField, IdField, TextField } from '../platform/web/fields.js';

export class SetHoldClassForm {
  @TextField({ most: 40, example: 'H-2026-000007', says: 'Number or id of the hold' })
  hold!: string;

  @ChoiceField(['safety', 'quality'])
  hazard!: 'safety' | 'quality';

  @TextField({ most: 1000, example: 'Colour only, no hazard' })
  reason!: string;
}

/** What a command is told of a lift: the proof of who lifts has been looked at before. */
export type HoldLifted = Pick<LiftHoldForm, 'hold' | 'reason'>;

export class LiftHoldForm extends ProofForm {
  @TextField({ most: 40, example: 'H-2026-000007', says: 'Number or id of the hold' })
  hold!: string;

  @TextField({ most: 1000, example: 'Sieve was whole; nothing found in 40 packs' })
  reason!: string;
}

/** A narrowing that is taken back. */
export class WidenHoldForm {
  @IdField({ says: 'The narrowing' })
  narrowing!: string;

  @TextField({ most: 1000, example: 'The second sample was taken from another pallet' })
  reason!: string;
}
