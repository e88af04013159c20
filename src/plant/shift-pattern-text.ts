import type { ShiftPattern } from '../core/shift-calendar/shift-pattern.js';

/** Patterns read lately: the shift calendar keeps what it worked out beside the pattern itself. */
const readPatterns = new Map<string, ShiftPattern>();
const mostReadPatterns = 50;

/** A pattern from its canonical text; the same text gives the same object. */
export function readShiftPattern(text: string): ShiftPattern {
  const read = readPatterns.get(text);
  if (read !== undefined) return read;
  if (readPatterns.size >= mostReadPatterns) readPatterns.clear();
  const pattern = JSON.parse(text) as ShiftPattern;
  readPatterns.set(text, pattern);
  return pattern;
}
