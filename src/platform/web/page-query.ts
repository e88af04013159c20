import { IdField, WholeField } from './fields.js';

/** Which page of a list: newest first, those before a key. */
export class PageQuery {
  @IdField({ optional: true, says: 'The id of the last entry that was shown' })
  before?: string | null;

  @WholeField({ optional: true, least: 1, most: 200, example: 50 })
  limit?: number | null;
}
