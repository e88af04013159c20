import { InstantField, TextField } from '../../platform/web/fields.js';

/** A tip that is entered late, as far as it is known already. */
export class LateQuery {
  @TextField({ optional: true, most: 40, says: 'The bag that it is about' })
  bag?: string | null;

  @InstantField({ optional: true, says: 'When the spout was opened' })
  openedAt?: string | null;
}

export class BagQuery {
  @TextField({ optional: true, most: 40, says: 'The bag that it is about' })
  bag?: string | null;
}
