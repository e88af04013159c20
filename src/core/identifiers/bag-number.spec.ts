import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { makeBagNumber, mod11Radix2, readBagNumber, spacedBagNumber } from './bag-number.js';

const serials = fc.integer({ min: 1, max: 999_999_999 });
const labelCharacters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('');

describe('the short number of a bulk bag', () => {
  it('has the check character of ISO/IEC 7064 MOD 11-2', () => {
    // 079 → X and 0794 → 0: examples of the standard as implementations restate them (0794 from memory).
    expect(mod11Radix2('079')).toBe('X');
    expect(mod11Radix2('0794')).toBe('0');
    expect(() => mod11Radix2('')).toThrow(RangeError);
    expect(() => mod11Radix2('1A')).toThrow(RangeError);
  });

  it('is a B, six digits or more, and the check character, in groups of four to read aloud', () => {
    expect(makeBagNumber(1234)).toBe('B0012344');
    expect(makeBagNumber(999_999_999)).toMatch(/^B999999999[\dX]$/);
    expect(spacedBagNumber('B0012344')).toBe('B001 2344');
    expect(spacedBagNumber('B00123456')).toBe('B001 2345 6');
  });

  it('runs from 1 to 999 999 999', () => {
    for (const serial of [0, -1, 1.5, 1_000_000_000, Number.NaN]) {
      expect(() => makeBagNumber(serial)).toThrow(RangeError);
    }
  });

  it.each(['B0012344', 'b001 2344', "b001'2344", 'B001-234-4', '0012344', ' B00I2344\n', 'BOO12344', 'B001.2344'])(
    'is read as %p, too',
    (typed) => {
      expect(readBagNumber(typed)).toEqual({ serial: 1234, bagNumber: 'B0012344' });
    },
  );

  it.each([
    '',
    'B',
    'B0012345',
    'B0012434',
    'X0012344',
    'B00123X4',
    'B0000001',
    '0',
    '12344',
    'B12344',
    'B00012344',
    `B${'0'.repeat(40)}12344`,
  ])('is not read from %p', (typed) => {
    expect(readBagNumber(typed)).toBeNull();
  });

  it('comes back from what was printed, in any spacing', () => {
    fc.assert(
      fc.property(serials, (serial) => {
        const bagNumber = makeBagNumber(serial);
        expect(readBagNumber(bagNumber)).toEqual({ serial, bagNumber });
        expect(readBagNumber(spacedBagNumber(bagNumber).toLowerCase())).toEqual({ serial, bagNumber });
      }),
    );
  });

  it('is never taken for another when one character is wrong', () => {
    fc.assert(
      fc.property(serials, (serial) => {
        const right = makeBagNumber(serial);
        for (let at = 0; at < right.length; at += 1) {
          for (const wrong of labelCharacters) {
            const typed = right.slice(0, at) + wrong + right.slice(at + 1);
            const read = readBagNumber(typed);
            // O, I and B are read as 0, 1 and 8, and an 8 in the place of the B; then it is the same number, never another one.
            expect(read === null || read.serial === serial).toBe(true);
            const isLookAlike = at === 0 && wrong === '8';
            if (/[\dX]/.test(wrong) && wrong !== right.charAt(at) && !isLookAlike) expect(read).toBeNull();
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is refused when two neighbours changed places', () => {
    fc.assert(
      fc.property(serials, (serial) => {
        const right = makeBagNumber(serial);
        for (let at = 0; at < right.length - 1; at += 1) {
          const [first, second] = [right.charAt(at), right.charAt(at + 1)];
          if (first === second) continue;
          expect(readBagNumber(right.slice(0, at) + second + first + right.slice(at + 2))).toBeNull();
        }
      }),
    );
  });

  it('never makes the reader throw', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (typed) => {
        const read = readBagNumber(typed);
        expect(read === null || readBagNumber(read.bagNumber)?.serial === read.serial).toBe(true);
      }),
    );
  });
});
