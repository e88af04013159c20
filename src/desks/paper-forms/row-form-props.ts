import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import type { FormRow } from './form-rows.js';
import type { PaperForm } from './paper-forms.js';

type Named = readonly { readonly id: string; readonly name: string }[];

/** What the form of a row knows, of whatever kind its sheet is. */
export interface RowFormProps {
  readonly viewer: Viewer;
  readonly form: PaperForm;
  readonly row: FormRow;
  /** Everybody who may have written it. */
  readonly people: Named;
  readonly scales: Named;
  /** A time without its day is the last one not later than this. */
  readonly until: string;
  readonly trouble: FormTrouble | null;
  /** The plan of the check that the row is of; null on other sheets, and where it is not chosen yet. */
  readonly plan: CheckPlanRow | null;
}
