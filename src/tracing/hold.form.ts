import { scopeKinds, type ScopeKind } from '../disposition/standings.js';
import { ChoiceField, IdField, TextField, WholeField } from '../platform/web/fields.js';

/** What a hold is to cover. */
export class HoldScopeForm {
  @ChoiceField(scopeKinds, { example: 'lot' })
  kind!: ScopeKind;

  @IdField({ says: 'The thing itself' })
  id!: string;

  @WholeField({ optional: true, says: 'For a part of a packing run: from this pack of its count on …' })
  fromCount?: number | null;

  @WholeField({ optional: true, least: 1, says: '… up to before this one' })
  toCount?: number | null;
}

/** A hold to be placed. */
export class PlaceHoldForm extends HoldScopeForm {
  @TextField({ most: 500, example: 'metal check failed at 14:30, last good check 13:30', says: 'Why' })
  reason!: string;
}

/** Everything since the last good check is to be held. */
export class HoldSinceLastGoodForm {
  @IdField({ says: 'The failed line check' })
  check!: string;
}
