import type { Language } from '../../platform/sentences/language.js';
import { PdfKit } from '../../platform/printing/pdf-kit.js';
import type { PdfSheet } from '../../platform/printing/pdf-sheet.js';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import { matrixSymbol } from '../../platform/printing/symbols.js';
import { drawChecks, drawPieceBoxes } from './check-rows.js';
import type { FormKind, PaperFormFacts } from './form-kinds.js';
import { drawPalletCards } from './pallet-cards.js';
import { englishWords, spanishWords, type FormWords } from './paper-form.words.js';

const words: Readonly<Record<Language, FormWords>> = { en: englishWords, es: spanishWords };

/** How wide each column is; the number of the row stands before the first. Together they take the page's 190 mm. */
const widthsMm: Readonly<Record<FormKind, readonly number[]>> = {
  tips: [46, 20, 20, 28, 20, 16, 14, 17],
  pallets: [16, 46, 22, 22, 47, 28],
  stops: [24, 24, 72, 32, 29],
  counts: [24, 44, 40, 44, 29],
  removals: [18, 46, 20, 20, 16, 26, 20, 15],
  checks: [18, 11, 48, 36, 30, 16, 22],
};

/** The columns in which boxes are ticked instead of words written. */
const ticks: Readonly<Partial<Record<FormKind, Readonly<Record<number, readonly (keyof FormWords['ticks'])[]>>>>> = {
  tips: { 3: ['whole', 'part'] },
  removals: { 1: ['reject', 'sample', 'sweepings'] },
};

const leftMm = 10;
const innerMm = 190;
const numberMm = 9;
const matrixModuleMm = 0.743;
/** Lower than this, nobody with gloves writes in a row (our own value, no source). */
const leastRowMm = 9;
/** Which column of a sheet of checks has a box for each piece. */
const piecesColumn = 2;

/** A sheet to write on by hand: which sheet, what to write, blank numbered rows; then a card for each pallet number. */
export async function paperForm(facts: PaperFormFacts, issuedAt: string): Promise<Uint8Array> {
  const said = words[facts.language];
  const kit = await PdfKit.begin(`${said.titles[facts.kind]} ${facts.number}`, issuedAt, facts.language);
  const sheet = kit.addSheet('a4');
  const headMm = drawHead(sheet, facts, said);
  const tableMm = drawChecks(sheet, facts, said, { xMm: leftMm, widthMm: innerMm, yMm: headMm });
  // A line of many checks leaves no room below them: its rows take a page of their own.
  if (rowHeightMm(sheet, facts, tableMm) >= leastRowMm) drawRows(sheet, facts, said, tableMm);
  else drawRows(kit.addSheet('a4'), facts, said, leftMm);
  if (facts.ssccs.length > 0) drawPalletCards(kit, facts, said);
  kit.sheets.forEach((page, place) => {
    const foot = { xMm: leftMm, yMm: page.heightMm - 9, widthMm: innerMm, sizePoints: 8 };
    const which = `${facts.number} · ${said.page} ${place + 1} / ${kit.sheets.length}`;
    if (place === 0) page.text(said.foot, foot);
    page.text(which, { ...foot, align: 'right' });
  });
  return kit.bytes();
}

function drawHead(sheet: PdfSheet, facts: PaperFormFacts, said: FormWords): number {
  const symbol = matrixSymbol('data-matrix', facts.number);
  const symbolMm = leftMm + innerMm - symbol.widthMm;
  sheet.symbol(symbol, { xMm: symbolMm, yMm: 8 });
  const under = { xMm: symbolMm - 14, yMm: 8 + symbol.heightMm, widthMm: symbol.widthMm + 14 };
  sheet.text(said.scan, { ...under, sizePoints: 7, align: 'right' });
  const column = { xMm: leftMm, widthMm: innerMm - symbol.widthMm - 18 };
  let yMm = sheet.text(`${said.titles[facts.kind]} · ${facts.lineName}`, {
    ...{ ...column, yMm: 8, sizePoints: 16, bold: true },
  });
  yMm = sheet.text(`${said.sheet} ${facts.number}`, { ...column, yMm, sizePoints: 12, bold: true });
  yMm = sheet.text(`${facts.siteName} · ${said.printed} ${facts.printedAtText}`, { ...column, yMm, sizePoints: 9 });
  yMm = drawPenLine(sheet, said, yMm + 4);
  const whole = { xMm: leftMm, widthMm: innerMm };
  yMm = sheet.paragraph(said.how, { ...whole, yMm: yMm + 2, sizePoints: 8 });
  yMm = sheet.paragraph(said.rules[facts.kind], { ...whole, yMm: yMm + 0.5, sizePoints: 8 });
  return sheet.paragraph(said.cautions[facts.kind], { ...whole, yMm: yMm + 0.5, sizePoints: 8, bold: true });
}

/** What is written once: the day, and the shift. */
function drawPenLine(sheet: PdfSheet, said: FormWords, yMm: number): number {
  const bottomMm = sheet.text(said.begins, { xMm: leftMm, yMm, sizePoints: 9, widthMm: 60 });
  sheet.rule({ xMm: leftMm + 62, yMm: bottomMm }, { xMm: leftMm + 112, yMm: bottomMm });
  sheet.text(said.shift, { xMm: leftMm + 118, yMm, sizePoints: 9, widthMm: 16 });
  sheet.rule({ xMm: leftMm + 135, yMm: bottomMm }, { xMm: leftMm + innerMm, yMm: bottomMm });
  return bottomMm;
}

/** From the end of the text to the first row: the titles of the columns. */
const headOfTableMm = 6;

function rowHeightMm(sheet: PdfSheet, facts: PaperFormFacts, topMm: number): number {
  return Math.floor(((sheet.heightMm - 12 - topMm - headOfTableMm) / facts.rowCount) * 10) / 10;
}

function drawRows(sheet: PdfSheet, facts: PaperFormFacts, said: FormWords, topMm: number): void {
  const cells = cellsOf(facts.kind);
  const titleMm = topMm + 2;
  cells.forEach(({ xMm, widthMm }, place) => {
    const title = said.columns[facts.kind][place] ?? '';
    sheet.text(title, { xMm: xMm + 0.8, yMm: titleMm, widthMm: widthMm - 1.2, sizePoints: 7.5, leastPoints: 5.5 });
  });
  const firstMm = topMm + headOfTableMm;
  const rowMm = rowHeightMm(sheet, facts, topMm);
  for (let row = 1; row <= facts.rowCount; row += 1) {
    const yMm = firstMm + (row - 1) * rowMm;
    const middleMm = yMm + rowMm / 2 - 2.2;
    sheet.text(String(row), {
      ...{ xMm: leftMm, yMm: middleMm, widthMm: numberMm - 1.5, sizePoints: 11, bold: true, align: 'right' },
    });
    cells.forEach(({ xMm, widthMm }, place) => {
      sheet.box({ xMm, yMm, widthMm, heightMm: rowMm });
      if (facts.kind === 'checks' && place === piecesColumn) {
        drawPieceBoxes(sheet, { xMm, yMm, widthMm, heightMm: rowMm });
      }
      drawTicks(sheet, ticks[facts.kind]?.[place] ?? [], said, { xMm, yMm: middleMm, widthMm });
    });
    const sscc = facts.ssccs[row - 1];
    if (sscc !== undefined) drawNumber(sheet, sscc, { cells, yMm, rowMm });
  }
}

interface Cell {
  readonly xMm: number;
  readonly widthMm: number;
}

function cellsOf(kind: FormKind): readonly Cell[] {
  let xMm = leftMm + numberMm;
  return widthsMm[kind].map((widthMm) => {
    const cell = { xMm, widthMm };
    xMm += widthMm;
    return cell;
  });
}

function drawTicks(
  sheet: PdfSheet,
  choices: readonly (keyof FormWords['ticks'])[],
  said: FormWords,
  cell: Cell & { readonly yMm: number },
): void {
  const eachMm = cell.widthMm / Math.max(1, choices.length);
  choices.forEach((choice, place) => {
    const xMm = cell.xMm + place * eachMm + 0.8;
    sheet.box({ xMm, yMm: cell.yMm + 0.6, widthMm: 3, heightMm: 3 });
    sheet.text(said.ticks[choice], {
      ...{ xMm: xMm + 3.4, yMm: cell.yMm + 0.7, widthMm: eachMm - 4.4, sizePoints: 7, leastPoints: 5 },
    });
  });
}

/** The number of a pallet in text and as a symbol. */
function drawNumber(
  sheet: PdfSheet,
  sscc: string,
  { cells, yMm, rowMm }: { readonly cells: readonly Cell[]; readonly yMm: number; readonly rowMm: number },
): void {
  const [first, second] = cells;
  if (first === undefined || second === undefined) return;
  const symbol = matrixSymbol('gs1-data-matrix', `(00)${sscc}`, matrixModuleMm);
  const inset = { xMm: (first.widthMm - symbol.widthMm) / 2, yMm: (rowMm - symbol.heightMm) / 2 };
  sheet.symbol(symbol, { xMm: first.xMm + inset.xMm, yMm: yMm + inset.yMm });
  const place = { xMm: second.xMm + 1.5, widthMm: second.widthMm - 3 };
  sheet.text(printedSscc(sscc), { ...place, yMm: yMm + rowMm / 2 - 2, sizePoints: 10, bold: true });
}
