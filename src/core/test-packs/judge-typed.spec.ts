import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { judgeReading } from './judge-reading.js';
import { judgeTyped, verdictOf } from './judge-typed.js';

const pack = { knownMilligrams: 2_000_000, allowedMilligrams: 2000 };
const judged = (typed: string, showsNothing = false) => judgeTyped(pack, typed, showsNothing);

describe('a reading as it is typed', () => {
  it.each([
    ['2000,4', 400],
    ['2 000.4', 400],
    ['2\u202f000', 0],
    ['1998', -2000],
    ['2002', 2000],
  ])('%p passes', (typed, offMilligrams) => {
    expect(judged(typed)).toEqual({ found: 'passed', why: 'reading', offMilligrams });
  });

  it.each([
    ['2002.001', 2001],
    ['0', -2_000_000],
    ['5999', 3_999_000],
  ])('%p fails', (typed, offMilligrams) => {
    expect(judged(typed)).toEqual({ found: 'failed', why: 'reading', offMilligrams });
  });

  it.each([
    ['2,0004', 'thousandth'],
    ['2000,4000001', 'no-number'],
    ['2.0', 'thousandth'],
    ['2,000', 'thousandth'],
    ['2000400', 'thousandfold'],
    ['-1', 'below-zero'],
    ['20000.4', 'absurd'],
    ['NaN', 'no-number'],
    ['1.234,5', 'no-number'],
    ['2000 g', 'no-number'],
    ['9'.repeat(29), 'no-number'],
  ])('%p is not meant: %s', (typed, why) => {
    expect(judged(typed)).toEqual({ found: 'not-meant', why });
  });

  it('is missing where nothing was typed, and failed where the weigher shows nothing, but not both', () => {
    expect(judged('  ')).toEqual({ found: 'missing' });
    expect(judged('', true)).toEqual({ found: 'failed', why: 'none' });
    expect(judged('2000', true)).toEqual({ found: 'not-meant', why: 'both' });
  });

  it('is judged as the number that it is, whatever its size, with comma or point', () => {
    fc.assert(
      fc.property(fc.integer({ min: -3_000_000, max: 9_000_000 }), fc.constantFrom('.', ','), (milligrams, mark) => {
        const digits = String(Math.abs(milligrams)).padStart(4, '0');
        const typed = `${milligrams < 0 ? '-' : ''}${digits.slice(0, -3)}${mark}${digits.slice(-3)}`;
        const { passed, mistake } = judgeReading(pack, milligrams);
        expect(judged(typed).found).toBe(mistake !== null ? 'not-meant' : passed ? 'passed' : 'failed');
      }),
    );
  });
});

describe('a check by its readings', () => {
  const [good, bad, none] = [judged('2000'), judged('2003'), judged('')];

  it('fails with one that failed, passes when all do, and is open while one is missing or not meant', () => {
    expect(verdictOf([good, good])).toBe('passed');
    expect(verdictOf([good, bad])).toBe('failed');
    expect(verdictOf([bad, none])).toBeNull();
    expect(verdictOf([bad, judged('2')])).toBeNull();
    expect(verdictOf([])).toBeNull();
  });
});
