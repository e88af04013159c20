/** A day of the calendar as text, `YYYY-MM-DD`. It has no hours and no zone; production days are named by one. */
export type CalendarDay = string;

const dayShape = /^\d{4}-\d{2}-\d{2}$/;
const millisecondsOfDay = 86_400_000;
const earliestDayNumber = Date.parse('1600-01-01T00:00:00.000Z') / millisecondsOfDay;
const latestDayNumber = Date.parse('9999-12-31T00:00:00.000Z') / millisecondsOfDay;

/**
 * The count of days since 1970-01-01, negative before it: what day arithmetic is done on.
 *
 * @throws RangeError when the text is not a day of the calendar (30 February) within the years 1600 to 9999
 * @example dayNumberOf('1970-01-02') // 1
 */
export function dayNumberOf(on: CalendarDay): number {
  const milliseconds = dayShape.test(on) ? Date.parse(`${on}T00:00:00.000Z`) : NaN;
  if (Number.isNaN(milliseconds) || dayOfNumber(milliseconds / millisecondsOfDay) !== on) {
    throw new RangeError(`Not a day of the form YYYY-MM-DD: ${on}`);
  }
  return milliseconds / millisecondsOfDay;
}

/**
 * The day that lies a number of days since 1970-01-01.
 *
 * @param dayNumber a whole number within the years 1600 to 9999
 * @throws RangeError when it is not whole or lies outside
 * @example dayOfNumber(20751) // '2026-10-25'
 */
export function dayOfNumber(dayNumber: number): CalendarDay {
  const isInRange = dayNumber >= earliestDayNumber && dayNumber <= latestDayNumber;
  if (!Number.isInteger(dayNumber) || !isInRange) {
    throw new RangeError(`Not a whole day number within the years 1600 to 9999: ${dayNumber}`);
  }
  return new Date(dayNumber * millisecondsOfDay).toISOString().slice(0, 10);
}

/**
 * The day some days later, or earlier when the count is negative.
 *
 * @throws RangeError as `dayNumberOf` and `dayOfNumber` do
 * @example addDays('2026-12-31', 1) // '2027-01-01'
 */
export function addDays(on: CalendarDay, dayCount: number): CalendarDay {
  return dayOfNumber(dayNumberOf(on) + dayCount);
}

/**
 * The day of the year, as printed in many pack codes: 1 on 1 January, 365 or (leap years only) 366 on 31 December.
 *
 * @throws RangeError when the text is not a day
 * @example dayOfYear('2024-12-31') // 366
 */
export function dayOfYear(on: CalendarDay): number {
  return dayNumberOf(on) - dayNumberOf(`${on.slice(0, 4)}-01-01`) + 1;
}
