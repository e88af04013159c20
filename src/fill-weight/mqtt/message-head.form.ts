import { InstantField, TextField } from '../../platform/web/fields.js';
import { FillWeightsQuery } from '../fill-weights.form.js';

const messagePattern = /^[A-Za-z0-9._:-]{1,64}$/;

/** What goes for a whole message. It takes what the query of the route takes: one description for both, so it extends it. */
export class MessageHeadForm extends FillWeightsQuery {
  @TextField({
    optional: true,
    most: 64,
    pattern: messagePattern,
    form: 'weight-message',
    example: 'W1-000481',
    says: 'The sender’s own id of the message: one that comes again is known by it',
  })
  message?: string | null;

  @InstantField({ optional: true, says: 'The time by the machine’s clock when it sent, as the header Device-Time' })
  sentAt?: string | null;
}
