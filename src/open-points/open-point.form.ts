import { roles } from '../platform/actor.js';
import { ChoiceField, TextField } from '../platform/web/fields.js';
import { PageQuery } from '../platform/web/page-query.js';

export class ExplainPointForm {
  @TextField({
    least: 3,
    most: 500,
    example: 'The check weights are with the verifier until Monday; bags go over scale 1',
  })
  explanation!: string;
}

export class OpenPointQuery extends PageQuery {
  @ChoiceField(['open', 'ended'], { optional: true, says: 'Absent: open' })
  state?: string | null;

  @ChoiceField(roles, { optional: true, example: 'quality-officer', says: 'Only those for this role' })
  role?: string | null;
}
