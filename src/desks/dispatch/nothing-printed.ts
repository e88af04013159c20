import { Refusal } from '../../platform/refusal.js';

/** The form was looked over and is as it should be; printing is asked for by another button. */
export class NothingPrinted extends Refusal {
  constructor() {
    super('nothing-printed');
  }
}
