import { spacedBagNumber } from '../core/identifiers/bag-number.js';
import { formatKilograms } from '../core/units/grams.js';
import { PdfKit } from '../platform/printing/pdf-kit.js';
import type { PdfSheet } from '../platform/printing/pdf-sheet.js';
import { sizeForCapitals } from '../platform/printing/pdf-text.js';
import { gs1Linear, matrixSymbol } from '../platform/printing/symbols.js';
import { decimalText } from '../platform/sentences/decimal-text.js';
import type { Language } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';

/** What a bag's label says, frozen when it was printed. A state is not promised by paper. */
export interface BagLabelFacts {
  /** Absent on labels from before papers had a language: English. */
  readonly language?: Language;
  readonly bagNumber: string;
  readonly sscc: string;
  readonly siteName: string;
  readonly gradeName: string;
  /** `dryer run DR-2026-000012`, `A-4471 of SUP-07`, `opening stock`, in the label’s language. */
  readonly originText: string;
  readonly netGrams: number;
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly isPresetTare: boolean;
  readonly isDoubtful: boolean;
  readonly safeLoadGrams: number;
  readonly scaleCode: string;
  /** In the plant's time. */
  readonly filledAtText: string;
  readonly linerLot: string | null;
  /** 1 is the first print; later ones say that they are copies. */
  readonly copyNumber: number;
}

export const bagLabelEdition = '1';

const leftMm = 8;
const columnMm = 132;

/** The label of a bulk bag on A5: what people read first, then the symbols, then a strip to tear off. */
export async function renderBagLabel(facts: BagLabelFacts, issuedAt: string): Promise<Uint8Array> {
  const kit = await PdfKit.begin(say('bag-label-title', { bag: facts.bagNumber }), issuedAt);
  const sheet = kit.addSheet('a5');
  const belowText = drawText(sheet, facts);
  const belowSymbol = drawSymbol(sheet, facts, belowText);
  drawPenFields(sheet, belowSymbol);
  drawTearOff(sheet, facts);
  return kit.bytes();
}

function drawText(sheet: PdfSheet, facts: BagLabelFacts): number {
  const column = { xMm: leftMm, widthMm: columnMm };
  const copy = facts.copyNumber === 1 ? '' : say('bag-label-copy', { number: facts.copyNumber });
  sheet.text(copy, { ...column, yMm: 6, sizePoints: 12, bold: true, align: 'right' });
  let yMm = sheet.text(`${say('bag-label-bag')} · ${facts.siteName}`, { ...column, yMm: 6, sizePoints: 12 });
  yMm = sheet.text(spacedBagNumber(facts.bagNumber), { ...column, yMm, sizePoints: sizeForCapitals(16), bold: true });
  yMm = sheet.text(facts.gradeName, { ...column, yMm: yMm + 1, sizePoints: 20, bold: true });
  yMm = sheet.text(facts.originText, { ...column, yMm, sizePoints: 12 });
  yMm = sheet.text(netText(facts), { ...column, yMm: yMm + 1, sizePoints: 26, bold: true });
  yMm = sheet.text(weightLine(facts), { ...column, yMm, sizePoints: 11 });
  const scale = say('bag-label-scale', { scale: facts.scaleCode });
  yMm = sheet.text(`${scale} · ${facts.filledAtText}`, { ...column, yMm, sizePoints: 11 });
  const load = say('bag-label-safe-load', { kilograms: decimalText(formatKilograms(facts.safeLoadGrams)) });
  const liner = facts.linerLot === null ? '' : ` · ${say('bag-label-liner', { lot: facts.linerLot })}`;
  yMm = sheet.text(`${load}${liner}`, { ...column, yMm, sizePoints: 11 });
  if (facts.isDoubtful) yMm = sheet.text(say('bag-label-doubtful'), { ...column, yMm, sizePoints: 12, bold: true });
  return yMm;
}

function weightLine(facts: BagLabelFacts): string {
  const gross = say('bag-label-gross', { kilograms: weighed(facts.grossGrams) });
  const tare = say('bag-label-tare', { kilograms: weighed(facts.tareGrams) });
  return [gross, tare, ...(facts.isPresetTare ? [say('bag-label-preset')] : [])].join(' · ');
}

function netText(facts: BagLabelFacts): string {
  return say('bag-label-net', { kilograms: weighed(facts.netGrams) });
}

/** What a scale showed, with a decimal at least. */
function weighed(grams: number): string {
  return decimalText(formatKilograms(grams, { minimumDecimals: 1 }));
}

/** The number as people type it stands under its bars, as it is encoded. */
function drawSymbol(sheet: PdfSheet, facts: BagLabelFacts, belowMm: number): number {
  const symbol = gs1Linear(`(00)${facts.sscc}`);
  const yMm = sheet.symbol(symbol, { xMm: leftMm, yMm: belowMm + 3 });
  const place = { xMm: leftMm, yMm: yMm + 1, widthMm: symbol.widthMm, align: 'centre' } as const;
  return sheet.text(`(00) ${facts.sscc}`, { ...place, sizePoints: 10 });
}

function drawPenFields(sheet: PdfSheet, belowMm: number): void {
  const column = { xMm: leftMm, widthMm: columnMm };
  // Spaces as on the labels that were printed first: the rules stand between the words.
  const pen = `${say('bag-label-opened')}                                 ${say('bag-label-rest')}`;
  let yMm = sheet.text(pen, { ...column, yMm: belowMm + 3, sizePoints: 11 });
  sheet.rule({ xMm: leftMm + 21, yMm }, { xMm: leftMm + 55, yMm });
  sheet.rule({ xMm: leftMm + 78, yMm }, { xMm: leftMm + 120, yMm });
  yMm = sheet.text(say('bag-label-state'), { ...column, yMm: yMm + 2, sizePoints: 10, bold: true });
  sheet.paragraph(say('bag-label-caution'), { ...column, yMm: yMm + 1, sizePoints: 8 });
}

function drawTearOff(sheet: PdfSheet, facts: BagLabelFacts): void {
  const topMm = 180;
  sheet.rule({ xMm: 0, yMm: topMm }, { xMm: sheet.widthMm, yMm: topMm }, 0.3);
  const matrix = matrixSymbol('gs1-data-matrix', `(00)${facts.sscc}`);
  sheet.symbol(matrix, { xMm: leftMm, yMm: topMm + 4 });
  const column = { xMm: leftMm + matrix.widthMm + 6, widthMm: columnMm - matrix.widthMm - 6 };
  const number = spacedBagNumber(facts.bagNumber);
  let yMm = sheet.text(number, { ...column, yMm: topMm + 3, sizePoints: 24, bold: true });
  yMm = sheet.text(`${netText(facts)} · ${facts.gradeName}`, { ...column, yMm, sizePoints: 11 });
  sheet.text(say('bag-label-tear-off'), { ...column, yMm, sizePoints: 8 });
}
