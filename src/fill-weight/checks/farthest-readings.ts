import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { readingProblem } from '../../line-checks/reading-problem.js';
import type { TestPiece } from '../../line-checks/check-words.js';
import { BadForm, type FieldProblem } from '../../platform/refusal.js';
import type { TestPackReadingForm } from './weigher-check.form.js';

/** The reading of a test pack that is farthest off. */
export interface FarthestReading {
  readonly code: string;
  readonly measuredMilligrams: number;
}

/**
 * Of each test pack that was weighed the reading that is farthest off its known weight: where that passes, all do.
 *
 * @throws {BadForm} each reading with no weight, two, of no test pack of the plan, that expected another weight, or that
 * cannot be meant
 */
export function farthestReadings(
  plan: CheckPlanRow,
  readings: readonly TestPackReadingForm[],
): readonly FarthestReading[] {
  const problems: FieldProblem[] = [];
  const farthest = new Map<string, { readonly off: number; readonly measuredMilligrams: number }>();
  readings.forEach((reading, place) => {
    const piece = pieceCalled(plan, reading.code);
    const wrong = problemOf(piece, reading, `readings.${place}`);
    const measuredMilligrams = milligramsOf(reading);
    if (wrong !== null) problems.push(wrong);
    if (wrong !== null || piece === undefined || measuredMilligrams === null) return;
    const off = Math.abs(measuredMilligrams - (piece.knownMilligrams ?? 0));
    if (off >= (farthest.get(piece.code)?.off ?? 0)) farthest.set(piece.code, { off, measuredMilligrams });
  });
  if (problems.length > 0) throw new BadForm(problems);
  return [...farthest].map(([code, { measuredMilligrams }]) => ({ code, measuredMilligrams }));
}

function pieceCalled(plan: CheckPlanRow, called: string): TestPiece | undefined {
  const byCode = plan.testPieces.find(({ code }) => code === called);
  return byCode ?? plan.testPieces.find(({ says }) => says.toLowerCase() === called.toLowerCase());
}

function problemOf(piece: TestPiece | undefined, reading: TestPackReadingForm, field: string): FieldProblem | null {
  if (piece === undefined)
    return { field: `${field}.code`, code: 'result-of-no-piece', facts: { piece: reading.code } };
  const [grams, milligrams] = [reading.readingGrams ?? null, reading.readingMilligrams ?? null];
  const at = `${field}.${grams === null ? 'readingMilligrams' : 'readingGrams'}`;
  if (grams !== null && milligrams !== null) return { field: at, code: 'weight-given-twice', facts: {} };
  const measured = milligramsOf(reading);
  if (measured === null) return { field: at, code: 'reading-missing', facts: { piece: piece.says } };
  return expectedProblem(piece, reading, field) ?? readingProblem(piece, measured, at);
}

/** The machine was told another weight of the pack than the plan knows: one of the two is wrong. */
function expectedProblem(piece: TestPiece, reading: TestPackReadingForm, field: string): FieldProblem | null {
  const { knownMilligrams, allowedMilligrams, says } = piece;
  if (reading.expectedGrams == null || knownMilligrams === null) return null;
  const expected = Math.round(reading.expectedGrams * 1000);
  if (Math.abs(expected - knownMilligrams) <= (allowedMilligrams ?? 0)) return null;
  const facts = { piece: says, expectedGrams: reading.expectedGrams, knownGrams: knownMilligrams / 1000 };
  return { field: `${field}.expectedGrams`, code: 'reading-expected-otherwise', facts };
}

function milligramsOf({ readingGrams, readingMilligrams }: TestPackReadingForm): number | null {
  if (readingGrams != null) return Math.round(readingGrams * 1000);
  return readingMilligrams ?? null;
}
