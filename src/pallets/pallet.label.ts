import { bracketedText, humanReadable } from '../core/identifiers/element-string.js';
import { elementFault, type Gs1Element } from '../core/identifiers/elements.js';
import { gs1Date } from '../core/identifiers/gs1-date.js';
import { normaliseCode } from '../core/identifiers/normalise-code.js';
import { kilograms, printedDay, printedSscc, roundKilograms } from '../platform/printing/printed-figures.js';
import { PdfKit } from '../platform/printing/pdf-kit.js';
import type { PdfSheet } from '../platform/printing/pdf-sheet.js';
import { sizeForCapitals } from '../platform/printing/pdf-text.js';
import { gs1Linear } from '../platform/printing/symbols.js';
import type { Language } from '../platform/sentences/language.js';
import { say } from '../platform/sentences/sentences.js';

export const palletLabelKind = 'pallet-label';
export const palletLabelEdition = '1';

/** What a pallet's label says, frozen when it was issued. */
export interface PalletLabelFacts {
  /** Absent on labels from before papers had a language: English. */
  readonly language?: Language;
  readonly siteName: string;
  readonly siteGln: string;
  readonly sscc: string;
  /** 14 digits. */
  readonly gtin: string;
  readonly productName: string;
  readonly packCount: number;
  readonly isFull: boolean;
  readonly netGrams: number;
  readonly grossGrams: number;
  readonly builtAtLocal: string;
  readonly builtOn: string;
  readonly lots: readonly {
    readonly code: string;
    readonly packCount: number;
    readonly bestBeforeOn: string | null;
  }[];
}

const leftMm = 8;
const innerMm = 132;
/** Text of the data block: at least 7 mm high (GS1 General Specifications, logistic label). */
const dataPoints = sizeForCapitals(7);
const barMm = 32;
/** A symbol with its quiet zones; what is wider stays in words. */
const widestMm = 144;

/**
 * A pallet's label, A5: sender, then the data to read, then the symbols, the SSCC lowest (GS1 logistic label). A pallet of
 * several lots carries no lot and no count as a symbol: its content goes with the message, its lots stand in words.
 */
export async function palletLabel(facts: PalletLabelFacts, issuedAt: string): Promise<Uint8Array> {
  const kit = await PdfKit.begin(`${say('pallet-label-title')} ${facts.sscc}`, issuedAt);
  const sheet = kit.addSheet('a5');
  const symbols = symbolsOfLabel(facts);
  const blockTopMm = sheet.heightMm - 6 - symbols.length * (barMm + 7);
  dataBlock(sheet, facts, blockTopMm);
  sheet.rule({ xMm: leftMm, yMm: blockTopMm - 2 }, { xMm: leftMm + innerMm, yMm: blockTopMm - 2 }, 0.4);
  let yMm = blockTopMm;
  for (const elements of symbols) yMm = symbolWithText(sheet, elements, yMm);
  return kit.bytes();
}

function dataBlock(sheet: PdfSheet, facts: PalletLabelFacts, untilMm: number): void {
  const at = { xMm: leftMm, widthMm: innerMm };
  let yMm = sheet.text(`${facts.siteName} · GLN ${facts.siteGln}`, { ...at, yMm: 6, sizePoints: 9, quiet: true });
  yMm = sheet.text(facts.productName, { ...at, yMm, sizePoints: 20, bold: true });
  sheet.rule({ xMm: leftMm, yMm: yMm + 0.5 }, { xMm: leftMm + innerMm, yMm: yMm + 0.5 }, 0.4);
  yMm += 2;
  const count = `${say('label-count')} · ${facts.isFull ? say('label-full') : say('label-part')}`;
  const [only, ...others] = facts.lots;
  if (only !== undefined && others.length === 0) {
    const day: Titled =
      only.bestBeforeOn === null ? ['', ''] : [say('label-best-before-title'), printedDay(only.bestBeforeOn)];
    yMm = pair(sheet, yMm, [say('label-content'), facts.gtin], [count, String(facts.packCount)]);
    yMm = pair(sheet, yMm, [say('label-lot'), only.code], day);
    yMm = single(sheet, yMm, ['SSCC', printedSscc(facts.sscc)]);
  } else {
    yMm = pair(sheet, yMm, [count, String(facts.packCount)], [say('label-lots'), String(facts.lots.length)]);
    yMm = single(sheet, yMm, ['SSCC', printedSscc(facts.sscc)]);
    yMm = mixedLots(sheet, facts, yMm, untilMm);
  }
  const weights = [
    `${say('label-net')} ${kilograms(facts.netGrams)} kg`,
    `${say('label-gross')} ${roundKilograms(facts.grossGrams)} kg`,
    facts.builtAtLocal,
  ].join(' · ');
  sheet.text(weights, { ...at, yMm: Math.min(yMm + 1, untilMm - 7), sizePoints: 9 });
}

type Titled = readonly [title: string, data: string];

/** Two data titles with their data below, side by side. */
function pair(sheet: PdfSheet, yMm: number, left: Titled, right: Titled): number {
  titled(sheet, { xMm: leftMm, yMm, widthMm: 72 }, left);
  return titled(sheet, { xMm: leftMm + 74, yMm, widthMm: innerMm - 74 }, right);
}

function single(sheet: PdfSheet, yMm: number, only: Titled): number {
  return titled(sheet, { xMm: leftMm, yMm, widthMm: innerMm }, only);
}

function titled(sheet: PdfSheet, at: { xMm: number; yMm: number; widthMm: number }, [title, data]: Titled): number {
  const belowMm = sheet.text(title, { ...at, sizePoints: 8, quiet: true });
  return sheet.text(data, { ...at, yMm: belowMm - 0.8, sizePoints: dataPoints, bold: true, leastPoints: 12 });
}

function mixedLots(sheet: PdfSheet, facts: PalletLabelFacts, topMm: number, untilMm: number): number {
  let yMm = topMm;
  const room = Math.max(1, Math.floor((untilMm - 10 - yMm) / 6.5));
  const isAll = facts.lots.length <= room;
  for (const lot of isAll ? facts.lots : facts.lots.slice(0, room - 1)) {
    const day = lot.bestBeforeOn === null ? '' : ` · ${say('label-best-before')} ${printedDay(lot.bestBeforeOn)}`;
    const line = `${lot.code} × ${lot.packCount}${day}`;
    yMm = sheet.text(line, { xMm: leftMm, yMm, widthMm: innerMm, sizePoints: 13, bold: true });
  }
  if (isAll) return yMm;
  return sheet.text(say('label-more-lots', { count: facts.lots.length - room + 1 }), {
    xMm: leftMm,
    yMm,
    sizePoints: 11,
  });
}

/** The symbols from top to bottom. What can't stand in a symbol stays in words. */
function symbolsOfLabel(facts: PalletLabelFacts): readonly (readonly Gs1Element[])[] {
  const sscc = [{ ai: '00', value: facts.sscc }];
  const [only, ...others] = facts.lots;
  if (only === undefined || others.length > 0) return [sscc];
  const content = [
    { ai: '02', value: facts.gtin },
    ...(only.bestBeforeOn === null ? [] : [{ ai: '15', value: gs1Date(only.bestBeforeOn) }]),
    { ai: '37', value: String(facts.packCount) },
  ];
  const lot = [{ ai: '10', value: normaliseCode(only.code) }];
  const currentYear = Number(facts.builtOn.slice(0, 4));
  return [content, lot, sscc].filter((elements) => elementFault(elements, { currentYear }) === null && fits(elements));
}

function fits(elements: readonly Gs1Element[]): boolean {
  return gs1Linear(bracketedText(elements), { barHeightMm: barMm }).widthMm <= widestMm;
}

/** A symbol in the middle of the label with what it says below it. */
function symbolWithText(sheet: PdfSheet, elements: readonly Gs1Element[], yMm: number): number {
  const symbol = gs1Linear(bracketedText(elements), { barHeightMm: barMm });
  const xMm = (sheet.widthMm - symbol.widthMm) / 2;
  const belowMm = sheet.symbol(symbol, { xMm, yMm });
  const line = humanReadable(elements).join(' ');
  sheet.text(line, { xMm: leftMm, yMm: belowMm + 0.4, widthMm: innerMm, sizePoints: 10, align: 'centre' });
  return yMm + barMm + 7;
}
