import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readDigitalLink, writeDigitalLink } from './digital-link.js';
import { fault, type Gs1Element } from './elements.js';
import { decodePercent, encodePercent } from './percent-code.js';

const rules = { currentYear: 2026 };
const pack = '09520123000103';

describe('the web address in a QR code', () => {
  it('gives the item, its lot and its best-before date', () => {
    expect(readDigitalLink(`https://id.gs1.org/01/${pack}/10/A61?15=270115`, rules)).toEqual({
      ok: true,
      elements: [
        { ai: '01', value: pack },
        { ai: '10', value: 'A61' },
        { ai: '15', value: '270115' },
      ],
    });
  });

  it('may come from any domain, with other parameters and a fragment', () => {
    const uri = `HTTPS://TRACE.EXAMPLE.COM:8443/p/01/${pack}/10/A%2F61?linkType=gs1:pip&&flag&10a=x#top`;
    expect(readDigitalLink(uri, rules)).toEqual({
      ok: true,
      elements: [
        { ai: '01', value: pack },
        { ai: '10', value: 'A/61' },
      ],
    });
  });

  it.each([
    ['', 'malformed-link', null],
    ['ftp://id.gs1.org/01/09520123000103', 'malformed-link', null],
    ['https://id.gs1.org/01/09520123000103 ', 'malformed-link', null],
    ['https://id.gs1.org/', 'no-key', null],
    ['https://id.gs1.org/gtin/09520123000103', 'no-key', null],
    ['https://id.gs1.org/10/A61', 'no-key', null],
    ['https://id.gs1.org/01/9520123000103', 'too-short', '01'],
    ['https://id.gs1.org/01/09520123000104', 'check-digit', '01'],
    ['https://id.gs1.org/01/09520123000103/10/LOT/26', 'no-key', null],
    ['https://id.gs1.org/01/09520123000103/21/1/10/A', 'wrong-path', '01'],
    ['https://id.gs1.org/01/09520123000103/10/A/10/A', 'wrong-path', '01'],
    ['https://id.gs1.org/01/09520123000103/11/260115', 'wrong-path', '01'],
    ['https://id.gs1.org/01/09520123000103?10=A', 'wrong-attribute', '10'],
    ['https://id.gs1.org/01/09520123000103?99=A&99=A', 'wrong-attribute', '99'],
    ['https://id.gs1.org/00/095201230000000011?21=A', 'wrong-attribute', '21'],
    ['https://id.gs1.org/01/09520123000103?999=A', 'unknown-ai', '999'],
    ['https://id.gs1.org/8004/9520123SCALE', 'unknown-ai', '8004'],
    ['https://id.gs1.org/01/09520123000103?99=A+B', 'bad-character', '99'],
    ['https://id.gs1.org/01/09520123000103/10/%C3%84', 'bad-character', '10'],
  ])('is refused: %p, %s', (uri, problem, ai) => {
    expect(readDigitalLink(uri, rules)).toEqual({ ok: false, problem, ai });
  });

  it('asks for partners where the whole unit is read', () => {
    const uri = `https://id.gs1.org/00/095201230000000011?37=40`;
    expect(readDigitalLink(uri, rules).ok).toBe(true);
    expect(readDigitalLink(uri, { ...rules, pairing: true })).toEqual(fault('partner-missing', '37'));
  });

  it('never makes the reader throw', () => {
    const part = fc.constantFrom('https://a', '/', '01', '10', pack, '%', '%2', '?', '=', '&', '#', '99', '(', 'é');
    const junk = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.webUrl(),
      fc.array(part).map((parts) => parts.join('')),
    );
    fc.assert(fc.property(junk, (uri) => typeof readDigitalLink(uri, rules).ok === 'boolean'));
  });
});

describe('a web address to be printed', () => {
  it('is canonical, or begins with our own address', () => {
    const elements = [
      { ai: '15', value: '270115' },
      { ai: '10', value: 'A/61' },
      { ai: '01', value: pack },
    ];
    expect(writeDigitalLink(elements, rules)).toBe(`https://id.gs1.org/01/${pack}/10/A%2F61?15=270115`);
    expect(writeDigitalLink(elements, rules, 'https://trace.example.com')).toBe(
      `https://trace.example.com/01/${pack}/10/A%2F61?15=270115`,
    );
    expect(
      writeDigitalLink(
        [
          { ai: '414', value: '9520123000011' },
          { ai: '254', value: 'SILO-3' },
        ],
        rules,
      ),
    ).toBe('https://id.gs1.org/414/9520123000011/254/SILO-3');
  });

  it('is refused without a key, with a wrong value, or with what an address may not carry', () => {
    expect(() => writeDigitalLink([{ ai: '10', value: 'A61' }], rules)).toThrow('needs a key');
    expect(() => writeDigitalLink([{ ai: '01', value: '1' }], rules)).toThrow('element 01: too-short');
    const withSerial = [
      { ai: '00', value: '095201230000000011' },
      { ai: '21', value: '7' },
    ];
    expect(() => writeDigitalLink(withSerial, rules)).toThrow('(21) may not stand behind the question mark');
  });

  it('reads back as it was written', () => {
    const value = fc.string({
      unit: fc.constantFrom(...`!"%&'()*+,-./09:;<=>?AZ_az`.split('')),
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(value, value, value, (lot, serial, internal) => {
        const elements: readonly Gs1Element[] = [
          { ai: '01', value: pack },
          { ai: '10', value: lot },
          { ai: '21', value: serial },
          { ai: '91', value: internal },
        ];
        expect(readDigitalLink(writeDigitalLink(elements, rules), rules)).toEqual({ ok: true, elements });
      }),
    );
  });
});

describe('percent coding', () => {
  it('codes all but the unreserved characters, and undoes it', () => {
    expect(encodePercent('A/61')).toBe('A%2F61');
    expect(encodePercent('a-b.c_d~')).toBe('a-b.c_d~');
    expect(decodePercent('A%2F61', 'path')).toBe('A/61');
    expect(decodePercent('A+B', 'query')).toBe('A B');
    expect(decodePercent('A+B', 'path')).toBe('A+B');
    expect(() => encodePercent('€')).toThrow(RangeError);
  });
});
