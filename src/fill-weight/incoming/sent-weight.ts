import type { SentenceFacts } from '../../platform/refusal.js';

/** What a line may say of a weight, as the line names it. */
export const weightFields = ['sequence', 'at', 'netGrams', 'netMilligrams', 'head', 'rejected', 'line', 'run'] as const;
export type WeightField = (typeof weightFields)[number];

/** What one line said. One object serves all lines of a batch: it is overwritten by the next. */
export interface SentWeight {
  /** NaN: absent. */
  sequence: number;
  /** Hundredths of a second since 1970 UTC; NaN: absent. */
  atCentiseconds: number;
  /** NaN: absent. May be far outside of what a pack can weigh. */
  netMilligrams: number;
  /** −1: absent. */
  head: number;
  /** −1: absent. */
  rejected: number;
  /** Numbers of texts that the batch names; 0: absent. */
  line: number;
  run: number;
}

/** Why a line cannot be taken. */
export interface LineFault {
  readonly field: string;
  readonly code: string;
  readonly facts: SentenceFacts;
}

/** Reads one line, without its end, into `into`; a line in error leaves there what it may. */
export interface LineReader {
  read(bytes: Uint8Array, start: number, end: number, into: SentWeight): LineFault | null;
  /**
   * Reads a line of the usual shape whose end nobody has looked for yet.
   *
   * @param limit where the bytes end that have come
   * @returns where its newline stands; −1: of another shape, in error or not all there, to be read by `read`
   */
  readPlain(bytes: Uint8Array, start: number, limit: number, into: SentWeight): number;
}

export function emptyWeight(): SentWeight {
  const nothing = { sequence: Number.NaN, atCentiseconds: Number.NaN, netMilligrams: Number.NaN };
  return { ...nothing, head: -1, rejected: -1, line: 0, run: 0 };
}

export function clear(weight: SentWeight): void {
  weight.sequence = Number.NaN;
  weight.atCentiseconds = Number.NaN;
  weight.netMilligrams = Number.NaN;
  weight.head = -1;
  weight.rejected = -1;
  weight.line = 0;
  weight.run = 0;
}

export function fault(field: string, code: string, facts: SentenceFacts = {}): LineFault {
  return { field, code, facts };
}

/** Sequences count up to the largest whole number that is exact: 2^53 − 1. */
export const mostSequence = Number.MAX_SAFE_INTEGER;
export const mostHead = 255;
/** No run and no line has a longer name. */
export const mostTextLength = 60;

/** @returns the fault of a line that says too little; null where nothing is missing */
export function missingField(weight: SentWeight): LineFault | null {
  if (Number.isNaN(weight.sequence)) return fault('sequence', 'field-missing');
  if (Number.isNaN(weight.atCentiseconds)) return fault('at', 'field-missing');
  return Number.isNaN(weight.netMilligrams) ? fault('netGrams', 'field-missing') : null;
}
