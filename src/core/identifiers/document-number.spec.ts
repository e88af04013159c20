import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { makeDocumentNumber, readDocumentNumber } from './document-number.js';

const delivery = { prefix: 'DN', year: 2026, serial: 123 };

describe('the number of a paper', () => {
  it('is prefix, year and serial', () => {
    expect(makeDocumentNumber(delivery)).toBe('DN-2026-000123');
  });

  it.each([
    { ...delivery, serial: 0 },
    { ...delivery, serial: 1_000_000 },
    { ...delivery, year: 26 },
    { ...delivery, prefix: 'dn' },
    { ...delivery, prefix: '' },
  ])('is refused for %p', (parts) => {
    expect(() => makeDocumentNumber(parts)).toThrow(RangeError);
  });

  it.each(['DN-2026-000123', 'dn2026000123', 'dn 2026 123', "DN'2026'000123", ' DN-2026-000123\n', 'DN/2026/123'])(
    'is read from %p',
    (typed) => {
      expect(readDocumentNumber(typed, 'DN')).toEqual(delivery);
    },
  );

  it.each([
    '',
    'DN',
    'DN-2026',
    'DN-2026-',
    'DN-2026-000000',
    'DN2026123',
    'CN-2026-000123',
    'DN-26-000123',
    '2026-000123',
  ])('is not read from %p', (typed) => {
    expect(readDocumentNumber(typed, 'DN')).toBeNull();
  });

  it('reads back as it was made, and nothing makes the reader throw', () => {
    const anyNumber = fc.record({
      prefix: fc.stringMatching(/^[A-Z]{1,4}$/),
      year: fc.integer({ min: 1000, max: 9999 }),
      serial: fc.integer({ min: 1, max: 999_999 }),
    });
    fc.assert(
      fc.property(anyNumber, fc.string({ unit: 'binary' }), (parts, junk) => {
        expect(readDocumentNumber(makeDocumentNumber(parts), parts.prefix)).toEqual(parts);
        const read = readDocumentNumber(parts.prefix + junk, parts.prefix);
        expect(read === null || read.serial > 0).toBe(true);
      }),
    );
  });
});
