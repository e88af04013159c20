import { scopeKinds, type ScopeKind } from '../disposition/standings.js';
import { IntersectionType } from '@nestjs/swagger';
import { ProofForm } from '../people/proof.form.js';
import { ChoiceField, IdField, IdListField, InstantField, TextField, WholeField } from '../platform/web/fields.js';

/** What a hold is to cover. */
export class HoldScopeForm {
  @ChoiceField(scopeKinds, { example: 'lot' })
  kind!: ScopeKind;

  @IdField({ says: 'The thing itself; of a shift its dryer or its line' })
  id!: string;

  @WholeField({ optional: true, says: 'For a part of a packing run: from this pack of its count on …' })
  fromCount?: number | null;

  @WholeField({ optional: true, least: 1, says: '… up to before this one' })
  toCount?: number | null;

  @InstantField({ optional: true, says: 'Of a shift, or of minutes of a packing run: from this instant on …' })
  fromAt?: string | null;

  @InstantField({
    optional: true,
    says: '… until before this one. Of a shift left out: the whole shift that the first instant falls in',
  })
  untilAt?: string | null;
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

/** Parts of what a hold reaches. */
export class NarrowedParts {
  @IdListField({ optional: true, least: 0, most: 200, says: 'Bags of a dryer run' })
  bagIds?: string[] | null;

  @IdListField({ optional: true, least: 0, most: 200 })
  palletIds?: string[] | null;

  @IdListField({ optional: true, least: 0, most: 50 })
  lotIds?: string[] | null;

  @IdField({ optional: true, says: 'Minutes of this packing run' })
  run?: string | null;

  @InstantField({ optional: true, says: 'From this minute on …' })
  fromAt?: string | null;

  @InstantField({ optional: true, says: '… up to before this one: packs that were surely packed between them' })
  untilAt?: string | null;
}

/** A hold that is to be narrowed, with the proof of who signs. */
export class NarrowHoldForm extends IntersectionType(NarrowedParts, ProofForm) {
  @TextField({ most: 40, example: 'H-2026-000007', says: 'Number or id of the hold' })
  hold!: string;

  @TextField({ most: 1000, example: 'The sieve was whole until 13:10', says: 'Why' })
  reason!: string;

  @TextField({
    optional: true,
    most: 4000,
    example: 'Sieve seen whole at 13:10 by two people; 40 packs of these pallets opened, nothing found.',
    says: 'Of a safety hold: why these parts can do no harm',
  })
  assessment?: string | null;
}

/** What a command is told of a narrowing: the proof of who signs has been looked at before. */
export type HoldNarrowed = Omit<NarrowHoldForm, 'password' | 'badge' | 'pin'>;
