import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { dayOfYearOn } from './calendar-day.js';
import { normaliseCode, splitCodeTime } from './normalise-code.js';
import { printCode, printLotCode, type CodeFacts } from './print-code.js';
import { readCode } from './read-code.js';

const pattern = 'L{y}{ddd}{line}{shift} {HH}:{mm}';
const facts: CodeFacts = {
  productionOn: '2026-05-03',
  lineCode: 'A',
  shiftCode: '2',
  localTime: '14:32',
  bestBeforeOn: '2028-05-31',
};
const window = { earliestOn: '2016-01-01', latestOn: '2026-11-24' };
const patterns = [
  pattern,
  'L{yy}{MM}{DD}{line}{shift}{HH}{mm}',
  '{yyyy}-{MM}-{DD} {line}/{shift} {HH}:{mm}',
  'BEST BEFORE {bestBefore:DD.MM.YYYY} L{y}{ddd}{line}{shift} {HH}:{mm}',
  '{bestBefore:DD.MM.YY} {HH}:{mm} L {y} {ddd} {line} {shift}',
];

describe('the code printed on a pack', () => {
  it('follows the pattern of its format', () => {
    expect(printCode(pattern, facts)).toBe('L6123A2 14:32');
    expect(printCode('{bestBefore:DD.MM.YYYY} L{yy}{ddd}', facts)).toBe('31.05.2028 L26123');
    expect(printCode('{bestBefore:MM/YY} {DD}{MM}{yyyy}', facts)).toBe('05/28 03052026');
  });

  it('has a lot part that all packs of the lot share', () => {
    const lot = { ...facts, localTime: null };
    expect(printLotCode(pattern, lot)).toBe('L6123A2');
    expect(printLotCode('{HH}h{mm} L{y}{ddd}', lot)).toBe('L6123');
    expect(printLotCode('L{y}{ddd}-{HH}{line}{mm}', lot)).toBe('L6123A');
    expect(printLotCode('L{y}{ddd}', lot)).toBe('L6123');
  });

  it.each([
    ['L{ddd}', {}],
    [pattern, { productionOn: '2026-02-30' }],
    [pattern, { lineCode: null }],
    [pattern, { lineCode: 'AB' }],
    [pattern, { shiftCode: 'a' }],
    [pattern, { localTime: null }],
    [pattern, { localTime: '24:00' }],
    ['{bestBefore:MM.YYYY}', { bestBeforeOn: null }],
  ])('is not printed from %s with %p', (text, changed) => {
    expect(() => printCode(text, { ...facts, ...changed })).toThrow(RangeError);
  });
});

describe('a code that a stranger typed', () => {
  const read = (text: string) => readCode(pattern, text, window);

  it('fits one day per decade when only one digit of the year is printed, newest first', () => {
    expect(read('L6123A2 14:32')).toEqual([
      {
        productionOn: '2026-05-03',
        lineCode: 'A',
        shiftCode: '2',
        localTime: '14:32',
        bestBefore: null,
        lotKey: '6123A2',
        swaps: [],
      },
      {
        productionOn: '2016-05-02',
        lineCode: 'A',
        shiftCode: '2',
        localTime: '14:32',
        bestBefore: null,
        lotKey: '6123A2',
        swaps: [],
      },
    ]);
  });

  it.each([
    ['l6123a2 14:32', '14:32', '2', 'A'],
    ['6123A21432', '14:32', '2', 'A'],
    [' L 6123 A2  14.32', '14:32', '2', 'A'],
    ['L6I23A2', null, '2', 'A'],
    ['L6123A', null, null, 'A'],
    ['L6123', null, null, null],
    ['L6123A2 14', null, '2', 'A'],
  ])('is read from %p as far as it goes', (typed, localTime, shiftCode, lineCode) => {
    expect(read(typed)[0]).toMatchObject({ productionOn: '2026-05-03', localTime, shiftCode, lineCode });
  });

  it.each([
    '',
    'L',
    'L612',
    'L6000',
    'L6367',
    'L6123A2 24:00',
    'L6123A2 14:3',
    'L6123A2 14:321',
    'X6123A2',
    'Ä',
    'L'.repeat(300),
  ])('is not read from %p', (typed) => {
    expect(read(typed)).toEqual([]);
  });

  it('names day 366 in leap years only', () => {
    expect(read('L8366')).toEqual([]);
    expect(readCode(pattern, 'L8366', { earliestOn: '2000-01-01', latestOn: '2030-01-01' })).toMatchObject([
      { productionOn: '2028-12-31' },
      { productionOn: '2008-12-31' },
    ]);
    expect(readCode(pattern, 'L6366', { earliestOn: '2000-01-01', latestOn: '2030-01-01' })).toMatchObject([
      { productionOn: '2016-12-31' },
    ]);
  });

  it('lies within the window, both its days included', () => {
    expect(readCode(pattern, 'L6123', { earliestOn: '2026-05-03', latestOn: '2026-05-03' })).toHaveLength(1);
    expect(readCode(pattern, 'L6123', { earliestOn: '2026-05-04', latestOn: '2026-12-31' })).toEqual([]);
    expect(readCode(pattern, 'L6123', { earliestOn: '2017-01-01', latestOn: '2026-05-02' })).toEqual([]);
    expect(() => readCode(pattern, 'L6123', { earliestOn: '', latestOn: '2026-05-02' })).toThrow(RangeError);
  });

  it('may leave the best-before day in front out, or hold it', () => {
    const full = 'BEST BEFORE {bestBefore:DD.MM.YYYY} L{y}{ddd}';
    expect(readCode(full, 'L6123', window)[0]).toMatchObject({ productionOn: '2026-05-03', bestBefore: null });
    expect(readCode(full, 'best before 31.05.2028 L6123', window)[0]).toMatchObject({ bestBefore: '2028-05-31' });
    expect(readCode(full, '31052028 L6123', window)[0]).toMatchObject({ bestBefore: '2028-05-31' });
    expect(readCode(full, '31.02.2028 L6123', window)).toEqual([]);
  });

  it('cannot be made after its own best-before day', () => {
    const full = '{bestBefore:MM.YYYY} L{y}{ddd}';
    expect(readCode(full, '05.2026 L6123', window).map(({ productionOn }) => productionOn)).toEqual([
      '2026-05-03',
      '2016-05-02',
    ]);
    expect(readCode(full, '04.2026 L6123', window).map(({ productionOn }) => productionOn)).toEqual(['2016-05-02']);
  });

  it('tells a best-before day alone where that is all that is printed', () => {
    expect(readCode('{bestBefore:DD.MM.YY} {line}', '31.05.28 A', window)).toEqual([
      {
        productionOn: null,
        lineCode: 'A',
        shiftCode: null,
        localTime: null,
        bestBefore: '2028-05-31',
        lotKey: '310528A',
        swaps: [],
      },
    ]);
    expect(readCode('{bestBefore:DD.MM.YY} {line}', 'A', window)).toEqual([]);
  });

  const anyFacts = fc.record({
    productionOn: fc
      .tuple(fc.integer({ min: 2017, max: 2025 }), fc.integer({ min: 1, max: 365 }))
      .map(([year, dayOfYear]) => dayOfYearOn(year, dayOfYear) ?? ''),
    lineCode: fc.constantFrom('A', 'L', '1', 'O', 'I'),
    shiftCode: fc.constantFrom('1', '2', '3', 'N'),
    localTime: fc
      .tuple(fc.nat({ max: 23 }), fc.nat({ max: 59 }))
      .map((parts) => parts.map((part) => String(part).padStart(2, '0')).join(':')),
    bestBeforeOn: fc.constantFrom('2026-01-31', '2028-02-29'),
  });

  it('comes back as it was printed, however it was spaced', () => {
    fc.assert(
      fc.property(fc.constantFrom(...patterns), anyFacts, fc.boolean(), (anyPattern, printed, isSpoilt) => {
        const code = printCode(anyPattern, printed);
        const readings = readCode(anyPattern, isSpoilt ? code.toLowerCase().replace(/[ :./-]/g, '') : code, window);
        const { bestBeforeOn, ...rest } = printed;
        const bestBefore = anyPattern.includes('bestBefore') ? bestBeforeOn : null;
        const lotKey = normaliseCode(printLotCode(anyPattern, printed));
        expect(readings).toContainEqual({ ...rest, bestBefore, lotKey, swaps: [] });
      }),
    );
  });

  it('comes back without the lot mark, the time and the shift', () => {
    fc.assert(
      fc.property(anyFacts, (printed) => {
        const { productionOn, lineCode } = printed;
        const short = printCode('{y}{ddd}{line}', printed);
        expect(readCode(pattern, short, window)).toContainEqual(
          expect.objectContaining({ productionOn, lineCode, shiftCode: null, localTime: null }),
        );
      }),
    );
  });

  it('never makes the reader throw', () => {
    const junk = fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^L?[0-9OI :.A]{0,20}$/));
    fc.assert(
      fc.property(fc.constantFrom(...patterns), junk, (anyPattern, typed) => {
        for (const { productionOn } of readCode(anyPattern, typed, window)) {
          expect(productionOn !== null && productionOn >= window.earliestOn && productionOn <= window.latestOn).toBe(
            true,
          );
        }
      }),
    );
  });
});

describe('the key of a lot code', () => {
  it.each([
    [' l 6123-a ', '6123A'],
    ['L6123A', '6123A'],
    ['6123a', '6123A'],
    ["L6'123/A", '6123A'],
    ['LA12', 'LA12'],
    ['L', 'L'],
    ['ＬＯＴ１', 'LOT1'],
    ['-- ', ''],
  ])('of %p is %p', (typed, key) => {
    expect(normaliseCode(typed)).toBe(key);
  });

  it('stays what it is when it is made again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (typed) => {
        expect(normaliseCode(normaliseCode(typed))).toBe(normaliseCode(typed));
      }),
    );
  });
});

describe('a time behind a code', () => {
  it.each([
    ['L6123A 14:32', 'L6123A', '14:32'],
    [' L6123A  6.05 ', 'L6123A', '06:05'],
    ['14h32 L6123A', 'L6123A', '14:32'],
    ['L6123A 24:00', 'L6123A 24:00', null],
    ['L6123A1432', 'L6123A1432', null],
    ['L6123A', 'L6123A', null],
    ['23.11.2028', '23.11.2028', null],
    ['23.11.2028 L6', '23.11.2028 L6', null],
    ['14:32', '', '14:32'],
    ['', '', null],
  ])('is split off %p', (typed, lotText, localTime) => {
    expect(splitCodeTime(typed)).toEqual({ lotText, localTime });
  });
});
