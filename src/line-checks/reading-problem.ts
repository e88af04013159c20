import { judgeReading, mostTimesKnown } from '../core/test-packs/judge-reading.js';
import type { FieldProblem } from '../platform/refusal.js';
import type { TestPiece } from './check-words.js';

/** Why a reading of a test pack cannot be meant, with the likely reason; null: it can, or the pack has no known weight. */
export function readingProblem(piece: TestPiece, measuredMilligrams: number, field: string): FieldProblem | null {
  const { knownMilligrams, allowedMilligrams, says } = piece;
  if (knownMilligrams === null || allowedMilligrams === null) return null;
  const { mistake } = judgeReading({ knownMilligrams, allowedMilligrams }, measuredMilligrams);
  if (mistake === null) return null;
  const facts = { piece: says, grams: measuredMilligrams / 1000, knownGrams: knownMilligrams / 1000 };
  return { field, code: `reading-is-${mistake}`, facts: { ...facts, times: mostTimesKnown } };
}
