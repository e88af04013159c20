import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readBagNumber } from './bag-number.js';
import { readDocumentNumber } from './document-number.js';
import { asDigits, lookAlikesOf, swapsBetween } from './look-alike.js';
import { readCode } from './read-code.js';
import { recognise, type HouseCodes } from './recognise.js';

const pattern = 'L{y}{ddd}{line}{shift} {HH}:{mm}';
const window = { earliestOn: '2020-01-01', latestOn: '2026-11-24' };
const house: HouseCodes = {
  currentYear: 2026,
  deliveryPrefix: 'DN',
  complaintPrefix: 'C',
  patterns: [{ formatId: 'two-kilo', pattern }],
  window,
};
const codes = fc.string({ unit: fc.constantFrom(...'ABIO018X'), maxLength: 6 });

describe('characters that look alike', () => {
  it('are digits where only a digit can stand', () => {
    expect(asDigits('6O7I')).toBe('6071');
    expect(asDigits('L6B23')).toBe('L6823');
  });

  it('are read both ways where both can stand, as typed first', () => {
    expect(lookAlikesOf('A8')).toEqual(['A8', 'AB']);
    expect(lookAlikesOf('X')).toEqual(['X']);
    expect(lookAlikesOf('0I')).toEqual(['0I', 'OI', '01', 'O1']);
  });

  it('are left alone where a text is made of little else', () => {
    expect(lookAlikesOf('00118')).toEqual(['00118']);
  });

  it('say which of them was read as which', () => {
    expect(swapsBetween('b0O1 2344', 'B0012344')).toEqual([{ place: 3, typed: 'O', read: '0' }]);
    expect(swapsBetween('B001234', 'B0012344')).toEqual([]);
  });

  it('read the same digits whatever of them was typed for the other', () => {
    fc.assert(
      fc.property(codes, (text) => {
        const readings = lookAlikesOf(text);
        expect(readings[0]).toBe(text);
        expect(new Set(readings).size).toBe(readings.length);
        expect(new Set(readings.map(asDigits)).size).toBe(1);
        for (const reading of readings) expect(swapsBetween(text, reading).length).toBeLessThanOrEqual(4);
      }),
    );
  });
});

describe('a code read by eye', () => {
  it('is forgiven a letter where the pattern wants a digit, and says so', () => {
    const [reading] = readCode(pattern, 'L6I2BA2 I4:32', { ...window, earliestOn: '2026-01-01' });
    expect(reading).toMatchObject({ productionOn: '2026-05-08', localTime: '14:32', lotKey: '6128A2' });
    expect(reading?.swaps).toEqual([
      { place: 3, typed: 'I', read: '1' },
      { place: 5, typed: 'B', read: '8' },
      { place: 8, typed: 'I', read: '1' },
    ]);
  });

  it('is forgiven either of the two where the pattern takes both, only when look-alikes are asked for', () => {
    const within = { ...window, earliestOn: '2026-01-01' };
    expect(readCode(pattern, 'L612382', within).map(({ lotKey }) => lotKey)).toEqual(['612382']);
    const readings = readCode(pattern, 'L612382', within, { lookAlikes: true });
    expect(readings.map(({ lotKey, swaps }) => [lotKey, swaps])).toEqual([
      ['612382', []],
      ['6123B2', [{ place: 6, typed: '8', read: 'B' }]],
    ]);
  });

  it('is not forgiven where no pattern of the house says what can stand there', () => {
    expect(readCode(pattern, 'FILM-O8', window, { lookAlikes: true })).toEqual([]);
    expect(recognise('FILM-O8', house).every((one) => one.kind === 'pack-code' || one.kind === 'text')).toBe(true);
  });

  it('names a bag, a delivery, a complaint and a pallet all the same', () => {
    expect(readBagNumber('BOO12344')?.bagNumber).toBe('B0012344');
    expect(readBagNumber('80012344')?.bagNumber).toBe('B0012344');
    expect(recognise('80012344', house)).toContainEqual({
      ...{ kind: 'bag', serial: 1234, bagNumber: 'B0012344' },
      swaps: [{ place: 1, typed: '8', read: 'B' }],
    });
    expect(readDocumentNumber('DN-2O26-OOO123', 'DN')).toEqual({ prefix: 'DN', year: 2026, serial: 123 });
    expect(recognise('c-2026-00000I', house)[0]).toEqual({
      ...{ kind: 'complaint', complaintNumber: 'C-2026-000001' },
      swaps: [{ place: 11, typed: 'I', read: '1' }],
    });
    expect(recognise('O95201230000000011', house)[0]).toMatchObject({
      ...{ kind: 'logistic-unit', sscc: '095201230000000011' },
      swaps: [{ place: 1, typed: 'O', read: '0' }],
    });
  });
});
