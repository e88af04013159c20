import { ReportResultForm } from '../../laboratory/sample.form.js';
import { DecimalField, FlagField, InstantField, TextField } from '../../platform/web/fields.js';

/** A result as the analyst enters it on the page of its sample. */
export class EnterResultForm {
  @TextField({
    most: 130,
    pattern: /^[a-z][a-z0-9-]*\|.+$/,
    form: 'property-and-method',
    says: 'What was measured',
  })
  line!: string;

  @DecimalField({ least: '-1000000', example: '0.035' })
  amount!: string;

  @FlagField({ optional: true })
  isRetest?: boolean | null;

  @FlagField({ optional: true, says: 'It is what was measured, though it is far from what is usual' })
  isSure?: boolean | null;

  @InstantField({ optional: true })
  analysedAt?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

/** The same as the laboratory takes it. */
export function reportOf(form: EnterResultForm, sample: string): ReportResultForm {
  const [property, method] = splitLine(form.line);
  const { amount, isRetest = null, analysedAt = null, reason = null } = form;
  return Object.assign(new ReportResultForm(), { sample, property, method, amount, isRetest, analysedAt, reason });
}

/** A line as one word of a list. */
export function lineWord({ property, method }: { readonly property: string; readonly method: string }): string {
  return `${property}|${method}`;
}

function splitLine(word: string): readonly [string, string] {
  const place = word.indexOf('|');
  return [word.slice(0, place), word.slice(place + 1)];
}
