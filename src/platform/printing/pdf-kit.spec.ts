import { describe, expect, it } from '@jest/globals';
import { pageAsPng, pageCount, symbolsOf, textOf } from '../../../test/support/read-pdf.js';
import { sha256 } from '../canonical-text.js';
import { PdfKit } from './pdf-kit.js';
import { tableHead, tableRow, tableWidthMm, type PdfColumn } from './pdf-table.js';
import { gs1Linear, logisticLimits, matrixSymbol } from './symbols.js';
import { unpackWoff } from './unpack-woff.js';

const issuedAt = '2026-03-12T07:41:03.412Z';
const sscc = '(00)095201230000000011';

const columns: readonly PdfColumn[] = [
  { title: 'SSCC', widthMm: 60 },
  { title: 'Packs', widthMm: 20, align: 'right' },
];

/** A sheet with everything that the kit can draw. */
async function aPaper(name = 'Żółć & Söhne, Афина'): Promise<Uint8Array> {
  const kit = await PdfKit.begin('Test paper', issuedAt);
  const sheet = kit.addSheet('a4');
  const below = sheet.text(name, { xMm: 15, yMm: 15, sizePoints: 14, bold: true, widthMm: 180 });
  const note = 'A line that is too long for its column is broken at its spaces, and goes on below.';
  let yMm = sheet.paragraph(note, { xMm: 15, yMm: below, widthMm: 60 });
  yMm = tableHead(sheet, columns, { xMm: 15, yMm: yMm + 4 });
  yMm = tableRow(sheet, columns, { cells: ['0 9520123 000000001 1', '480'] }, { xMm: 15, yMm });
  tableRow(sheet, columns, { cells: ['Together', '480'], isTotal: true }, { xMm: 15, yMm });
  sheet.box({ xMm: 120, yMm: 60, widthMm: 60, heightMm: 15 });
  sheet.symbol(gs1Linear(sscc), { xMm: 15, yMm: 100 });
  sheet.symbol(gs1Linear('(02)09520123000103(37)480'), { xMm: 15, yMm: 140 });
  sheet.symbol(matrixSymbol('gs1-data-matrix', '(01)09520123000103(10)6071A'), { xMm: 140, yMm: 100 });
  sheet.symbol(matrixSymbol('link-qr', 'https://id.gs1.org/01/09520123000103/10/6071A'), { xMm: 140, yMm: 140 });
  kit.addSheet('a7').text('Second sheet', { xMm: 5, yMm: 5 });
  return kit.bytes();
}

describe('a paper', () => {
  it('is the same to the byte whenever and wherever it is made from the same facts', async () => {
    const [first, second] = [await aPaper(), await aPaper()];
    expect(sha256(first)).toBe(sha256(second));
    // A paper of an older edition must stay what it was: if this changes, papers already given out would change too.
    expect(sha256(first)).toBe('cf313e3b3ffd030b77131a24072cfaf43c1fb3f7a05cb221ad4a625f209cb4f0');
    expect(Buffer.from(first).toString('latin1')).toContain('D:20260312074103Z');
  });

  it('shows its text as it was given, in any European script, and broken where a column ends', async () => {
    const text = textOf(await aPaper());
    expect(text).toContain('Żółć & Söhne, Афина');
    expect(text).toContain('A line that is too long for its');
    expect(text).toContain('Second sheet');
  });

  it('carries symbols that a reader which did not make them reads back', async () => {
    const pdf = await aPaper();
    expect(pageCount(pdf)).toBe(2);
    const read = (await symbolsOf(pdf)).map(({ prefix, text }) => prefix + text);
    expect(read).toEqual(
      expect.arrayContaining([
        ']C100095201230000000011',
        ']C1020952012300010337480',
        ']d20109520123000103106071A',
        ']Q1https://id.gs1.org/01/09520123000103/10/6071A',
      ]),
    );
    expect(pageAsPng(pdf).length).toBeGreaterThan(1000);
  });

  it('prints whatever a name may hold without failing', async () => {
    const odd = ['\u0000bell\u0007', '汉字', '🍬', 'a\tb', '\ud800', 'x'.repeat(500), ''];
    for (const name of odd) expect((await aPaper(name)).length).toBeGreaterThan(1000);
    expect(textOf(await aPaper('x'.repeat(500)))).toContain('…');
  });

  it('keeps the columns of a table side by side', () => {
    expect(tableWidthMm(columns)).toBe(80);
  });
});

describe('a GS1-128 symbol', () => {
  it('is as wide as its modules and its quiet zones are, and keeps the quiet zones empty', () => {
    // 156 modules and twice ten for an SSCC: 87.1 mm at 0.495 (GS1 General Specifications: ten modules each side).
    const symbol = gs1Linear(sscc, { moduleMm: 0.495 });
    expect(symbol.widthMm).toBeCloseTo(87.12, 6);
    const left = Math.min(...symbol.darks.map((dark) => dark.xMm));
    const right = Math.max(...symbol.darks.map((dark) => dark.xMm + dark.widthMm));
    expect(left).toBeCloseTo(4.95, 9);
    expect(symbol.widthMm - right).toBeCloseTo(4.95, 9);
    expect(symbol.heightMm).toBeGreaterThanOrEqual(logisticLimits.leastLabelBarMm);
  });

  it.each([
    ['a wrong check digit', '(00)095201230000000012', {}],
    ['a date that is none', '(02)09520123000103(15)271301(37)4', {}],
    ['more than 48 characters', `(00)095201230000000011(02)09520123000103(37)480(10)ABCDEF`, {}],
    ['more than 165.10 mm', '(02)09520123000103(15)271231(37)480(10)ABCDEFG', {}],
    ['bars too narrow for a logistic unit', sscc, { moduleMm: 0.494 }],
    ['bars too wide for a logistic unit', sscc, { moduleMm: 0.941 }],
  ])('is not made with %s', (_, text, options) => {
    expect(() => gs1Linear(text, options)).toThrow(RangeError);
  });
});

describe('a symbol of squares', () => {
  it('keeps four modules free around a QR symbol and one around a Data Matrix', () => {
    for (const [kind, modules] of [
      ['gs1-data-matrix', 1],
      ['gs1-qr', 4],
    ] as const) {
      const symbol = matrixSymbol(kind, '(01)09520123000103(10)A1');
      const quietMm = modules * 0.743;
      expect(Math.min(...symbol.darks.map((dark) => dark.xMm))).toBeCloseTo(quietMm, 9);
      expect(Math.max(...symbol.darks.map((dark) => dark.yMm + dark.heightMm))).toBeCloseTo(
        symbol.heightMm - quietMm,
        9,
      );
    }
  });

  it('is not made of an element string that is none', () => {
    expect(() => matrixSymbol('gs1-data-matrix', '(01)09520123000104')).toThrow(RangeError);
  });
});

describe('the font', () => {
  it('is refused when its file is no font', () => {
    expect(() => unpackWoff(Buffer.from('no font at all'))).toThrow(RangeError);
  });
});
