import { InstantField, TextField } from '../../platform/web/fields.js';

export class LineAccountForm {
  @InstantField({ says: 'First instant of the shift' })
  fromAt!: string;

  @InstantField({ says: 'First instant that is no longer in it' })
  untilAt!: string;

  @TextField({ optional: true, least: 3, most: 1000, says: 'What the lead knows of the difference' })
  statedLoss?: string | null;
}
