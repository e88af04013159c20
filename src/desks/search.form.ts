import { FlagField, TextField } from '../platform/web/fields.js';

const codeField = {
  most: 200,
  example: 'L6071A2 14:32',
  says: 'Any code: pack, bag, SSCC, note, order, complaint, film, liner',
} as const;
const timeField = {
  optional: true,
  pattern: /^([01]\d|2[0-3]):[0-5]\d$/,
  form: 'clock-time',
  example: '14:32',
} as const;
const meantField = { optional: true, most: 120, says: 'Which of several things the code means' } as const;

/** What somebody typed or scanned into the search box; nothing yet when the page is opened. */
export class SearchQuery {
  @TextField({ ...codeField, optional: true })
  code?: string | null;

  @TextField(timeField)
  at?: string | null;

  @TextField(meantField)
  meant?: string | null;
}

/** The same, where a code must be there. */
export class ThreadQuery {
  @TextField(codeField)
  code!: string;

  @TextField(timeField)
  at?: string | null;

  @TextField(meantField)
  meant?: string | null;

  @FlagField({
    optional: true,
    says: 'Also what the picture of the thread is drawn from, and what the records show around it',
  })
  isDrawn?: boolean | null;
}
