import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { makeBagNumber } from './bag-number.js';
import { makeDocumentNumber } from './document-number.js';
import { recognise, type HouseCodes } from './recognise.js';
import { makeSscc } from './sscc.js';

const house: HouseCodes = {
  currentYear: 2026,
  deliveryPrefix: 'DN',
  complaintPrefix: 'C',
  recallPrefixes: ['RC', 'EX'],
  patterns: [
    { formatId: 'two-kilo', pattern: 'L{y}{ddd}{line}{shift} {HH}:{mm}' },
    { formatId: 'half-kilo', pattern: 'L{y}{ddd}{line}' },
    { formatId: 'broken', pattern: 'L{week}' },
  ],
  window: { earliestOn: '2020-01-01', latestOn: '2026-11-24' },
};
const sscc = '095201230000000011';
const gtin14 = '09520123000103';
const first = (text: string) => recognise(text, house)[0];
const kinds = (text: string) => recognise(text, house).map(({ kind }) => kind);

describe('what a scanned or typed text may be', () => {
  it.each([
    sscc,
    `00${sscc}`,
    `]C100${sscc}\r\n`,
    `(00) ${sscc}`,
    `(00)${sscc}(37)40(02)19520123000100`,
    '0 9520123 000000001 1',
  ])('is a pallet or bag by its SSCC: %p', (text) => {
    expect(first(text)).toMatchObject({ kind: 'logistic-unit', sscc });
  });

  it('is a pallet by the address in its symbol, too', () => {
    expect(recognise(`]Q1https://id.gs1.org/00/${sscc}`, house)).toEqual([
      { kind: 'logistic-unit', sscc, elements: [{ ai: '00', value: sscc }] },
    ]);
  });

  it.each([
    [`]d201${gtin14}10A61`, 'A61'],
    [`01${gtin14}10A61`, 'A61'],
    [`(01)${gtin14}(10)A61`, 'A61'],
    [`https://trace.example.com/01/${gtin14}/10/A61`, 'A61'],
    [`HTTPS://ID.GS1.ORG/01/${gtin14}`, null],
    [`]E09520123000103`, null],
    ['9 520123 000103', null],
  ])('is an item, with its lot where it has one: %p', (text, lot) => {
    expect(first(text)).toMatchObject({ kind: 'trade-item', gtin14, lot });
  });

  it('is an item by the contents symbol of a pallet label', () => {
    expect(first(']C102195201230001003740\u001d10A61')).toMatchObject({ gtin14: '19520123000100', lot: 'A61' });
    expect(recognise('02195201230001003740{GS}10A61', { ...house, separators: ['{GS}'] })[0]).toMatchObject({
      lot: 'A61',
    });
  });

  it('is a lot like one off a pack where a symbol holds nothing else', () => {
    expect(kinds('(10)6123A2')).toEqual(['pack-code', 'other-elements']);
    expect(first('(10)6123A2')).toMatchObject({ codeKey: '6123A2' });
    expect(kinds('(410)9520123000011')).toEqual(['other-elements']);
  });

  it.each(['B0012344', ' b001 2344\n', ']C0B0012344', "B001'2344"])('is a bulk bag by its number: %p', (text) => {
    expect(first(text)).toEqual({ kind: 'bag', serial: 1234, bagNumber: 'B0012344', swaps: [] });
  });

  it('is a bulk bag without its B, unless a pack code or an item fits better', () => {
    expect(kinds('0012344')).toEqual(['bag', 'pack-code', 'text']);
    // Year 6, day 123, line 1, shift 0, hour 1x: the digits of this bag read as a pack code as well.
    expect(kinds(makeBagNumber(6_123_101).slice(1))).toEqual(['pack-code', 'bag', 'text']);
    expect(kinds('6123A')).toEqual(['pack-code', 'text']);
  });

  it.each(['EX-2026-000007', 'ex 2026 7', 'EX2O26OOOOO7'])('is an exercise by its number: %p', (text) => {
    expect(first(text)).toMatchObject({ kind: 'recall', recallNumber: 'EX-2026-000007' });
  });

  it.each(['DN-2026-000123', 'dn 2026 123', 'DN2026000123'])('is a delivery by its number: %p', (text) => {
    expect(first(text)).toEqual({ kind: 'delivery', deliveryNumber: 'DN-2026-000123', swaps: [] });
  });

  it('is a pack code of every format that it fits', () => {
    expect(first('l6123a 14:32')).toEqual({
      kind: 'pack-code',
      codeKey: '6123A',
      lotText: 'l6123a',
      localTime: '14:32',
      readings: [],
    });
    expect(first('L6123A')).toMatchObject({
      kind: 'pack-code',
      readings: [
        { formatId: 'two-kilo', reading: { productionOn: '2026-05-03', lineCode: 'A' } },
        { formatId: 'half-kilo', reading: { productionOn: '2026-05-03', lineCode: 'A' } },
      ],
    });
    expect(first('6123A21432')).toMatchObject({ readings: [{ reading: { lotKey: '6123A2', localTime: '14:32' } }] });
  });

  it('is a plain text, such as a film roll, where nothing else fits', () => {
    expect(recognise('  film roll\tred ', house)).toEqual([{ kind: 'text', text: 'film roll red', problem: null }]);
    expect(recognise('', house)).toEqual([{ kind: 'text', text: '', problem: null }]);
    expect(kinds('FR-88017')).toEqual(['pack-code', 'text']);
  });

  it('says what is wrong with a text that says what it is', () => {
    expect(recognise('(00)095201230000000012', house)).toEqual([
      { kind: 'text', text: '(00)095201230000000012', problem: 'check-digit' },
    ]);
    expect(recognise('https://example.com/', house)).toEqual([
      { kind: 'text', text: 'https://example.com/', problem: 'no-key' },
    ]);
  });

  it('finds our own numbers first, however they are spaced', () => {
    const serial = fc.integer({ min: 1, max: 999_999 });
    fc.assert(
      fc.property(serial, fc.constantFrom('', ' ', '\r\n', '\t'), (number, around) => {
        const unit = makeSscc({ companyPrefix: '9520123', extensionDigit: 0, serial: number });
        const deliveryNumber = makeDocumentNumber({ prefix: 'DN', year: 2026, serial: number });
        expect(first(around + unit + around)).toMatchObject({ kind: 'logistic-unit', sscc: unit });
        expect(first(around + makeBagNumber(number) + around)).toMatchObject({ kind: 'bag', serial: number });
        expect(first(around + deliveryNumber + around)).toEqual({ kind: 'delivery', deliveryNumber, swaps: [] });
      }),
    );
  });

  it('is always something, and no text makes it throw', () => {
    const pieces = fc.constantFrom(
      ']C1',
      ']Q1',
      '(',
      '00',
      sscc,
      `01${gtin14}`,
      'https://',
      'B',
      'DN-2026-',
      'L6123A',
      '\u001d',
      ' ',
      '\u0000',
    );
    const junk = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(pieces).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(junk, (text) => {
        expect(recognise(text, house).length).toBeGreaterThan(0);
      }),
    );
    expect(recognise('9'.repeat(100_000), house).at(-1)?.kind).toBe('text');
  });
});
