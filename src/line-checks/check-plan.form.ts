import {
  ChoiceField,
  ChoiceListField,
  FlagField,
  FormListField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../platform/web/fields.js';
import {
  checkEvents,
  checkKinds,
  testMaterials,
  type CheckEvent,
  type CheckKind,
  type TestMaterial,
} from './check-words.js';

/** One test piece, test pack or point to look at. Sizes and weights are the plant's own. */
export class TestPieceForm {
  @TextField({ most: 20, pattern: /^[a-z0-9][a-z0-9-]*$/, form: 'small-code', example: 'fe' })
  code!: string;

  @TextField({ most: 80, example: 'Ferrous, card 4', says: 'What it is called at the line' })
  says!: string;

  @ChoiceField(testMaterials, { optional: true, says: 'For metal detection' })
  material?: TestMaterial | null;

  @WholeField({
    optional: true,
    least: 1,
    most: 50_000,
    example: 2000,
    says: 'Diameter of the sphere, as set by the plant',
  })
  sphereMicrometres?: number | null;

  @WholeField({ optional: true, least: 1, example: 2_000_000, says: 'Known weight of a test pack' })
  knownMilligrams?: number | null;

  @WholeField({ optional: true, example: 2000, says: 'How far the reading may be off, exactly so much too' })
  allowedMilligrams?: number | null;
}

/** What a check asks for and when; a later version says all of it again. */
export class ChangeCheckPlanForm {
  @TextField({ most: 60, example: 'Detector after the sealer', says: 'The thing that is checked' })
  station!: string;

  @WholeField({ optional: true, least: 5, most: 10_080, example: 60, says: 'Absent: only at the events' })
  everyMinutes?: number | null;

  @WholeField({ most: 240, example: 10, says: 'How long after it is due it counts as overdue' })
  graceMinutes!: number;

  @ChoiceListField(checkEvents, { optional: true, says: 'What makes it due besides the clock' })
  events?: CheckEvent[] | null;

  @FormListField(() => TestPieceForm, { optional: true, least: 0, most: 6 })
  testPieces?: TestPieceForm[] | null;

  @FlagField({ optional: true, says: 'Somebody else must see it too' })
  needsSecondPerson?: boolean | null;

  @InstantField({ optional: true, says: 'Absent: from now on' })
  validFrom?: string | null;
}

export class AddCheckPlanForm extends ChangeCheckPlanForm {
  @IdField()
  lineId!: string;

  @IdField({ optional: true, says: 'Absent: whatever the line packs' })
  formatId?: string | null;

  @ChoiceField(checkKinds)
  kind!: CheckKind;
}

export class EndCheckPlanForm {
  @TextField({ most: 300, example: 'The detector was taken out' })
  reason!: string;
}
