import { ChoiceField, TextField, WholeField } from '../platform/web/fields.js';

export const seriesPattern = /^[A-Za-z0-9][A-Za-z0-9.-]{0,29}$/;

/** What goes for every line of a batch that does not say otherwise. */
export class FillWeightsQuery {
  @TextField({ optional: true, most: 60, example: '1', says: 'Code or id of the line that was weighed, as a check' })
  line?: string | null;

  @TextField({
    optional: true,
    most: 60,
    example: 'PR-2026-000042',
    says: 'Number or id of the run; absent: the run that the line had at the time of the weight',
  })
  run?: string | null;

  @TextField({
    optional: true,
    most: 30,
    pattern: seriesPattern,
    form: 'weight-series',
    example: '2',
    says: 'Names the machine’s counter: another series where it began again; absent: 1',
  })
  series?: string | null;

  @ChoiceField(['refuse', 'skip'], {
    optional: true,
    says: 'What becomes of a batch with lines in error: refused whole, or taken without them; absent: refuse',
  })
  lines?: 'refuse' | 'skip' | null;

  @WholeField({ optional: true, most: 1_000_000, example: 500, says: 'Lines sent: another number was cut off' })
  count?: number | null;

  @ChoiceField(['newline'], { optional: true, says: 'The last line ends with a newline too, else it was cut off' })
  ends?: 'newline' | null;
}
