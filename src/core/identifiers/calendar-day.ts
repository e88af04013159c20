/**
 * Whether a year of the Gregorian calendar has a 29 February.
 *
 * @example
 * isLeapYear(2028) // true
 */
export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/**
 * How many days a month has; 0 where `month` is not 1 to 12.
 *
 * @example
 * daysInMonth(2027, 2) // 28
 */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return [31, 0, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
}

/**
 * A calendar day as `YYYY-MM-DD`, or null where there is no such day.
 *
 * @param year 1 to 9999, @param month 1 to 12, @param day from 1; whole numbers.
 * @example
 * calendarDay(2027, 2, 29) // null
 */
export function calendarDay(year: number, month: number, day: number): string | null {
  if (!isYear(year) || !Number.isInteger(day) || day < 1 || day > daysInMonth(year, month)) return null;
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}`;
}

/**
 * The day of a year by its number, 1 for 1 January, as `YYYY-MM-DD`; null where the year has no such day (366 in a common year).
 *
 * @example
 * dayOfYearOn(2026, 123) // '2026-05-03'
 */
export function dayOfYearOn(year: number, dayOfYear: number): string | null {
  if (!isYear(year) || !Number.isInteger(dayOfYear) || dayOfYear < 1) return null;
  let left = dayOfYear;
  for (let month = 1; month <= 12; month += 1) {
    const length = daysInMonth(year, month);
    if (left <= length) return calendarDay(year, month, left);
    left -= length;
  }
  return null;
}

/** The parts of a calendar day as whole numbers. */
export interface CalendarDayParts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  /** 1 for 1 January, up to 366. */
  readonly dayOfYear: number;
}

/**
 * Takes a `YYYY-MM-DD` apart; null where it is not a day of the calendar.
 *
 * @example
 * calendarDayParts('2026-05-03') // { year: 2026, month: 5, day: 3, dayOfYear: 123 }
 */
export function calendarDayParts(dayOn: string): CalendarDayParts | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(dayOn);
  if (parts === null) return null;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (calendarDay(year, month, day) === null) return null;
  let dayOfYear = day;
  for (let before = 1; before < month; before += 1) dayOfYear += daysInMonth(year, before);
  return { year, month, day, dayOfYear };
}

function isYear(year: number): boolean {
  return Number.isInteger(year) && year >= 1 && year <= 9999;
}

function padded(value: number, places: number): string {
  return String(value).padStart(places, '0');
}
