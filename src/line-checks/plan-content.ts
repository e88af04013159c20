import { canonicalText } from '../platform/canonical-text.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { formatOf } from '../plant/plant-facts.js';
import type { ChangeCheckPlanForm, TestPieceForm } from './check-plan.form.js';
import { checkEvents, type CheckKind, type TestPiece } from './check-words.js';

/** What a version of a plan says, in the shape of its row. */
export interface PlanContent {
  readonly station: string;
  readonly everyMinutes: number | null;
  readonly graceMinutes: number;
  readonly events: string;
  readonly testPieces: string;
  readonly needsSecondPerson: boolean;
}

/**
 * What a plan asks for, checked against its kind.
 *
 * @throws {Refusal} `check-plan-never-due`, `test-pieces-needed`, `test-piece-twice`, `test-piece-incomplete`
 */
export function planContent(kind: CheckKind, form: ChangeCheckPlanForm): PlanContent {
  const everyMinutes = form.everyMinutes ?? null;
  const events = checkEvents.filter((event) => form.events?.includes(event) ?? false);
  // A torn bag is found when it is found.
  if (everyMinutes === null && events.length === 0 && kind !== 'torn-bag') throw new Refusal('check-plan-never-due');
  const testPieces = (form.testPieces ?? []).map(pieceOf);
  refuseUnusablePieces(kind, testPieces);
  return {
    station: form.station,
    everyMinutes,
    graceMinutes: form.graceMinutes,
    events: canonicalText(events),
    testPieces: canonicalText(testPieces.map((piece) => ({ ...piece }))),
    needsSecondPerson: form.needsSecondPerson ?? false,
  };
}

function pieceOf(form: TestPieceForm): TestPiece {
  const { code, says, material, sphereMicrometres, knownMilligrams, allowedMilligrams } = form;
  return {
    code,
    says,
    material: material ?? null,
    sphereMicrometres: sphereMicrometres ?? null,
    knownMilligrams: knownMilligrams ?? null,
    allowedMilligrams: allowedMilligrams ?? null,
  };
}

function refuseUnusablePieces(kind: CheckKind, pieces: readonly TestPiece[]): void {
  const codes = pieces.map(({ code }) => code);
  const twice = codes.find((code, place) => codes.indexOf(code) !== place);
  if (twice !== undefined) throw new Refusal('test-piece-twice', { piece: twice });
  if (kind !== 'metal-detection' && kind !== 'weigher' && kind !== 'rejecter') return;
  if (pieces.length === 0) throw new Refusal('test-pieces-needed', { kind });
  // What goes over a rejecter is named; whether it was pushed out is looked at.
  if (kind === 'rejecter') return;
  const isWhole = (piece: TestPiece): boolean =>
    kind === 'weigher'
      ? piece.knownMilligrams !== null && piece.allowedMilligrams !== null
      : piece.material !== null && piece.sphereMicrometres !== null;
  const incomplete = pieces.find((piece) => !isWhole(piece));
  if (incomplete !== undefined) throw new Refusal('test-piece-incomplete', { piece: incomplete.code, kind });
}

/** @throws {NotFound} for a format that nobody knows here */
export async function refuseUnknownFormat(from: ReadFrom, siteId: string, formatId: string | null): Promise<void> {
  if (formatId === null) return;
  const format = await formatOf(from, formatId);
  if (format.siteId !== siteId) throw new NotFound('pack-format', formatId);
}
