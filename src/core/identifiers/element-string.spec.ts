import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  applicationIdentifier,
  applicationIdentifiers,
  leadingApplicationIdentifier,
  type ApplicationIdentifier,
} from './application-identifiers.js';
import { gs1CheckDigit } from './check-digit.js';
import {
  ELEMENT_SEPARATOR,
  GS1_128_MAX_CHARACTERS,
  bracketedText,
  humanReadable,
  readElementString,
  writeElementString,
} from './element-string.js';
import { elementFault, elementValue, fault, type Gs1Element } from './elements.js';
import { weightElement, weightElementGrams } from './weight-element.js';

const rules = { currentYear: 2026 };
const pallet = '095201230000000011';
const content: readonly Gs1Element[] = [
  { ai: '02', value: '19520123000100' },
  { ai: '37', value: '40' },
  { ai: '10', value: 'A61' },
];

const characters = `!"%&'()*+,-./0123456789:;<=>?ABCXYZ_abcxyz`.split('');

/** Elements whose values are right one by one; a set of them may still hold two that exclude each other. */
const anyElements: fc.Arbitrary<readonly Gs1Element[]> = fc
  .uniqueArray(fc.constantFrom(...applicationIdentifiers()), { minLength: 1, maxLength: 5 })
  .chain((rows) => fc.tuple(...rows.map(rightElement)));

function rightElement(row: ApplicationIdentifier): fc.Arbitrary<Gs1Element> {
  return rightValue(row).map((value) => ({ ai: row.ai, value }));
}

function rightValue({ check, kind, length: [fewest, most] }: ApplicationIdentifier): fc.Arbitrary<string> {
  const day = fc.constantFrom('260115', '280229', '271231');
  if (check === 'date') return fc.oneof(day, fc.constant('270100'));
  if (check === 'production-time')
    return fc.tuple(day, fc.constantFrom('00', '2359', '143059')).map((parts) => parts.join(''));
  const digits = (least: number, longest: number) =>
    fc.string({ unit: fc.constantFrom(...'0123456789'.split('')), minLength: least, maxLength: longest });
  if (check === 'check-digit') return digits(fewest - 1, most - 1).map((body) => body + gs1CheckDigit(body));
  if (kind === 'digits') return digits(fewest, most);
  return fc.string({ unit: fc.constantFrom(...characters), minLength: fewest, maxLength: most });
}

describe('a scanned GS1 symbol', () => {
  it('is read with the prefix of its symbology and its separators', () => {
    expect(readElementString(']C102195201230001003740\u001d10A61', rules)).toEqual({ ok: true, elements: content });
    expect(readElementString(']Q302195201230001003740\u001d10A61\u001d', rules)).toEqual({
      ok: true,
      elements: content,
    });
  });

  it('is read without a prefix too, with a separator in front, and with the line end of a keyboard scanner', () => {
    for (const scanned of [`00${pallet}`, `\u001d00${pallet}`, `  00${pallet}\r\n`]) {
      expect(readElementString(scanned, rules)).toEqual({ ok: true, elements: [{ ai: '00', value: pallet }] });
    }
  });

  it('is read when the scanner types something else in place of the separator', () => {
    const scanned = '02195201230001003740{GS}10A61';
    expect(readElementString(scanned, { ...rules, separators: ['{GS}', ''] })).toEqual({ ok: true, elements: content });
    expect(readElementString(scanned, rules).ok).toBe(false);
  });

  it('is read from the text below the bars, spaces after the brackets and all', () => {
    expect(readElementString('(02) 19520123000100 (37) 40 (10) A61', rules)).toEqual({ ok: true, elements: content });
    expect(readElementString('(10)A\\(1)', rules)).toEqual({ ok: true, elements: [{ ai: '10', value: 'A(1)' }] });
  });

  it.each([
    ['', 'empty', null],
    [']C1', 'empty', null],
    [']C0TESTING', 'other-symbology', null],
    [']E09520123000103', 'other-symbology', null],
    ['(0)1', 'malformed-brackets', null],
    ['(10', 'malformed-brackets', null],
    ['(04)1', 'unknown-ai', '04'],
    ['hello', 'unknown-ai', null],
    ['10A\u001d\u001d21B', 'unknown-ai', null],
    ['0195201230001', 'too-short', '01'],
    [`(10)${'A'.repeat(21)}`, 'too-long', '10'],
    ['(37)4O', 'not-digits', '37'],
    ['(10)A 1', 'bad-character', '10'],
    ['(10)Ä', 'bad-character', '10'],
    ['00095201230000000012', 'check-digit', '00'],
    ['(15)270229', 'no-such-date', '15'],
    ['(15)271301', 'no-such-date', '15'],
    ['(8008)26010014', 'no-such-date', '8008'],
    ['(8008)26011524', 'no-such-time', '8008'],
    ['(8008)2601151460', 'no-such-time', '8008'],
    ['(8008)260115143', 'too-short', '8008'],
    ['(10)A(10)B', 'repeated-with-other-value', '10'],
    ['(01)09520123000103(37)4', 'not-together', '01'],
    ['(3103)980000(3102)098000', 'not-together', '3103'],
  ])('is refused: %p, %s', (scanned, problem, ai) => {
    expect(readElementString(scanned, rules)).toEqual({ ok: false, problem, ai });
  });

  it('may lack partners on one symbol, but not on the whole unit', () => {
    const paired = { ...rules, pairing: true };
    expect(elementFault(content, rules)).toBeNull();
    expect(elementFault([{ ai: '15', value: '271301' }], rules)).toEqual(fault('no-such-date', '15'));
    expect(elementFault(content, paired)).toEqual(fault('partner-missing', '37'));
    expect(elementFault([{ ai: '00', value: pallet }, ...content], paired)).toBeNull();
  });

  it('cannot show that the separator before a numeric lot got lost', () => {
    expect(readElementString(']C1021952012300010037401001', rules)).toEqual({
      ok: true,
      elements: [content[0], { ai: '37', value: '401001' }],
    });
  });

  it('never makes the reader throw', () => {
    const junk = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.stringMatching(/^(\]C1|\(?)(00|01|10|37|310|8008)[\x1d()\\\dA-Z ]*$/),
    );
    fc.assert(
      fc.property(junk, fc.boolean(), (scanned, pairing) => {
        expect(typeof readElementString(scanned, { currentYear: 2026, pairing }).ok).toBe('boolean');
      }),
    );
  });
});

describe('an element string to be printed', () => {
  it('has separators only where they are needed', () => {
    expect(writeElementString(content, rules)).toBe('02195201230001003740\u001d10A61');
    expect(writeElementString(content, rules).length).toBeLessThanOrEqual(GS1_128_MAX_CHARACTERS);
    expect(humanReadable(content)).toEqual(['(02) 19520123000100', '(37) 40', '(10) A61']);
    expect(bracketedText(content)).toBe('(02)19520123000100(37)40(10)A61');
    expect(elementValue(content, '10')).toBe('A61');
    expect(elementValue(content, '21')).toBeNull();
  });

  it('is refused before a wrong label is printed', () => {
    expect(() => writeElementString([{ ai: '10', value: 'A 1' }], rules)).toThrow('element 10: bad-character');
    expect(() => writeElementString([], rules)).toThrow('element string: empty');
  });

  it('reads back as it was written, in every form', () => {
    fc.assert(
      fc.property(anyElements, (elements) => {
        fc.pre(elementFault(elements, rules) === null);
        const data = writeElementString(elements, rules);
        const read = { ok: true, elements };
        expect(readElementString(`]d2${data}`, rules)).toEqual(read);
        expect(readElementString(data + ELEMENT_SEPARATOR, rules)).toEqual(read);
        expect(readElementString(bracketedText(elements), rules)).toEqual(read);
      }),
    );
  });
});

describe('a weight on a label', () => {
  it('keeps grams as long as six digits hold them', () => {
    expect(weightElement('310', 980_000)).toEqual({ ai: '3103', value: '980000' });
    expect(weightElement('330', 1_020_500)).toEqual({ ai: '3302', value: '102050' });
    expect(weightElement('310', 999_999)).toEqual({ ai: '3103', value: '999999' });
    expect(weightElement('310', 24_000_000)).toEqual({ ai: '3101', value: '240000' });
    expect(weightElement('310', 1_000_001)).toBeNull();
    expect(() => weightElement('310', -1)).toThrow(RangeError);
  });

  it('is read by the decimals of its identifier', () => {
    expect(weightElementGrams({ ai: '3102', value: '098000' })).toBe(980_000);
    expect(weightElementGrams({ ai: '3105', value: '000100' })).toBe(1);
    expect(weightElementGrams({ ai: '3105', value: '000101' })).toBeNull();
    expect(weightElementGrams({ ai: '37', value: '000101' })).toBeNull();
  });

  it('comes back to the gram, and never differs from what was weighed', () => {
    fc.assert(
      fc.property(fc.constantFrom('310', '330'), fc.nat({ max: 2_000_000 }), (kind, grams) => {
        const element = weightElement(kind, grams);
        expect(element === null ? grams : weightElementGrams(element)).toBe(grams);
        expect(element === null).toBe(grams > 999_999 && grams % 10 !== 0);
      }),
    );
  });
});

describe('the table of identifiers', () => {
  it('finds one by its number and at the front of data', () => {
    expect(applicationIdentifier('10')?.title).toBe('BATCH/LOT');
    expect(applicationIdentifier('04')).toBeNull();
    expect(leadingApplicationIdentifier('10A61')?.ai).toBe('10');
    expect(leadingApplicationIdentifier('3103980000')?.ai).toBe('3103');
    expect(leadingApplicationIdentifier('A')).toBeNull();
    expect(applicationIdentifiers()).toHaveLength(52);
  });

  it('has no identifier that is the beginning of another', () => {
    const all = applicationIdentifiers().map(({ ai }) => ai);
    expect(all.filter((ai) => all.some((other) => other !== ai && other.startsWith(ai)))).toEqual([]);
  });
});
