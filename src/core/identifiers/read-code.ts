import { calendarDay, calendarDayParts, dayOfYearOn } from './calendar-day.js';
import { patternParts, type CodePart } from './code-pattern.js';
import { gs1Year } from './gs1-date.js';
import { asDigits, lookAlikesOf, swapsBetween, type Swap } from './look-alike.js';
import { normaliseCode } from './normalise-code.js';

/** The days between which a pack can have been made, both inclusive, `YYYY-MM-DD`. */
export interface CodeWindow {
  readonly earliestOn: string;
  /** Usually today; a little more where coders run ahead. */
  readonly latestOn: string;
}

/** What a typed pack code may say. What was not typed, or is not in the pattern, is null. */
export interface CodeReading {
  /** The day that the coder printed; null where the pattern tells only a best-before day. */
  readonly productionOn: string | null;
  readonly lineCode: string | null;
  readonly shiftCode: string | null;
  /** `HH:mm` by the coder's clock. */
  readonly localTime: string | null;
  /** `YYYY-MM-DD`, or `YYYY-MM` where the pattern prints the month alone. */
  readonly bestBefore: string | null;
  /** The lot part as `normaliseCode` stores it, as far as it was typed: the whole key, or its beginning. */
  readonly lotKey: string;
  /** Characters that were read as others that look like them; empty: read as typed. */
  readonly swaps: readonly Swap[];
}

/** Longer texts are no pack code; keeps reading cheap. */
const LONGEST_TYPED = 200;

/**
 * Reads a pack code as a stranger types it off the pack, by the pattern of one format.
 *
 * Forgiven are: lower case, spaces and punctuation lost or added, the letters O, I and B where a digit must stand (and either way round
 * where the code of a line or shift stands, if look-alikes are asked for), whatever stands in front of the production day, line and shift (the lot mark L, a best-before day, a
 * time) left out, and everything behind the production day left out (shift, time), each field whole. Something else in between is not.
 *
 * @param options `lookAlikes`: also what the line and shift may have been, were a letter read for a digit or a digit for a letter
 * @returns every reading that the calendar allows within the window, newest first, of one day the one as typed first. A code with one digit of the year fits one day per
 * decade, one with two digits one per century; day 366 fits leap years alone; a production day after the best-before day fits nothing.
 * Empty where the text does not follow the pattern. Never throws on the text.
 * @throws RangeError where the pattern can't be used or the window is not two days.
 * @example
 * readCode('L{y}{ddd}{line}{shift} {HH}:{mm}', 'l6123 a', { earliestOn: '2016-01-01', latestOn: '2026-11-24' })
 * // two readings, 2026-05-03 and 2016-05-02, each with lineCode 'A', shiftCode null, localTime null, lotKey '6123A'
 */
export function readCode(
  pattern: string,
  text: string,
  window: CodeWindow,
  options: { readonly lookAlikes?: boolean } = {},
): readonly CodeReading[] {
  const parts = patternParts(pattern)
    .map(squeezed)
    .filter((part) => part.kind !== 'literal' || part.text !== '');
  const [earliest, latest] = [calendarDayParts(window.earliestOn), calendarDayParts(window.latestOn)];
  if (earliest === null || latest === null) throw new RangeError('the window needs two days YYYY-MM-DD');
  if (text.length > LONGEST_TYPED) return [];
  const typed = squeeze(text);
  const readings = starts(parts).flatMap((start) => {
    return match(parts.slice(start), typed, options.lookAlikes ?? false).flatMap((fields) =>
      interpret(fields, isDayPattern(parts), { earliest, latest, window }),
    );
  });
  return newestFirst(readings);
}

interface Bounds {
  readonly earliest: { readonly year: number };
  readonly latest: { readonly year: number };
  readonly window: CodeWindow;
}

/** The typed value of each token, `production y` or `bestBefore YY`, and the lot part in printing order. */
interface Fields {
  readonly values: ReadonlyMap<string, string>;
  readonly lotKey: string;
  readonly swaps: readonly Swap[];
}

function squeeze(text: string): string {
  return text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}

function squeezed(part: CodePart): CodePart {
  return part.kind === 'literal' ? { kind: 'literal', text: squeeze(part.text) } : part;
}

/** Where the typed text may begin: at the front, or behind pieces that a person may leave out whole. */
function starts(parts: readonly CodePart[]): readonly number[] {
  const needed = parts.findIndex((part) => part.kind === 'production' && !isTime(part));
  const lastStart = needed < 0 ? parts.findIndex((part) => part.kind === 'bestBefore') : needed;
  return parts.flatMap((part, at) => {
    const opensBestBefore = part.kind === 'bestBefore' && parts[at - 1]?.kind !== 'bestBefore';
    const beginsWhole = part.kind === 'literal' || opensBestBefore || at === lastStart;
    return at === 0 || (at <= lastStart && beginsWhole) ? [at] : [];
  });
}

/** One way of reading the text as far as it was followed. */
interface Followed {
  readonly values: ReadonlyMap<string, string>;
  readonly lot: string;
  /** The whole text as it was read. */
  readonly read: string;
}

/** Follows the parts through the text until it is used up, which must happen where a part ends. As typed comes first. */
function match(parts: readonly CodePart[], typed: string, lookAlikes: boolean): readonly Fields[] {
  let ways: readonly Followed[] = [{ values: new Map(), lot: '', read: '' }];
  let at = 0;
  for (const part of parts) {
    if (at === typed.length || ways.length === 0) break;
    const width = part.kind === 'literal' ? part.text.length : part.width;
    const values = fieldValues(part, typed.slice(at, at + width), lookAlikes);
    ways = ways.flatMap((way) => values.map((value) => followed(way, part, value)));
    at += width;
  }
  if (at !== typed.length) return [];
  return ways.map(({ values, lot, read }) => ({
    values,
    lotKey: normaliseCode(lot),
    swaps: swapsBetween(typed, read),
  }));
}

function followed({ values, lot, read }: Followed, part: CodePart, value: string): Followed {
  return {
    values: part.kind === 'literal' ? values : new Map([...values, [`${part.kind} ${part.token}`, value]]),
    lot: isTime(part) ? lot : lot + value,
    read: read + value,
  };
}

/** What may stand in the place of a part, as typed first; nothing where the piece does not fit. */
function fieldValues(part: CodePart, piece: string, lookAlikes: boolean): readonly string[] {
  if (part.kind === 'literal') return piece === part.text ? [piece] : [];
  if (piece.length !== part.width) return [];
  if (part.kind === 'production' && (part.token === 'line' || part.token === 'shift')) {
    if (!/^[A-Z0-9]+$/.test(piece)) return [];
    return lookAlikes ? lookAlikesOf(piece) : [piece];
  }
  const digits = asDigits(piece);
  return /^[0-9]+$/.test(digits) ? [digits] : [];
}

function interpret({ values, lotKey, swaps }: Fields, needsDay: boolean, bounds: Bounds): readonly CodeReading[] {
  const field = (name: string) => values.get(name) ?? null;
  const localTime = timeOf(field('production HH'), field('production mm'));
  const bestBefore = bestBeforeOf(values, bounds.latest.year);
  if (localTime === false || bestBefore === false) return [];
  const rest = {
    lineCode: field('production line'),
    shiftCode: field('production shift'),
    localTime,
    bestBefore,
    lotKey,
    swaps,
  };
  if (!needsDay) return bestBefore === null ? [] : [{ productionOn: null, ...rest }];
  return productionDays(values, bounds)
    .filter((dayOn) => bestBefore === null || dayOn.slice(0, bestBefore.length) <= bestBefore)
    .map((productionOn) => ({ productionOn, ...rest }));
}

function productionDays(values: ReadonlyMap<string, string>, bounds: Bounds): readonly string[] {
  const typedYear = ['production y', 'production yy', 'production yyyy']
    .map((name) => values.get(name))
    .find((value) => value);
  if (typedYear === undefined) return [];
  const days: string[] = [];
  for (let year = bounds.latest.year; year >= bounds.earliest.year; year -= 1) {
    const dayOn = String(year).padStart(4, '0').endsWith(typedYear) ? dayInYear(values, year) : null;
    if (dayOn !== null && dayOn >= bounds.window.earliestOn && dayOn <= bounds.window.latestOn) days.push(dayOn);
  }
  return days;
}

function dayInYear(values: ReadonlyMap<string, string>, year: number): string | null {
  const dayOfYear = values.get('production ddd');
  if (dayOfYear !== undefined) return dayOfYearOn(year, Number(dayOfYear));
  return calendarDay(year, Number(values.get('production MM') ?? 0), Number(values.get('production DD') ?? 0));
}

/** False where there is no such time; an hour without its minute is no time yet. */
function timeOf(hour: string | null, minute: string | null): string | null | false {
  if (Number(hour ?? 0) > 23 || Number(minute ?? 0) > 59) return false;
  return hour === null || minute === null ? null : `${hour}:${minute}`;
}

/** False where there is no such day; null as long as month and year were not both typed. */
function bestBeforeOf(values: ReadonlyMap<string, string>, currentYear: number): string | null | false {
  const [long, short] = [values.get('bestBefore YYYY'), values.get('bestBefore YY')];
  const month = values.get('bestBefore MM');
  const day = values.get('bestBefore DD');
  if (month === undefined || (long === undefined && short === undefined)) return null;
  const year = long === undefined ? gs1Year(Number(short), currentYear) : Number(long);
  const dayOn = calendarDay(year, Number(month), Number(day ?? 1));
  if (dayOn === null) return false;
  return day === undefined ? dayOn.slice(0, 7) : dayOn;
}

function newestFirst(readings: readonly CodeReading[]): readonly CodeReading[] {
  const newness = ({ productionOn, bestBefore }: CodeReading) => productionOn ?? bestBefore ?? '';
  return readings.toSorted((one, other) => {
    if (newness(one) === newness(other)) return 0;
    return newness(one) > newness(other) ? -1 : 1;
  });
}

function isDayPattern(parts: readonly CodePart[]): boolean {
  return parts.some((part) => part.kind === 'production' && /^y+$/.test(part.token));
}

function isTime(part: CodePart): boolean {
  return part.kind === 'production' && (part.token === 'HH' || part.token === 'mm');
}
