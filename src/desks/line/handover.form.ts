import type { SignHandoverForm } from '../../reconciliation/handover.form.js';
import { FlagField, TextField, WholeField } from '../../platform/web/fields.js';
import { mostPacks } from '../../packing/packing-run.form.js';

/** The outgoing lead signs; where the incoming one shows who they are, both sign at once. */
export class LineHandoverForm implements Omit<SignHandoverForm, 'lineId'> {
  @WholeField({ optional: true, most: 100_000 })
  loosePackCount?: number | null;

  @WholeField({ optional: true, most: mostPacks })
  packCount?: number | null;

  @TextField({ optional: true, most: 1000 })
  notes?: string | null;

  @TextField({ optional: true, most: 60, says: 'The incoming lead: badge' })
  badge?: string | null;

  @TextField({ optional: true, most: 60, says: 'The incoming lead: who, with a PIN' })
  person?: string | null;

  @TextField({ optional: true, most: 60 })
  pin?: string | null;

  @TextField({ optional: true, most: 60, says: 'The incoming lead: code, with a password' })
  code?: string | null;

  @TextField({ optional: true, most: 200 })
  password?: string | null;

  @TextField({ optional: true, most: 1000, says: 'What the incoming lead does not agree with; it blocks nothing' })
  disagreement?: string | null;

  @FlagField({ optional: true, says: 'There is no incoming lead' })
  alone?: boolean | null;
}
