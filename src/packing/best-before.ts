import { calendarDay, calendarDayParts, daysInMonth } from '../core/identifiers/calendar-day.js';

/**
 * The best-before day: so many months after the production day, the last day of the month where it has no such day
 * (common practice, no source).
 *
 * @example bestBeforeOn('2026-01-31', 1) // '2026-02-28'
 */
export function bestBeforeOn(productionOn: string, months: number): string {
  const parts = calendarDayParts(productionOn);
  if (parts === null) throw new RangeError(`not a day: ${productionOn}`);
  const monthsFromZero = parts.year * 12 + parts.month - 1 + months;
  const [year, month] = [Math.floor(monthsFromZero / 12), (monthsFromZero % 12) + 1];
  const day = calendarDay(year, month, Math.min(parts.day, daysInMonth(year, month)));
  if (day === null) throw new RangeError(`${months} months after ${productionOn} is no day`);
  return day;
}
