import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatKilograms, kilogramsText, readKilograms } from './grams.js';

describe('a mass as it is typed', () => {
  it.each([
    ['996,5', 996_500],
    ['996.5', 996_500],
    ['996.5 kg', 996_500],
    ['996,5KG', 996_500],
    ['0', 0],
    ['1.234', 1_234],
    ['0,001', 1],
    ['996.5000', 996_500],
    ['1 034,5', 1_034_500],
    ['1\u202f034.5 kg', 1_034_500],
    ['12 345 678', 12_345_678_000],
    ['1000000000', 1_000_000_000_000],
  ])('reads %p as %i g', (typed, grams) => {
    expect(readKilograms(typed)).toEqual({ ok: true, grams });
  });

  it.each([
    ['', 'empty'],
    ['kg', 'empty'],
    ['1.234,5', 'two-separators'],
    ['-5', 'negative'],
    ['996.5005', 'finer-than-a-gram'],
    ['1000000000.001', 'too-large'],
    ['99999999999', 'too-large'],
    ['1 03,5', 'wrong-grouping'],
    ['10 34', 'wrong-grouping'],
    ['996 g', 'not-a-number'],
    ['about 996', 'not-a-number'],
  ])('refuses %p: %s', (typed, problem) => {
    expect(readKilograms(typed)).toEqual({ ok: false, problem });
  });

  it('never throws and never invents a fraction of a gram', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^\d{0,12}[.,]?\d{0,6}( ?kg)?$/)), (typed) => {
        const reading = readKilograms(typed);
        expect(!reading.ok || (Number.isSafeInteger(reading.grams) && reading.grams >= 0)).toBe(true);
      }),
    );
  });
});

describe('a mass as people read it', () => {
  it('shows the shortest exact number of kilograms', () => {
    expect(formatKilograms(996_500)).toBe('996.5 kg');
    expect(formatKilograms(1_000_000)).toBe('1000 kg');
    expect(formatKilograms(-1)).toBe('-0.001 kg');
    expect(formatKilograms(0)).toBe('0 kg');
    expect(kilogramsText(996_500)).toBe('996.5');
  });

  it('sets thousands apart and lines a column up where asked', () => {
    expect(formatKilograms(1_034_500, { thousands: true, minimumDecimals: 3 })).toBe('1\u202f034.500 kg');
    expect(formatKilograms(400_000_000, { thousands: true })).toBe('400\u202f000 kg');
    expect(formatKilograms(999_000, { thousands: true })).toBe('999 kg');
    expect(formatKilograms(-12_345_678, { thousands: true })).toBe('-12\u202f345.678 kg');
  });

  it('refuses half a gram', () => {
    expect(() => formatKilograms(0.5)).toThrow(RangeError);
  });

  it('reads back what it shows, to the gram', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10 ** 12 }),
        fc.boolean(),
        fc.integer({ min: 0, max: 3 }),
        (grams, thousands, minimumDecimals) => {
          expect(readKilograms(formatKilograms(grams, { thousands, minimumDecimals }))).toEqual({ ok: true, grams });
        },
      ),
    );
  });
});
