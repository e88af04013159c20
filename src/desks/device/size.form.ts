import { ChoiceField } from '../../platform/web/fields.js';
import { sizeSteps } from './true-size.js';

export class SizeStepForm {
  @ChoiceField(sizeSteps.map(String), { says: 'By how many CSS pixels the drawn card is made wider' })
  step!: string;
}
