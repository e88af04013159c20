import { judgeReading } from '../core/test-packs/judge-reading.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { compareCode } from '../packing/printed-codes.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import type { PieceResult, TestPiece } from './check-words.js';
import { readingProblem } from './reading-problem.js';

/** What was found, as it is sent. */
interface FoundResult {
  readonly code: string;
  readonly passed?: boolean | null;
  readonly measuredMilligrams?: number | null;
}

/** The one thing that a plan without pieces looks at. */
export const wholeCheck = 'all';

/** What a check asks for, one by one. */
export function piecesOf(plan: Pick<CheckPlanRow, 'testPieces' | 'kind'>): readonly Pick<TestPiece, 'code'>[] {
  if (plan.testPieces.length > 0) return plan.testPieces;
  return plan.kind === 'printed-code' ? [] : [{ code: wholeCheck }];
}

/**
 * The result of each piece. A reading decides where the weight is known, exactly at the limit it passes; else the word
 * of who looked.
 *
 * @throws {BadForm} where a piece has no result, a result no piece, or a reading cannot be meant
 */
function judgePieces(plan: CheckPlanRow, found: readonly FoundResult[]): readonly PieceResult[] {
  const pieces = piecesOf(plan);
  const unknown = found.find(({ code }) => !pieces.some((piece) => piece.code === code));
  if (unknown !== undefined) throw wrongResult('result-of-no-piece', unknown.code);
  refuseMistakes(plan, found);
  return pieces.map(({ code }) => {
    const result = found.find((one) => one.code === code);
    const piece = plan.testPieces.find((one) => one.code === code);
    const measuredMilligrams = result?.measuredMilligrams ?? null;
    const passed = passedByReading(piece, measuredMilligrams) ?? result?.passed ?? null;
    if (passed === null) throw wrongResult('result-missing', piece?.says ?? code);
    return { code, passed, measuredMilligrams };
  });
}

function passedByReading(piece: TestPiece | undefined, measuredMilligrams: number | null): boolean | null {
  if (piece?.knownMilligrams == null || piece.allowedMilligrams === null || measuredMilligrams === null) return null;
  const { knownMilligrams, allowedMilligrams } = piece;
  return judgeReading({ knownMilligrams, allowedMilligrams }, measuredMilligrams).passed;
}

function refuseMistakes({ testPieces }: CheckPlanRow, found: readonly FoundResult[]): void {
  const problems = found.flatMap(({ code, measuredMilligrams }, place) => {
    const piece = testPieces.find((one) => one.code === code);
    if (piece === undefined || measuredMilligrams == null) return [];
    return readingProblem(piece, measuredMilligrams, `results.${place}.measuredMilligrams`) ?? [];
  });
  if (problems.length > 0) throw new BadForm(problems);
}

function wrongResult(code: string, piece: string): BadForm {
  return new BadForm([{ field: 'results', code, facts: { piece } }]);
}

/** What a check comes to. */
export interface Judged {
  readonly passed: boolean;
  readonly results: readonly PieceResult[];
  readonly readCode: string | null;
  /** What should be printed then; null where no code was read, or the pattern has no fitting word. */
  readonly intendedCode: string | null;
}

/**
 * A check passes when each of its pieces does and, where a code was read, when it is the one that the run should print
 * then.
 *
 * @throws {BadForm} where a result or the code is missing
 * @throws {Refusal} `no-run-to-read-code-of`
 */
export async function judgeCheck(
  from: ReadFrom,
  { plan, run, at }: { readonly plan: CheckPlanRow; readonly run: RunRow | null; readonly at: Instant },
  found: { readonly results?: readonly FoundResult[] | null; readonly readCode?: string | null },
): Promise<Judged> {
  const results = judgePieces(plan, found.results ?? []);
  const piecesPassed = results.every(({ passed }) => passed);
  if (plan.kind !== 'printed-code') return { passed: piecesPassed, results, readCode: null, intendedCode: null };
  if (found.readCode == null) throw new BadForm([{ field: 'readCode', code: 'field-missing', facts: {} }]);
  if (run === null) throw new Refusal('no-run-to-read-code-of', { line: plan.lineCode });
  const { intended, printed, isAsIntended } = await compareCode(from, run, found.readCode, at);
  return { passed: piecesPassed && isAsIntended, results, readCode: printed, intendedCode: intended };
}
