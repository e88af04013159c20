import { readPattern, type CodePart } from '../core/identifiers/code-pattern.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { shiftPatternAt } from './plant-facts.js';

/**
 * Whether the coders of the site can print a pattern.
 *
 * @throws {Refusal} `code-pattern-wrong`, `code-pattern-asks-best-before`, `code-pattern-fits-no-line`,
 * `code-pattern-fits-no-shift`
 */
export async function refuseCodePattern(
  from: ReadFrom,
  { siteId, at }: { readonly siteId: string; readonly at: Instant },
  format: { readonly codePattern: string; readonly bestBeforeMonths: number | null },
): Promise<void> {
  const reading = readPattern(format.codePattern);
  if (!reading.ok) {
    throw new Refusal('code-pattern-wrong', {
      pattern: format.codePattern,
      problem: reading.problem,
      token: reading.token,
    });
  }
  if (format.bestBeforeMonths === null && reading.parts.some((part) => part.kind === 'bestBefore')) {
    throw new Refusal('code-pattern-asks-best-before', { pattern: format.codePattern });
  }
  await refuseWidth(reading.parts, 'line', () => lineCodes(from, siteId));
  await refuseWidth(reading.parts, 'shift', () => shiftCodes(from, siteId, at));
}

/** Where lines and shifts are set up already, one of them must fit; a plant may set its formats up first. */
async function refuseWidth(
  parts: readonly CodePart[],
  token: 'line' | 'shift',
  readCodes: () => Promise<readonly string[]>,
): Promise<void> {
  const part = parts.find((one) => one.kind === 'production' && one.token === token);
  if (part?.kind !== 'production') return;
  const codes = await readCodes();
  if (codes.length > 0 && !codes.some((code) => code.length === part.width)) {
    throw new Refusal(`code-pattern-fits-no-${token}`, { width: part.width, codes: codes.join(', ') });
  }
}

async function lineCodes(from: ReadFrom, siteId: string): Promise<readonly string[]> {
  const lines = await from.sql<{ code: string }>`
    SELECT "code" FROM "packing_line" WHERE "site_id" = ${siteId} ORDER BY "code"`;
  return lines.map((line) => line.code);
}

async function shiftCodes(from: ReadFrom, siteId: string, at: Instant): Promise<readonly string[]> {
  try {
    return (await shiftPatternAt(from, siteId, at)).shifts.map((shift) => shift.code);
  } catch (error) {
    if (error instanceof NotFound) return [];
    throw error;
  }
}
