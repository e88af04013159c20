import { type Instant, millisecondsOfInstant } from './instant.js';

/** The name of a zone in the IANA time-zone database, such as `Europe/Berlin`. */
export type TimeZone = string;

const millisecondsOfSecond = 1000;
const millisecondsOfDay = 86_400_000;
const formats = new Map<TimeZone, Intl.DateTimeFormat>();

/**
 * Whether the running system knows a time zone by this name.
 *
 * @example isKnownTimeZone('Europe/Berlin') // true
 */
export function isKnownTimeZone(timeZone: string): boolean {
  try {
    formatOf(timeZone);
    return true;
  } catch {
    return false;
  }
}

/**
 * How many seconds the clocks of a zone are ahead of UTC at an instant: positive east of Greenwich.
 *
 * Whole seconds, not minutes, because a few zones kept odd offsets until 1972. The answer comes from the zone database
 * of the running system, so rules made after its edition are unknown to it: what was recorded is not computed again.
 *
 * @throws RangeError when the zone is unknown or `at` is no instant
 * @example offsetSecondsAt('Europe/Berlin', '2026-10-25T00:30:00.000Z') // 7200
 */
export function offsetSecondsAt(timeZone: TimeZone, at: Instant): number {
  return offsetMillisecondsAt(timeZone, millisecondsOfInstant(at)) / millisecondsOfSecond;
}

/**
 * The same in milliseconds, for an instant given as milliseconds since 1970: the form that the arithmetic here needs.
 *
 * @throws RangeError when the zone is unknown
 * @example offsetMillisecondsAt('Asia/Kolkata', 0) // 19800000
 */
export function offsetMillisecondsAt(timeZone: TimeZone, milliseconds: number): number {
  const day = Math.floor(milliseconds / millisecondsOfDay);
  const start = offsetAtStartOfDay(timeZone, day);
  // No zone has ever changed its clocks twice within a day.
  if (start === offsetAtStartOfDay(timeZone, day + 1)) return start;
  return askedOffset(timeZone, milliseconds);
}

/** Offsets at the beginning of days (of UTC) that were asked for lately. */
const recentDays = new Map<TimeZone, Map<number, number>>();
const recentDaysPerZone = 1000;

function offsetAtStartOfDay(timeZone: TimeZone, day: number): number {
  const own = recentDays.get(timeZone) ?? new Map<number, number>();
  const known = own.get(day);
  if (known !== undefined) return known;
  const offset = askedOffset(timeZone, day * millisecondsOfDay);
  if (own.size >= recentDaysPerZone) own.clear();
  recentDays.set(timeZone, own.set(day, offset));
  return offset;
}

/** Asks the zone database, which takes some hundred times as long as remembering. */
function askedOffset(timeZone: TimeZone, milliseconds: number): number {
  const wholeSeconds = Math.floor(milliseconds / millisecondsOfSecond) * millisecondsOfSecond;
  const fields: Record<string, string> = {};
  for (const part of formatOf(timeZone).formatToParts(wholeSeconds)) fields[part.type] = part.value;
  const { year = '', month = '', day = '', hour = '', minute = '', second = '' } = fields;
  const wall = Date.parse(`${year.padStart(4, '0')}-${month}-${day}T${hour}:${minute}:${second}.000Z`);
  return wall - wholeSeconds;
}

/** Making a format takes some fifty times as long as using it, so there is one per zone. */
function formatOf(timeZone: TimeZone): Intl.DateTimeFormat {
  const known = formats.get(timeZone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat('en-u-ca-iso8601-nu-latn', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  formats.set(timeZone, made);
  return made;
}
