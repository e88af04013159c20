import { InstantField } from '../platform/web/fields.js';

/** Which instant's shift is asked for. */
export class ShiftQuery {
  @InstantField({ optional: true, says: 'Absent: now' })
  at?: string | null;
}
