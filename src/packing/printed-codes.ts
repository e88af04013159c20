import { normaliseCode, splitCodeTime } from '../core/identifiers/normalise-code.js';
import { printLotCode, type CodeFacts } from '../core/identifiers/print-code.js';
import { readCode } from '../core/identifiers/read-code.js';
import { addDays } from '../core/shift-calendar/calendar-day.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { formatOf, shiftAt } from '../plant/plant-facts.js';
import { bestBeforeOn } from './best-before.js';
import type { RunRow } from './packing-run-rows.js';

/** A coder may be set years off; its code is still read by the pattern. */
export const codeWindowDays = 3653;

/** What the coder should print, and what it prints. Both without the time of day. */
export interface ComparedCode {
  /** Null: the pattern asks for something that the line or its shift has no fitting word for. */
  readonly intended: string | null;
  readonly printed: string;
  readonly searchCode: string;
  readonly isAsIntended: boolean;
}

/**
 * Compares the code that was read off a pack with what the format's pattern asks for at that time. Case, spaces and
 * punctuation do not count: they are how people type.
 */
export async function compareCode(from: ReadFrom, run: RunRow, typed: string, at: Instant): Promise<ComparedCode> {
  const { codePattern } = await formatOf(from, run.formatId);
  const { productionOn } = await shiftAt(from, run.siteId, at);
  const intended = await intendedCodeOf(from, run, at);
  const lotText = withoutTime(codePattern, typed, productionOn);
  const searchCode = normaliseCode(lotText);
  const isAsIntended = intended !== null && searchCode === normaliseCode(intended);
  return { intended, printed: isAsIntended ? intended : lotText, searchCode, isAsIntended };
}

/** What the coder of a run should print at an instant, without the time of day; null where the pattern asks too much. */
export async function intendedCodeOf(from: ReadFrom, run: RunRow, at: Instant): Promise<string | null> {
  const { codePattern, bestBeforeMonths } = await formatOf(from, run.formatId);
  const { productionOn, shiftCode } = await shiftAt(from, run.siteId, at);
  return lotCodeOrNull(codePattern, {
    productionOn,
    lineCode: run.lineCode,
    shiftCode,
    localTime: null,
    bestBeforeOn: bestBeforeMonths === null ? null : bestBeforeOn(productionOn, bestBeforeMonths),
  });
}

/** Line and shift words are the plant's, the pattern is the format's: where they do not fit, nothing is intended. */
function lotCodeOrNull(pattern: string, facts: CodeFacts): string | null {
  try {
    return printLotCode(pattern, facts);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** The typed code without its time of day: by the pattern where it follows it, else where a time stands apart. */
function withoutTime(pattern: string, typed: string, productionOn: string): string {
  const window = {
    earliestOn: addDays(productionOn, -codeWindowDays),
    latestOn: addDays(productionOn, codeWindowDays),
  };
  const timed = readCode(pattern, typed, window).find((reading) => reading.localTime !== null);
  if (timed?.productionOn == null) return splitCodeTime(typed).lotText;
  const bestBefore = timed.bestBefore?.length === 7 ? `${timed.bestBefore}-01` : timed.bestBefore;
  const facts = { ...timed, productionOn: timed.productionOn, localTime: null, bestBeforeOn: bestBefore };
  return lotCodeOrNull(pattern, facts) ?? splitCodeTime(typed).lotText;
}
