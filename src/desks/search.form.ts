import { TextField } from '../platform/web/fields.js';

/** What somebody typed or scanned into the search box. */
export class SearchQuery {
  @TextField({ optional: true, most: 200, example: 'L6071A2 14:32', says: 'Any code: pack, bag, SSCC, note, film' })
  code?: string | null;

  @TextField({ optional: true, pattern: /^([01]\d|2[0-3]):[0-5]\d$/, form: 'a time such as 14:32', example: '14:32' })
  at?: string | null;

  @TextField({ optional: true, most: 60, says: 'Which of several things the code means' })
  meant?: string | null;
}

/** The same, where a code must be there. */
export class ThreadQuery extends SearchQuery {
  @TextField({ most: 200, example: 'L6071A2 14:32', says: 'Any code: pack, bag, SSCC, note, film' })
  declare code: string;
}
