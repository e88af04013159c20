import { calendarDay, daysInMonth } from './calendar-day.js';

/**
 * The full year of a two-digit year by the GS1 century rule: the one from 49 years back to 50 years ahead of the current year.
 *
 * With d = the two digits minus the last two of the current year: d of 51 and more means the century before, d of -50 and less the
 * century after (GS1 General Specifications 7.12, from memory; the date rule of the GS1 Barcode Syntax Engine).
 *
 * @param twoDigits 0 to 99.
 * @example
 * gs1Year(76, 2026) // 2076
 * gs1Year(77, 2026) // 1977
 */
export function gs1Year(twoDigits: number, currentYear: number): number {
  const difference = twoDigits - (currentYear % 100);
  const century = currentYear - (currentYear % 100);
  if (difference >= 51) return century - 100 + twoDigits;
  return difference <= -50 ? century + 100 + twoDigits : century + twoDigits;
}

/**
 * The day that a GS1 date YYMMDD means, as `YYYY-MM-DD`; null where it is not a date.
 *
 * Day 00 (day not stated, allowed for the dates of food) is the last day of the month (GS1 General Specifications, from memory).
 *
 * @example
 * gs1DateOn('270100', 2026) // '2027-01-31'
 */
export function gs1DateOn(yymmdd: string, currentYear: number): string | null {
  if (!/^\d{6}$/.test(yymmdd)) return null;
  const year = gs1Year(Number(yymmdd.slice(0, 2)), currentYear);
  const month = Number(yymmdd.slice(2, 4));
  const day = Number(yymmdd.slice(4));
  return calendarDay(year, month, day === 0 ? daysInMonth(year, month) : day);
}

/**
 * A calendar day as the YYMMDD of a GS1 date.
 *
 * @throws RangeError where `dayOn` is not `YYYY-MM-DD`.
 * @example
 * gs1Date('2027-01-31') // '270131'
 */
export function gs1Date(dayOn: string): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(dayOn)) throw new RangeError(`not a day: "${dayOn}"`);
  return dayOn.slice(2).replace(/-/g, '');
}
