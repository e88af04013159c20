import { IdListField, TextField } from '../platform/web/fields.js';

/** Late entries and corrections that somebody has looked at. */
export class ReviewChangesForm {
  @IdListField({ most: 200, says: 'Ids of the journal entries' })
  entryIds!: string[];

  @TextField({
    optional: true,
    most: 500,
    example: 'Spoke with the lead: the tablet was empty',
    says: 'What was found',
  })
  note?: string | null;
}
