import { bracketedText, humanReadable } from '../core/identifiers/element-string.js';
import { elementFault, type Gs1Element } from '../core/identifiers/elements.js';
import { normaliseCode } from '../core/identifiers/normalise-code.js';
import { PdfKit } from '../platform/printing/pdf-kit.js';
import type { PdfSheet } from '../platform/printing/pdf-sheet.js';
import { sizeForCapitals } from '../platform/printing/pdf-text.js';
import { printedDay } from '../platform/printing/printed-figures.js';
import { matrixSymbol } from '../platform/printing/symbols.js';
import type { Language } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';

export const lotLabelKind = 'lot-label';
export const lotLabelEdition = '1';

/** What a lot's card says, frozen when it was printed. */
export interface LotLabelFacts {
  /** Absent on cards from before papers had a language: English. */
  readonly language?: Language;
  readonly siteName: string;
  readonly code: string;
  /** 14 digits. */
  readonly gtin: string;
  readonly productName: string;
  readonly bestBeforeOn: string | null;
  /** The packing shift in which its first packs were made. */
  readonly productionOn: string;
  readonly shiftCode: string;
  /** In the plant's time. */
  readonly firstPackedAtText: string;
  readonly lineNames: readonly string[];
  readonly runNumbers: readonly string[];
  /** 1 is the first print; later ones say that they are copies. */
  readonly copyNumber: number;
}

const leftMm = 5;
const columnMm = 64;
const column = { xMm: leftMm, widthMm: columnMm };

/** The card of a lot on A7: which lot, of what, from when; then the symbol of GTIN and lot. */
export async function lotLabel(facts: LotLabelFacts, issuedAt: string): Promise<Uint8Array> {
  const kit = await PdfKit.begin(`${say('lot-label-lot')} ${facts.code}`, issuedAt);
  const sheet = kit.addSheet('a7');
  const belowTextMm = drawText(sheet, facts);
  drawSymbol(sheet, facts, belowTextMm + 2);
  sheet.paragraph(say('lot-label-state'), { ...column, yMm: sheet.heightMm - 8, sizePoints: 7 });
  return kit.bytes();
}

function drawText(sheet: PdfSheet, facts: LotLabelFacts): number {
  const copy = facts.copyNumber === 1 ? '' : say('lot-label-copy', { number: facts.copyNumber });
  sheet.text(copy, { ...column, yMm: 4, sizePoints: 9, bold: true, align: 'right' });
  let yMm = sheet.text(`${say('lot-label-lot')} · ${facts.siteName}`, { ...column, yMm: 4, sizePoints: 9 });
  yMm = sheet.text(facts.code, { ...column, yMm, sizePoints: sizeForCapitals(8), bold: true, leastPoints: 10 });
  yMm = sheet.text(facts.productName, { ...column, yMm, sizePoints: 13, bold: true, leastPoints: 8 });
  if (facts.bestBeforeOn !== null) {
    const day = say('lot-label-best-before', { day: printedDay(facts.bestBeforeOn) });
    yMm = sheet.text(day, { ...column, yMm, sizePoints: 11, bold: true });
  }
  const shift = say('lot-label-shift', { day: printedDay(facts.productionOn), shift: facts.shiftCode });
  yMm = sheet.text(`${shift} · ${facts.lineNames.join(', ')}`, { ...column, yMm: yMm + 1, sizePoints: 8 });
  yMm = sheet.text(say('lot-label-first', { at: facts.firstPackedAtText }), { ...column, yMm, sizePoints: 8 });
  return sheet.text(say('lot-label-runs', { runs: facts.runNumbers.join(', ') }), { ...column, yMm, sizePoints: 8 });
}

/** A code that GS1's letters can't write stays in words. */
function drawSymbol(sheet: PdfSheet, facts: LotLabelFacts, yMm: number): void {
  const elements: readonly Gs1Element[] = [
    { ai: '01', value: facts.gtin },
    { ai: '10', value: normaliseCode(facts.code) },
  ];
  if (elementFault(elements, { currentYear: Number(facts.productionOn.slice(0, 4)) }) !== null) return;
  const symbol = matrixSymbol('gs1-data-matrix', bracketedText(elements));
  sheet.symbol(symbol, { xMm: leftMm - symbol.quietMm, yMm });
  const beside = { xMm: leftMm + symbol.widthMm + 2, widthMm: columnMm - symbol.widthMm - 2 };
  let lineMm = yMm + 1;
  for (const line of humanReadable(elements)) lineMm = sheet.text(line, { ...beside, yMm: lineMm, sizePoints: 9 });
}
