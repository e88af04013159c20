import { TextField } from '../../platform/web/fields.js';

export class ScanQuery {
  @TextField({ optional: true, most: 200, says: 'What was scanned' })
  scan?: string | null;
}
