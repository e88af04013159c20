import { TextField } from '../../platform/web/fields.js';

export class BagQuery {
  @TextField({ optional: true, most: 40, says: 'The bag that it is about' })
  bag?: string | null;
}
