import { checkActions, type CheckAction } from '../../line-checks/check-words.js';
import { sharedCheck } from '../../platform/web/checks.js';
import {
  ChoiceField,
  field,
  FormListField,
  InstantField,
  TextField,
  WholeField,
  wrong,
  type FieldOptions,
} from '../../platform/web/fields.js';
import { seriesPattern } from '../fill-weights.form.js';

/** Beyond it no number is exact to the milligram. */
const mostGrams = 100_000_000;
/** Wider than any weigher shows: what cannot be meant is refused with its likely reason, by the test pack. */
const mostMilligrams = 100_000_000_000;

const IsGrams = sharedCheck('isGrams', isGrams);

/** Grams as a machine sends them: a JSON number, kept to the milligram. A text is refused: its comma may part anything. */
function GramsField(options: FieldOptions): PropertyDecorator {
  return field(options, { type: 'number', minimum: -mostGrams, maximum: mostGrams }, [
    IsGrams(wrong('field-not-grams')),
  ]);
}

function isGrams(value: unknown): boolean {
  return typeof value === 'number' && Number.isFinite(value) && Math.abs(value) <= mostGrams;
}

/** What the weigher showed for a test pack, once. */
export class TestPackReadingForm {
  @TextField({ most: 80, example: 'p1', says: 'The test pack, by its code or its name in the plan' })
  code!: string;

  @GramsField({ optional: true, example: 2000.4, says: 'What the weigher showed' })
  readingGrams?: number | null;

  @WholeField({ optional: true, least: -mostMilligrams, most: mostMilligrams, says: 'The same, in its place' })
  readingMilligrams?: number | null;

  @GramsField({ optional: true, example: 2000, says: 'What the machine expected, held against the plan' })
  expectedGrams?: number | null;
}

/** The result of a check that a pack weigher made with known test packs. */
export class WeigherCheckForm {
  @WholeField({
    most: Number.MAX_SAFE_INTEGER,
    example: 812,
    says: 'The machine’s own counter of checks; the same number with the same check whenever it comes',
  })
  sequence!: number;

  @TextField({
    optional: true,
    most: 30,
    pattern: seriesPattern,
    form: 'weight-series',
    example: '2',
    says: 'Names the counter: another series where it began again; absent: 1',
  })
  series?: string | null;

  @InstantField({ says: 'When the test packs were weighed' })
  at!: string;

  @TextField({
    optional: true,
    most: 60,
    example: 'Pack weigher 1',
    says: 'The thing that the plan checks; absent: the one that is called like the weigher, or the only one',
  })
  station?: string | null;

  @FormListField(() => TestPackReadingForm, {
    least: 1,
    most: 60,
    says: 'A pack may be weighed several times; the reading farthest off counts',
  })
  readings!: TestPackReadingForm[];

  @ChoiceField(checkActions, {
    optional: true,
    says: 'What was done at once where it failed, in the words of the page; absent: nobody said',
  })
  action?: CheckAction | null;

  @TextField({ optional: true, most: 300, example: 'Belt stopped by the weigher itself' })
  note?: string | null;
}
