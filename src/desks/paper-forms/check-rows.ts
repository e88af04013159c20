import type { PdfSheet } from '../../platform/printing/pdf-sheet.js';
import type { PaperFormFacts, PrintedCheck } from './form-kinds.js';
import type { FormWords } from './paper-form.words.js';

/** As many pieces as a plan may have. */
const mostPieces = 6;

interface Column {
  readonly xMm: number;
  readonly widthMm: number;
}

/** The checks of the line above the rows: the letter that a row names, when it is due, its numbered pieces. Answers where they end. */
export function drawChecks(
  sheet: PdfSheet,
  facts: PaperFormFacts,
  said: FormWords,
  { xMm, widthMm, yMm: topMm }: Column & { readonly yMm: number },
): number {
  const checks = facts.checks ?? [];
  if (checks.length === 0) return topMm;
  let yMm = topMm + 1.5;
  for (const check of checks) {
    const letter = { xMm, yMm, widthMm: 7, sizePoints: 11, bold: true };
    sheet.text(check.letter, letter);
    const column = { xMm: xMm + 8, widthMm: widthMm - 8 };
    const twice = check.needsSecondPerson ? ` · ${said.twoPeople}` : '';
    yMm = sheet.text(`${check.title} · ${check.oftenText}${twice}`, { ...column, yMm, sizePoints: 8.5, bold: true });
    yMm = sheet.paragraph(piecesText(check, said), { ...column, yMm, sizePoints: 8 }) + 0.8;
  }
  return yMm;
}

function piecesText({ pieces, kind }: PrintedCheck, said: FormWords): string {
  if (pieces.length > 0) return pieces.map((piece, place) => `${place + 1}: ${piece}`).join(' · ');
  return said.wholeChecks[kind === 'printed-code' || kind === 'torn-bag' ? kind : 'other'];
}

/** A box for each piece of a check, with its number small in the corner. */
export function drawPieceBoxes(
  sheet: PdfSheet,
  cell: Column & { readonly yMm: number; readonly heightMm: number },
): void {
  const eachMm = cell.widthMm / mostPieces;
  for (let place = 0; place < mostPieces; place += 1) {
    const xMm = cell.xMm + place * eachMm;
    if (place > 0) sheet.rule({ xMm, yMm: cell.yMm }, { xMm, yMm: cell.yMm + cell.heightMm }, 0.15);
    sheet.text(String(place + 1), { xMm: xMm + 0.7, yMm: cell.yMm + 0.3, widthMm: 4, sizePoints: 6, quiet: true });
  }
}
