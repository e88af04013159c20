import { calendarDayParts, type CalendarDayParts } from './calendar-day.js';
import { patternParts, type CodePart } from './code-pattern.js';

/** What a pack code is printed from. A fact that the pattern does not ask for may be null. */
export interface CodeFacts {
  /** The day that the coder prints, `YYYY-MM-DD`: the house's production day or the calendar's, as the coder is set. */
  readonly productionOn: string;
  readonly lineCode: string | null;
  readonly shiftCode: string | null;
  /** `HH:mm` by the coder's clock. */
  readonly localTime: string | null;
  /** `YYYY-MM-DD`, or null where the format has no best-before day. */
  readonly bestBeforeOn: string | null;
}

/**
 * The code as the coder prints it on one pack.
 *
 * @throws RangeError where the pattern can't be used, a fact that it asks for is null or not well formed, or a line or shift code has not
 * the width that the pattern gives it, or holds anything but capital letters and digits.
 * @example
 * printCode('L{y}{ddd}{line}{shift} {HH}:{mm}', {
 *   productionOn: '2026-05-03', lineCode: 'A', shiftCode: '2', localTime: '14:32', bestBeforeOn: null,
 * }) // 'L6123A2 14:32'
 */
export function printCode(pattern: string, facts: CodeFacts): string {
  return patternParts(pattern)
    .map((part) => printPart(part, facts))
    .join('');
}

/**
 * The code that all packs of a lot share: as printed, without the time of day and what sets it apart.
 *
 * @throws RangeError as `printCode`; the time may be null.
 * @example
 * printLotCode('L{y}{ddd}{line}{shift} {HH}:{mm}', {
 *   productionOn: '2026-05-03', lineCode: 'A', shiftCode: '2', localTime: null, bestBeforeOn: null,
 * }) // 'L6123A2'
 */
export function printLotCode(pattern: string, facts: CodeFacts): string {
  return withoutTime(patternParts(pattern))
    .map((part) => printPart(part, facts))
    .join('')
    .trim();
}

function printPart(part: CodePart, facts: CodeFacts): string {
  if (part.kind === 'literal') return part.text;
  if (part.kind === 'bestBefore') {
    const { year, month, day } = dayParts(facts.bestBeforeOn, 'best-before day');
    const value = { DD: day, MM: month, YY: year % 100, YYYY: year }[part.token];
    return String(value).padStart(part.width, '0');
  }
  if (part.token === 'line') return codeOf(facts.lineCode, part.width, 'line code');
  if (part.token === 'shift') return codeOf(facts.shiftCode, part.width, 'shift code');
  if (part.token === 'HH' || part.token === 'mm') return timePart(facts.localTime, part.token);
  const { year, month, day, dayOfYear } = dayParts(facts.productionOn, 'production day');
  const value = { y: year % 10, yy: year % 100, yyyy: year, ddd: dayOfYear, MM: month, DD: day }[part.token];
  return String(value).padStart(part.width, '0');
}

/** Drops hour and minute, the text between them, and the punctuation and spaces in front of the hour. */
function withoutTime(parts: readonly CodePart[]): readonly CodePart[] {
  const places = parts.flatMap((part, at) => (isTime(part) ? [at] : []));
  const [first, last] = [places.at(0), places.at(-1)];
  if (first === undefined || last === undefined) return parts;
  const before = parts.slice(0, first);
  const previous = before.at(-1);
  if (previous?.kind === 'literal') {
    before[before.length - 1] = { kind: 'literal', text: previous.text.replace(/[^\p{L}\p{N}]+$/u, '') };
  }
  const between = parts.slice(first, last + 1).filter((part) => part.kind !== 'literal' && !isTime(part));
  return [...before, ...between, ...parts.slice(last + 1)];
}

function isTime(part: CodePart): boolean {
  return part.kind === 'production' && (part.token === 'HH' || part.token === 'mm');
}

function dayParts(dayOn: string | null, name: string): CalendarDayParts {
  const parts = dayOn === null ? null : calendarDayParts(dayOn);
  if (parts === null) throw new RangeError(`the code asks for a ${name}: ${dayOn ?? 'none given'}`);
  return parts;
}

function codeOf(code: string | null, width: number, name: string): string {
  if (code === null || code.length !== width || !/^[A-Z0-9]+$/.test(code)) {
    throw new RangeError(`the code asks for a ${name} of ${width} capital letters or digits: ${code ?? 'none given'}`);
  }
  return code;
}

function timePart(localTime: string | null, token: 'HH' | 'mm'): string {
  const parts = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(localTime ?? '');
  if (parts === null) throw new RangeError(`the code asks for a time HH:mm: ${localTime ?? 'none given'}`);
  return (token === 'HH' ? parts[1] : parts[2]) ?? '';
}
