import { roles } from '../platform/actor.js';
import { ChoiceField, TextField, WholeField } from '../platform/web/fields.js';
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

export class ShelvePointForm {
  @WholeField({ least: 5, most: 480, example: 30, says: 'For how long' })
  minutes!: number;
}

export class ShelveOnPageForm extends ShelvePointForm {
  @TextField({ optional: true, most: 500, says: 'The page on which it was pressed' })
  back?: string | null;
}

export class InterruptionQuery {
  @WholeField({ optional: true, least: 1, most: 90, example: 7, says: 'So many days back; absent: 7' })
  days?: number | null;
}
