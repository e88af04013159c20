import { FlagField, TextField } from '../../platform/web/fields.js';

export class StoreWeightFileForm {
  @FlagField({ optional: true, says: 'Lines in error are left out; absent: they refuse the whole file' })
  skipsFaults?: boolean | null;
}

export class WeightFileQuery {
  @TextField({ optional: true, most: 100, example: 'export.csv', says: 'What the file is called' })
  name?: string | null;
}
