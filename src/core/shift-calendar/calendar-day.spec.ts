import { describe, expect, it } from '@jest/globals';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { addDays, dayNumberOf, dayOfNumber, dayOfYear } from './calendar-day.js';
import { isoWeekOf } from './iso-week.js';

interface DayCheck {
  readonly date: string;
  readonly iso: readonly [number, number, number];
  readonly yday: number;
}

describe('a calendar day', () => {
  it('is counted from 1970-01-01', () => {
    expect(dayNumberOf('1970-01-02')).toBe(1);
    expect(dayOfNumber(20751)).toBe('2026-10-25');
    expect(dayNumberOf('1969-12-31')).toBe(-1);
  });

  it('steps over the ends of months and years', () => {
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
    expect(addDays('2024-03-01', -1)).toBe('2024-02-29');
  });

  it.each(['2026-02-30', '2026-2-3', '2026-02-03T00:00', '', '1599-12-31'])('refuses %j', (text) => {
    expect(() => dayNumberOf(text)).toThrow(RangeError);
    expect(() => dayOfYear(text)).toThrow(RangeError);
    expect(() => isoWeekOf(text)).toThrow(RangeError);
  });

  it('refuses a count of days that is not whole', () => {
    expect(() => dayOfNumber(0.5)).toThrow(RangeError);
  });

  it('has the number 366 only at the end of a leap year', () => {
    expect(dayOfYear('2024-12-31')).toBe(366);
    expect(dayOfYear('2026-12-31')).toBe(365);
    expect(dayOfYear('2026-01-01')).toBe(1);
  });

  it('can lie in a week of another year than its own', () => {
    expect(isoWeekOf('2027-01-01')).toEqual({ isoYear: 2026, isoWeek: 53, isoWeekday: 5 });
  });

  it('runs through the weekdays one by one, also before 1970', () => {
    const weekdays = Array.from({ length: 15 }, (_, day) => isoWeekOf(addDays('1969-12-22', day)).isoWeekday);
    expect(weekdays).toEqual([1, 2, 3, 4, 5, 6, 7, 1, 2, 3, 4, 5, 6, 7, 1]);
  });
});

describeWithChecks('calendar days against worked values', () => {
  it('agree in ISO week and day of the year', () => {
    const { iso_week_and_yday: days } = readChecks<{ iso_week_and_yday: readonly DayCheck[] }>(
      'quality/shift_calendar_tests.json',
    );
    expect(days.length).toBeGreaterThan(0);
    for (const { date, iso, yday } of days) {
      const { isoYear, isoWeek, isoWeekday } = isoWeekOf(date);
      expect([date, isoYear, isoWeek, isoWeekday]).toEqual([date, ...iso]);
      expect([date, dayOfYear(date)]).toEqual([date, yday]);
    }
  });
});
