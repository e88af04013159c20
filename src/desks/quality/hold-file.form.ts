import { ProofForm } from '../../people/proof.form.js';
import { ChoiceField, TextField } from '../../platform/web/fields.js';

/** The class of the hold that the page is about. */
export class ClassOnPageForm {
  @ChoiceField(['safety', 'quality'])
  hazard!: 'safety' | 'quality';

  @TextField({ most: 1000 })
  classReason!: string;
}

/** The lifting of the hold that the page is about, with the proof of who lifts. */
export class LiftOnPageForm extends ProofForm {
  @TextField({ most: 1000 })
  liftReason!: string;
}
