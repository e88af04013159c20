import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { calendarDay, calendarDayParts, dayOfYearOn, daysInMonth, isLeapYear } from './calendar-day.js';
import { gs1Date, gs1DateOn, gs1Year } from './gs1-date.js';

describe('a day of the calendar', () => {
  it('knows leap years', () => {
    expect([2024, 2026, 2028, 2000, 1900, 2100].map(isLeapYear)).toEqual([true, false, true, true, false, false]);
    expect(daysInMonth(2027, 2)).toBe(28);
    expect(daysInMonth(2028, 2)).toBe(29);
    expect(daysInMonth(2028, 13)).toBe(0);
    expect(daysInMonth(2028, 0)).toBe(0);
  });

  it('is refused where there is none', () => {
    expect(calendarDay(2027, 2, 29)).toBeNull();
    expect(calendarDay(2026, 13, 1)).toBeNull();
    expect(calendarDay(2026, 1, 0)).toBeNull();
    expect(calendarDay(0, 1, 1)).toBeNull();
    expect(calendarDayParts('2026-02-30')).toBeNull();
    expect(calendarDayParts('26-02-03')).toBeNull();
  });

  it('has a number in its year, 366 only in a leap year', () => {
    expect(dayOfYearOn(2026, 123)).toBe('2026-05-03');
    expect(dayOfYearOn(2026, 365)).toBe('2026-12-31');
    expect(dayOfYearOn(2026, 366)).toBeNull();
    expect(dayOfYearOn(2028, 366)).toBe('2028-12-31');
    expect(dayOfYearOn(2026, 0)).toBeNull();
    expect(calendarDayParts('2026-05-03')).toEqual({ year: 2026, month: 5, day: 3, dayOfYear: 123 });
  });

  it('comes back from its number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 366 }), (year, dayOfYear) => {
        const dayOn = dayOfYearOn(year, dayOfYear);
        expect(dayOn === null).toBe(dayOfYear === 366 && !isLeapYear(year));
        if (dayOn !== null) expect(calendarDayParts(dayOn)).toMatchObject({ year, dayOfYear });
      }),
    );
  });
});

describe('a two-digit year', () => {
  it('lies from 49 years back to 50 years ahead', () => {
    expect(gs1Year(76, 2026)).toBe(2076);
    expect(gs1Year(77, 2026)).toBe(1977);
    expect(gs1Year(0, 2060)).toBe(2100);
    expect(gs1Year(99, 2001)).toBe(1999);
  });

  it('is always within that window', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 1900, max: 2900 }), (twoDigits, currentYear) => {
        const year = gs1Year(twoDigits, currentYear);
        expect(year % 100).toBe(twoDigits);
        expect(year - currentYear).toBeGreaterThanOrEqual(-49);
        expect(year - currentYear).toBeLessThanOrEqual(50);
      }),
    );
  });
});

describe('a date on a label', () => {
  it('means the last day of the month where no day is stated', () => {
    expect(gs1DateOn('270100', 2026)).toBe('2027-01-31');
    expect(gs1DateOn('280200', 2026)).toBe('2028-02-29');
    expect(gs1DateOn('270115', 2026)).toBe('2027-01-15');
    expect(gs1DateOn('271300', 2026)).toBeNull();
    expect(gs1DateOn('270230', 2026)).toBeNull();
    expect(gs1DateOn('27011', 2026)).toBeNull();
  });

  it('is written from a day', () => {
    expect(gs1Date('2027-01-31')).toBe('270131');
    expect(() => gs1Date('31.01.2027')).toThrow(RangeError);
  });
});
