import { WholeField } from '../platform/web/fields.js';

export class SetAsideForm {
  @WholeField({ least: 1, most: 100, example: 20, says: 'How many numbers' })
  numberCount!: number;
}
