import { IntersectionType } from '@nestjs/swagger';
import { ProofForm } from '../../people/proof.form.js';
import { IdField, IdListField, TextField } from '../../platform/web/fields.js';
import { NarrowedParts } from '../../tracing/hold.form.js';

/** What is chosen to be taken out of the hold that the page is about; times are the plant's own. */
export class NarrowQuery {
  @IdListField({ optional: true, least: 0, most: 200 })
  bagIds?: string[] | null;

  @IdListField({ optional: true, least: 0, most: 200 })
  palletIds?: string[] | null;

  @IdListField({ optional: true, least: 0, most: 50 })
  lotIds?: string[] | null;

  @IdField({ optional: true })
  run?: string | null;

  @TextField({ optional: true, most: 40 })
  fromAt?: string | null;

  @TextField({ optional: true, most: 40 })
  untilAt?: string | null;

  /** The choice was sent, so that an empty one is refused. */
  @TextField({ optional: true, most: 10 })
  look?: string | null;
}

/** The narrowing of the hold that the page is about, with the proof of who signs. */
export class NarrowOnPageForm extends IntersectionType(NarrowedParts, ProofForm) {
  @TextField({ most: 1000 })
  narrowReason!: string;

  @TextField({ optional: true, most: 4000 })
  assessment?: string | null;
}

/** A narrowing of the hold that the page is about, taken back. */
export class WidenOnPageForm {
  @IdField()
  narrowing!: string;

  @TextField({ most: 1000 })
  widenReason!: string;
}
