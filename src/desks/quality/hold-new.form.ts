import { scopeKinds, type ScopeKind } from '../../disposition/standings.js';
import { ChoiceField, IdField, InstantField, TextField, WholeField } from '../../platform/web/fields.js';
import { PlaceHoldForm } from '../../tracing/hold.form.js';

/** A hold from the page that shows its reach: quality may set its class at once. */
export class HoldFromPageForm extends PlaceHoldForm {
  @ChoiceField(['safety', 'quality'], { optional: true, says: 'By a quality officer: the class of the hold' })
  hazard?: 'safety' | 'quality' | null;

  @TextField({ optional: true, most: 500, says: 'Where to go on' })
  next?: string | null;
}

/** What a hold is to be about; nothing yet when the page is opened to choose. */
export class HoldNewQuery {
  @TextField({ optional: true, most: 200, says: 'Any code of the thing' })
  code?: string | null;

  @ChoiceField([...scopeKinds, 'delivery'], { optional: true })
  kind?: ScopeKind | 'delivery' | null;

  @IdField({ optional: true })
  id?: string | null;

  @WholeField({ optional: true })
  fromCount?: number | null;

  @WholeField({ optional: true, least: 1 })
  toCount?: number | null;

  @InstantField({ optional: true })
  fromAt?: string | null;

  @InstantField({ optional: true })
  untilAt?: string | null;

  @TextField({ optional: true, most: 500 })
  next?: string | null;

  /** The dryer or line of a shift, as `dryer-shift:id` … */
  @TextField({ optional: true, most: 60 })
  place?: string | null;

  @TextField({ optional: true, most: 10 })
  on?: string | null;

  @TextField({ optional: true, most: 20 })
  shift?: string | null;

  /** … or a run, by its number, and the plant's own times. */
  @TextField({ optional: true, most: 60 })
  run?: string | null;

  @TextField({ optional: true, most: 40 })
  from?: string | null;

  @TextField({ optional: true, most: 40 })
  until?: string | null;
}
