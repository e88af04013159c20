import { WholeField } from '../platform/web/fields.js';

/** Which page of the journal. */
export class JournalQuery {
  @WholeField({ optional: true, least: 1, most: 1_000_000_000, example: 4711, says: 'Entries before this sequence' })
  before?: number | null;

  @WholeField({ optional: true, least: 1, most: 200, example: 50 })
  limit?: number | null;
}
