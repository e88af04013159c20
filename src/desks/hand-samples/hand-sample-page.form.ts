import { mostSamplePacks } from '../../fill-weight/hand-plan/hand-plan.form.js';
import { correctionReasons, type CorrectionReason } from '../../journal/void-fact.js';
import { BadForm, type FieldProblem } from '../../platform/refusal.js';
import { ChoiceField, DecimalField, IdField, InstantField, TextField, WholeField } from '../../platform/web/fields.js';

/** The fields of a page: one for each pack, in grams. */
const places = Array.from({ length: mostSamplePacks }, (_, place) => place);

/** How many packs a page asks for. */
export class SampleSizeQuery {
  @WholeField({ optional: true, least: 2, most: mostSamplePacks })
  packs?: number | null;
}

/** A hand sample as a page sends it. */
export class HandSampleOnPageForm {
  [net: `net${number}`]: string | null | undefined;

  @WholeField({ least: 2, most: mostSamplePacks })
  packs!: number;

  @IdField()
  scaleId!: string;

  @InstantField({ optional: true })
  weighedAt?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

/** The right values of one that was recorded; what is left empty stays as it was. */
export class CorrectSampleOnPageForm {
  [net: `net${number}`]: string | null | undefined;

  @ChoiceField(correctionReasons)
  why!: CorrectionReason;

  @IdField({ optional: true })
  scaleId?: string | null;

  @TextField({ most: 300 })
  reason!: string;
}

for (const { prototype } of [HandSampleOnPageForm, CorrectSampleOnPageForm]) {
  for (const place of places) {
    DecimalField({ optional: true, least: '0.1', most: '100000', example: '2001.4' })(prototype, `net${place}`);
  }
}

/**
 * The nets of a sample in tenths of a gram.
 *
 * @throws {BadForm} naming each pack without a weight
 */
export function netsOfPage(form: HandSampleOnPageForm): number[] {
  const asked = places.slice(0, form.packs);
  const missing = asked.flatMap((place): FieldProblem[] =>
    form[`net${place}`] == null ? [{ field: `net${place}`, code: 'field-missing', facts: {} }] : [],
  );
  if (missing.length > 0) throw new BadForm(missing);
  return asked.map((place) => decigramsOf(form[`net${place}`] ?? ''));
}

/** The nets as they were with those that were entered anew; null where none was. */
export function correctedNets(form: CorrectSampleOnPageForm, old: readonly number[]): number[] | null {
  const entered = old.map((_, place) => form[`net${place}`] ?? null);
  if (entered.every((grams) => grams === null)) return null;
  return old.map((net, place) => {
    const grams = entered[place] ?? null;
    return grams === null ? net : decigramsOf(grams);
  });
}

function decigramsOf(grams: string): number {
  return Math.round(Number(grams) * 10);
}
