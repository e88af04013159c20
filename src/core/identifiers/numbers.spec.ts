import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { describeWithChecks, readChecks } from '../../../test/support/checks.js';
import { gs1CheckDigit, hasGs1CheckDigit } from './check-digit.js';
import { isGln, makeGln } from './gln.js';
import { gtinProblem, isDemonstrationPrefix, isGtin, isRestrictedPrefix, isVariableMeasure, toGtin14 } from './gtin.js';
import { isCompanyPrefix, isSscc, makeSscc, ssccCapacity } from './sscc.js';

describe('the GS1 check digit', () => {
  it('is 3 for 629104150021, the worked example on gs1.org (sum 57)', () => {
    expect(gs1CheckDigit('629104150021')).toBe('3');
    expect(hasGs1CheckDigit('6291041500213')).toBe(true);
  });

  it('is asked of digits only', () => {
    expect(() => gs1CheckDigit('')).toThrow(RangeError);
    expect(() => gs1CheckDigit('12A')).toThrow(RangeError);
    expect(hasGs1CheckDigit('0')).toBe(false);
    expect(hasGs1CheckDigit('12x')).toBe(false);
  });

  it('notices every single wrong digit', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^\d{7,17}$/), fc.nat(), fc.integer({ min: 1, max: 9 }), (digits, at, step) => {
        const right = digits + gs1CheckDigit(digits);
        const place = at % right.length;
        const wrong =
          right.slice(0, place) + String((Number(right.charAt(place)) + step) % 10) + right.slice(place + 1);
        expect(hasGs1CheckDigit(wrong)).toBe(false);
      }),
    );
  });
});

describeWithChecks('the GS1 check digit against published numbers', () => {
  interface CheckDigits {
    readonly vectors: readonly { without_check_digit: string; check_digit: string; full: string }[];
    readonly wrong: readonly { full: string; correct_check_digit: string }[];
  }

  it('agrees with all of them, the right and the wrong ones', () => {
    const checks = readChecks<CheckDigits>('identification/check_digits.json');
    for (const { without_check_digit: digits, check_digit: check, full } of checks.vectors) {
      expect(digits + gs1CheckDigit(digits)).toBe(full);
      expect(gs1CheckDigit(digits)).toBe(check);
    }
    for (const { full, correct_check_digit: check } of checks.wrong) {
      expect(hasGs1CheckDigit(full)).toBe(false);
      expect(gs1CheckDigit(full.slice(0, -1))).toBe(check);
    }
    expect(checks.vectors.length).toBeGreaterThan(20);
  });

  it('knows every restricted prefix of the published table, and no issued one', () => {
    interface Prefixes {
      readonly gs1_prefix_13: readonly { from: string; to: string; use: string; issue: boolean }[];
      readonly gs1_8_prefix: readonly { from: string; to: string; use: string }[];
    }
    const { gs1_prefix_13: long, gs1_8_prefix: short } = readChecks<Prefixes>('identification/prefixes.json');
    const made = (prefix: string, length: number) => {
      const digits = prefix.padEnd(length - 1, '1');
      return digits + gs1CheckDigit(digits);
    };
    // A 13-digit number of the unused range has the same 14 digits as a restricted GTIN-8: that is why it is not issued.
    for (const { from, to, use } of long.filter((row) => !row.use.startsWith('unused'))) {
      expect(isRestrictedPrefix(made(from, 13))).toBe(use.startsWith('restricted'));
      expect(isRestrictedPrefix(made(to, 13))).toBe(use.startsWith('restricted'));
    }
    for (const { from, to, use } of short) {
      expect(isRestrictedPrefix(made(from, 8))).toBe(use.startsWith('restricted'));
      expect(isRestrictedPrefix(made(to, 8))).toBe(use.startsWith('restricted'));
    }
  });
});

describe('the number of a bag or pallet', () => {
  it('is extension digit, prefix, serial and check digit', () => {
    expect(makeSscc({ companyPrefix: '9520123', extensionDigit: 0, serial: 1 })).toBe('095201230000000011');
    expect(makeSscc({ companyPrefix: '9520123', extensionDigit: 3, serial: 999_999_999 })).toBe('395201239999999994');
  });

  it('is refused when the prefix has no number left', () => {
    expect(ssccCapacity('9520123')).toBe(1_000_000_000);
    expect(ssccCapacity('952012345678')).toBe(10_000);
    expect(() => makeSscc({ companyPrefix: '9520123', extensionDigit: 0, serial: 1_000_000_000 })).toThrow(
      'serial not from 0 to 999999999',
    );
    expect(() => makeSscc({ companyPrefix: '9520123', extensionDigit: 0, serial: -1 })).toThrow(RangeError);
    expect(() => makeSscc({ companyPrefix: '9520123', extensionDigit: 10, serial: 0 })).toThrow('extension digit');
    expect(() => makeSscc({ companyPrefix: '952', extensionDigit: 0, serial: 0 })).toThrow('company prefix');
  });

  it('is always 18 digits that check, and different for different serials', () => {
    const prefix = fc.stringMatching(/^\d{4,12}$/);
    fc.assert(
      fc.property(
        prefix,
        fc.integer({ min: 0, max: 9 }),
        fc.nat({ max: 9998 }),
        (companyPrefix, extensionDigit, serial) => {
          const sscc = makeSscc({ companyPrefix, extensionDigit, serial });
          expect(isSscc(sscc)).toBe(true);
          expect(makeSscc({ companyPrefix, extensionDigit, serial: serial + 1 })).not.toBe(sscc);
        },
      ),
    );
  });

  it('is not a text with a wrong digit, a space or another length', () => {
    expect(isSscc('095201230000000012')).toBe(false);
    expect(isSscc('0952012300000000 11')).toBe(false);
    expect(isSscc('6291041500213')).toBe(false);
    expect(isCompanyPrefix('95')).toBe(false);
  });
});

describe('the number of a trade item', () => {
  it('has 8, 12, 13 or 14 digits and becomes 14', () => {
    expect(toGtin14('02345673')).toBe('00000002345673');
    expect(toGtin14('416000336108')).toBe('00416000336108');
    expect(toGtin14('9520123000103')).toBe('09520123000103');
    expect(toGtin14('19520123000100')).toBe('19520123000100');
    expect(isGtin('095201230000000011')).toBe(false);
    expect(() => toGtin14('9520123000104')).toThrow(RangeError);
  });

  it('is refused for a pack format with the reason', () => {
    expect(gtinProblem('9520123000103')).toBeNull();
    expect(gtinProblem('952012300010x')).toBe('not-digits');
    expect(gtinProblem('')).toBe('not-digits');
    expect(gtinProblem('95201230001')).toBe('wrong-length');
    expect(gtinProblem('9520123000104')).toBe('check-digit');
    expect(gtinProblem('2112345678900')).toBe('restricted-prefix');
    expect(gtinProblem('02345673')).toBe('restricted-prefix');
  });

  it('tells demonstration numbers and goods of varying measure', () => {
    expect(isDemonstrationPrefix('9520123000103')).toBe(true);
    expect(isDemonstrationPrefix('19520123000100')).toBe(true);
    expect(isDemonstrationPrefix('95201238')).toBe(true);
    expect(isDemonstrationPrefix('6291041500213')).toBe(false);
    expect(isDemonstrationPrefix('952')).toBe(false);
    expect(isVariableMeasure('99520123000304')).toBe(true);
    expect(isVariableMeasure('9520123000103')).toBe(false);
  });
});

describe('the number of a site', () => {
  it('is 13 digits with a check digit', () => {
    expect(makeGln('9520123', 1)).toBe('9520123000011');
    expect(makeGln('952012345678', 0)).toBe('9520123456788');
    expect(isGln('9520123000011')).toBe(true);
    expect(isGln('9520123000012')).toBe(false);
    expect(() => makeGln('9520123', 100_000)).toThrow(RangeError);
    expect(() => makeGln('95', 1)).toThrow(RangeError);
  });
});
