import { type CalendarDay, dayNumberOf, dayOfNumber } from './calendar-day.js';

/**
 * A day in the week calendar of ISO 8601: the week's own year, the week 1 to 53, and the weekday, Monday 1 to Sunday 7.
 */
export interface IsoWeekDay {
  readonly isoYear: number;
  readonly isoWeek: number;
  readonly isoWeekday: number;
}

/**
 * The ISO week of a day.
 *
 * A week belongs to the year that holds its Thursday (ISO 8601-1, definition of the calendar week, from memory), so the
 * last days of December can lie in week 1 of the next year, and the first of January in week 52 or 53 of the last.
 * Printing the calendar's year beside the ISO week is the usual mistake: use `isoYear`.
 *
 * @throws RangeError when the text is not a day, or its week reaches outside the years 1600 to 9999
 * @example isoWeekOf('2027-01-01') // { isoYear: 2026, isoWeek: 53, isoWeekday: 5 }
 */
export function isoWeekOf(on: CalendarDay): IsoWeekDay {
  const dayNumber = dayNumberOf(on);
  // 1970-01-01, day number 0, was a Thursday.
  const isoWeekday = ((((dayNumber + 3) % 7) + 7) % 7) + 1;
  const thursday = dayNumber - isoWeekday + 4;
  const isoYear = Number(dayOfNumber(thursday).slice(0, 4));
  const firstOfJanuary = dayNumberOf(`${isoYear}-01-01`);
  return { isoYear, isoWeek: Math.floor((thursday - firstOfJanuary) / 7) + 1, isoWeekday };
}
