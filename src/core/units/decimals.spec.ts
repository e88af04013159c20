import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  compareDecimals,
  decimalPlaces,
  fromScaledInteger,
  isDecimal,
  readDecimal,
  toScaledInteger,
  withDecimalPlaces,
} from './decimals.js';

describe('a result as it is typed', () => {
  it.each([
    ['0,02', '0.02'],
    ['0.02', '0.02'],
    ['0,020', '0.02'],
    [' 38 ', '38'],
    ['.5', '0.5'],
    ['5.', '5'],
    ['00.10', '0.1'],
    ['-0,0', '0'],
    ['+1,5', '1.5'],
    ['\u22121,5', '-1.5'],
  ])('reads %p as %s', (typed, decimal) => {
    expect(readDecimal(typed)).toEqual({ ok: true, decimal });
  });

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['1.234,5', 'two-separators'],
    ['1,2,3', 'two-separators'],
    ['0,02 %', 'not-a-number'],
    ['1e3', 'not-a-number'],
    ['.', 'not-a-number'],
    ['-', 'not-a-number'],
    ['١', 'not-a-number'],
    ['1'.repeat(31), 'too-long'],
  ])('refuses %p: %s', (typed, problem) => {
    expect(readDecimal(typed)).toEqual({ ok: false, problem });
  });

  it('gives canonical text, whatever was typed, and never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^-?\d{0,9}[.,]?\d{0,9}$/)), (typed) => {
        const reading = readDecimal(typed);
        if (!reading.ok) return;
        expect(isDecimal(reading.decimal)).toBe(true);
        expect(readDecimal(reading.decimal)).toEqual(reading);
      }),
    );
  });
});

describe('canonical decimals', () => {
  it.each(['0.020', '-0', '00', '.5', '5.', '1,5', '', '-0.0'])('does not take %p for canonical', (text) => {
    expect(isDecimal(text)).toBe(false);
  });

  it.each(['0.02', '0', '-0.5', '120', '-3'])('takes %p for canonical', (text) => {
    expect(isDecimal(text)).toBe(true);
  });

  it('compares a result with a limit exactly, at the limit too', () => {
    expect(compareDecimals('0.06', '0.1')).toBe(-1);
    expect(compareDecimals('0.06', '0.06')).toBe(0);
    expect(compareDecimals('0.061', '0.06')).toBe(1);
    expect(compareDecimals('-2', '1')).toBe(-1);
    expect(compareDecimals('10', '9')).toBe(1);
  });

  it('keeps apart what a binary fraction would confuse', () => {
    expect(compareDecimals('0.1000000000000000000000001', '0.1')).toBe(1);
  });

  it('counts the digits behind the point', () => {
    expect(decimalPlaces('0.02')).toBe(2);
    expect(decimalPlaces('38')).toBe(0);
    expect(() => decimalPlaces('0,02')).toThrow(RangeError);
  });

  it('shows a result with the decimals of its method, and rounds nothing off', () => {
    expect(withDecimalPlaces('0.02', 3)).toBe('0.020');
    expect(withDecimalPlaces('38', 1)).toBe('38.0');
    expect(withDecimalPlaces('0.0245', 3)).toBe('0.0245');
    expect(() => withDecimalPlaces('1', 13)).toThrow(RangeError);
  });
});

describe('decimals as whole numbers', () => {
  it('counts places', () => {
    expect(toScaledInteger('0.02', 4)).toBe(200);
    expect(fromScaledInteger(200, 4)).toBe('0.02');
    expect(fromScaledInteger(-5, 1)).toBe('-0.5');
    expect(fromScaledInteger(0, 3)).toBe('0');
  });

  it('refuses to lose digits or to leave the exact range', () => {
    expect(() => toScaledInteger('0.021', 2)).toThrow('more than 2 decimal places');
    expect(() => toScaledInteger('9007199254740992', 0)).toThrow('too large');
    expect(() => toScaledInteger('1', -1)).toThrow(RangeError);
    expect(() => fromScaledInteger(0.5, 1)).toThrow(RangeError);
  });

  it('comes back unchanged, and keeps the order', () => {
    const whole = fc.maxSafeInteger();
    fc.assert(
      fc.property(whole, whole, fc.integer({ min: 0, max: 12 }), (left, right, places) => {
        expect(toScaledInteger(fromScaledInteger(left, places), places)).toBe(left === 0 ? 0 : left);
        const order = compareDecimals(fromScaledInteger(left, places), fromScaledInteger(right, places));
        expect(order).toBe(Math.sign(left - right) + 0);
      }),
    );
  });
});
