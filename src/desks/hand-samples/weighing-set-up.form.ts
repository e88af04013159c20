import { SetHandPlanForm } from '../../fill-weight/hand-plan/hand-plan.form.js';
import { SetSilenceForm } from '../../fill-weight/silence/set-silence.form.js';
import { IdField, TextField } from '../../platform/web/fields.js';

/** What a page sends of a plan is what the command takes. */
export class PlanOnPageForm extends SetHandPlanForm {}

/** A plan that is to end: of a line and, after a stroke, of a format. */
export class EndPlanOnPageForm {
  @TextField({ most: 80 })
  plan!: string;

  @TextField({ most: 300 })
  reason!: string;
}

export class SilenceOnPageForm extends SetSilenceForm {
  @IdField()
  weigherId!: string;
}
