import { TextField } from '../../platform/web/fields.js';

/** A report asks for nothing: it says what is on record. */
export class WeightReportForm {
  /** A form with no field at all is taken for none. */
  @TextField({ optional: true, most: 1 })
  nothing?: string | null;
}
