import { judgeReading } from '../../core/test-packs/judge-reading.js';
import {
  checkActions,
  checkKinds,
  testMaterials,
  type CheckAction,
  type CheckKind,
} from '../../line-checks/check-words.js';
import { ChangeCheckPlanForm, type AddCheckPlanForm } from '../../line-checks/check-plan.form.js';
import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { piecesOf } from '../../line-checks/judge-check.js';
import type { CheckLineForm } from '../../line-checks/line-check.form.js';
import { readingProblem } from '../../line-checks/reading-problem.js';
import { mostPacks } from '../../packing/packing-run.form.js';
import { BadForm, Refusal, type FieldProblem } from '../../platform/refusal.js';
import {
  ChoiceField,
  DecimalField,
  FlagField,
  IdField,
  InstantField,
  TextField,
  WholeField,
} from '../../platform/web/fields.js';

/** A page shows at most so many pieces. */
export const piecePlaces = [0, 1, 2, 3, 4, 5] as const;

/** A check as a page sends it: pieces by their place, readings in grams, one button that says that all passed. */
export class CheckOnPageForm {
  [piece: `piece${number}`]: 'passed' | 'failed' | null | undefined;
  [reading: `reading${number}`]: string | null | undefined;

  @ChoiceField(['passed'], { optional: true })
  all?: 'passed' | null;

  /** What the page said that the readings come to, when the person signed. */
  @ChoiceField(['passed', 'failed'], { optional: true })
  signedAs?: 'passed' | 'failed' | null;

  @TextField({ optional: true, most: 120 })
  sameCode?: string | null;

  @TextField({ optional: true, most: 120 })
  readCode?: string | null;

  @TextField({ optional: true, most: 40 })
  bag?: string | null;

  @WholeField({ optional: true, most: mostPacks })
  packCount?: number | null;

  @ChoiceField(checkActions, { optional: true })
  action?: CheckAction | null;

  @TextField({ optional: true, most: 300 })
  note?: string | null;

  @IdField({ optional: true })
  secondPersonId?: string | null;

  @InstantField({ optional: true })
  checkedAt?: string | null;

  @TextField({ optional: true, most: 300 })
  reason?: string | null;
}

// What cannot be meant is refused by the test pack, with its likely reason; so a reading may be anything at first.
for (const place of piecePlaces) {
  ChoiceField(['passed', 'failed'], { optional: true })(CheckOnPageForm.prototype, `piece${place}`);
  const widely = { least: '-100000000', most: '100000000' };
  DecimalField({ optional: true, ...widely, example: '2000.4' })(CheckOnPageForm.prototype, `reading${place}`);
}

/**
 * The check that a page's form means.
 *
 * @throws {BadForm} where it says both that all passed and that a piece failed, or a reading cannot be meant
 */
export function checkOfPage(plan: CheckPlanRow, form: CheckOnPageForm): CheckLineForm {
  const hasAllPassed = form.all === 'passed' || form.sameCode != null;
  const results = piecesOf(plan).map(({ code }, place) => {
    const said = form[`piece${place}`] ?? (hasAllPassed ? 'passed' : null);
    if (hasAllPassed && said === 'failed') {
      throw new BadForm([{ field: `piece${place}`, code: 'check-says-both', facts: {} }]);
    }
    const measuredMilligrams = milligramsOf(form[`reading${place}`]);
    refuseMistake(plan, place, measuredMilligrams);
    if (said === null && measuredMilligrams === null) {
      throw new BadForm([{ field: `piece${place}`, code: 'result-missing', facts: { piece: saysOf(plan, place) } }]);
    }
    return { code, passed: said === null ? null : said === 'passed', measuredMilligrams };
  });
  return {
    results,
    readCode: form.readCode ?? form.sameCode ?? null,
    bag: form.bag ?? null,
    packCount: form.packCount ?? null,
    action: form.action ?? null,
    note: form.note ?? null,
    secondPersonId: form.secondPersonId ?? null,
    checkedAt: form.checkedAt ?? null,
    reason: form.reason ?? null,
  };
}

/**
 * The check of a weigher as its page sends it: a reading of each test pack, or that the weigher shows nothing for it, and
 * what the person signed. Whether it passes is computed; nobody is recorded to have signed what they were not shown.
 *
 * @throws {BadForm} where a reading is missing or cannot be meant
 * @throws {Refusal} `check-not-signed` where the page has not said yet what the readings come to
 */
export function readingsOfPage(plan: CheckPlanRow, form: CheckOnPageForm): CheckLineForm {
  const problems = plan.testPieces.flatMap((_, place) => readingFault(plan, form, place) ?? []);
  if (problems.length > 0) throw new BadForm(problems);
  const check = checkOfPage(plan, form);
  if (form.signedAs !== verdictOfReadings(plan, check)) {
    throw new Refusal('check-not-signed', { station: plan.station });
  }
  return check;
}

function readingFault(plan: CheckPlanRow, form: CheckOnPageForm, place: number): FieldProblem | null {
  const [reading, said] = [form[`reading${place}`] ?? null, form[`piece${place}`] ?? null];
  const field = `reading${place}`;
  if (reading !== null && said === 'failed') return { field, code: 'check-reading-and-none', facts: {} };
  if (reading !== null || said === 'failed') return null;
  return { field, code: 'reading-missing', facts: { piece: saysOf(plan, place) } };
}

function verdictOfReadings({ testPieces }: CheckPlanRow, { results }: CheckLineForm): 'passed' | 'failed' {
  const hasFailed = testPieces.some(({ knownMilligrams, allowedMilligrams }, place) => {
    const measured = results?.[place]?.measuredMilligrams ?? null;
    if (measured === null) return true;
    const pack = { knownMilligrams: knownMilligrams ?? 0, allowedMilligrams: allowedMilligrams ?? 0 };
    return !judgeReading(pack, measured).passed;
  });
  return hasFailed ? 'failed' : 'passed';
}

function refuseMistake({ testPieces }: CheckPlanRow, place: number, measuredMilligrams: number | null): void {
  const piece = testPieces[place];
  if (piece === undefined || measuredMilligrams === null) return;
  const problem = readingProblem(piece, measuredMilligrams, `reading${place}`);
  if (problem !== null) throw new BadForm([problem]);
}

function saysOf(plan: CheckPlanRow, place: number): string {
  return plan.testPieces[place]?.says ?? plan.station;
}

function milligramsOf(grams: string | null | undefined): number | null {
  return grams == null ? null : Math.round(Number(grams) * 1000);
}

/** A plan as a page sends it: pieces by their place, spheres in millimetres, weights in grams. */
export class ChangePlanOnPageForm extends ChangeCheckPlanForm {
  [text: `says${number}` | `material${number}`]: string | null | undefined;
  [size: `sphere${number}` | `known${number}` | `allowed${number}`]: string | null | undefined;
}

for (const place of piecePlaces) {
  const { prototype } = ChangePlanOnPageForm;
  TextField({ optional: true, most: 80 })(prototype, `says${place}`);
  ChoiceField(testMaterials, { optional: true })(prototype, `material${place}`);
  DecimalField({ optional: true, least: '0.001', most: '50', example: '2.0' })(prototype, `sphere${place}`);
  DecimalField({ optional: true, least: '0.001', most: '2000000', example: '2000' })(prototype, `known${place}`);
  DecimalField({ optional: true, least: '0', most: '1000', example: '2' })(prototype, `allowed${place}`);
}

/** A new plan as a page sends it. */
export class AddPlanOnPageForm extends ChangePlanOnPageForm {
  @IdField()
  lineId!: string;

  @IdField({ optional: true })
  formatId?: string | null;

  @ChoiceField(checkKinds)
  kind!: CheckKind;
}

/** What a page of one check is asked with. */
export class DoCheckQuery {
  @TextField({ optional: true, most: 40, says: 'The bag that was scanned' })
  bag?: string | null;
}

/** The press of the one button that holds; it brings nothing of its own. */
export class HoldTheseForm {
  @FlagField({ optional: true })
  all?: boolean | null;
}

/** Which new plan a page asks for. */
export class NewPlanQuery {
  @IdField()
  line!: string;

  @ChoiceField(checkKinds)
  kind!: CheckKind;
}

/** The plan that a page's form means; places without a name are left out. */
export function planOfPage(form: ChangePlanOnPageForm): ChangeCheckPlanForm {
  const testPieces = piecePlaces.flatMap((place) => {
    const says = form[`says${place}`] ?? null;
    if (says === null) return [];
    const material = (form[`material${place}`] ?? null) as (typeof testMaterials)[number] | null;
    return [
      {
        code: `p${place + 1}`,
        says,
        material,
        sphereMicrometres: thousandthsOf(form[`sphere${place}`]),
        knownMilligrams: thousandthsOf(form[`known${place}`]),
        allowedMilligrams: thousandthsOf(form[`allowed${place}`]),
      },
    ];
  });
  return {
    station: form.station,
    everyMinutes: form.everyMinutes ?? null,
    graceMinutes: form.graceMinutes,
    events: form.events ?? null,
    testPieces,
    needsSecondPerson: form.needsSecondPerson ?? null,
  };
}

export function newPlanOfPage(form: AddPlanOnPageForm): AddCheckPlanForm {
  const { lineId, formatId, kind } = form;
  return { ...planOfPage(form), lineId, formatId: formatId ?? null, kind };
}

function thousandthsOf(amount: string | null | undefined): number | null {
  return amount == null ? null : Math.round(Number(amount) * 1000);
}
