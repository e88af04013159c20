import type { PdfSheet } from './pdf-sheet.js';
import { lineHeightMm } from './pdf-text.js';

/** A column of a table. Numbers stand to the right. */
export interface PdfColumn {
  readonly title: string;
  readonly widthMm: number;
  readonly align?: 'left' | 'right';
}

/** A row of a table; a row that sums up those above it stands bold under a line. */
export interface PdfRow {
  readonly cells: readonly string[];
  readonly isTotal?: boolean;
  readonly isBold?: boolean;
}

export const tablePoints = 8.5;
const gapMm = 1.2;

/** How high the head of a table and each of its rows is. */
export const tableRowMm = lineHeightMm(tablePoints) + gapMm;

/** The head of a table: its titles over a line. Answers where the first row begins. */
export function tableHead(sheet: PdfSheet, columns: readonly PdfColumn[], at: { xMm: number; yMm: number }): number {
  cellsAt(columns, at.xMm).forEach(({ column, xMm, widthMm }) => {
    sheet.text(column.title, {
      xMm,
      yMm: at.yMm,
      widthMm,
      sizePoints: 7.5,
      quiet: true,
      align: column.align ?? 'left',
    });
  });
  const bottomMm = at.yMm + tableRowMm - gapMm / 2;
  sheet.rule({ xMm: at.xMm, yMm: bottomMm }, { xMm: at.xMm + tableWidthMm(columns), yMm: bottomMm }, 0.25);
  return bottomMm + gapMm / 2;
}

/** One row. Answers where the next begins. */
export function tableRow(
  sheet: PdfSheet,
  columns: readonly PdfColumn[],
  row: PdfRow,
  at: { readonly xMm: number; readonly yMm: number },
): number {
  const bold = row.isTotal === true || row.isBold === true;
  if (row.isTotal === true) sheet.rule(at, { xMm: at.xMm + tableWidthMm(columns), yMm: at.yMm }, 0.15);
  cellsAt(columns, at.xMm).forEach(({ column, xMm, widthMm }, place) => {
    const yMm = at.yMm + gapMm / 2;
    sheet.text(row.cells[place] ?? '', {
      xMm,
      yMm,
      widthMm,
      sizePoints: tablePoints,
      bold,
      align: column.align ?? 'left',
    });
  });
  return at.yMm + tableRowMm;
}

export function tableWidthMm(columns: readonly PdfColumn[]): number {
  return columns.reduce((sum, column) => sum + column.widthMm, 0);
}

/** Cells keep a millimetre from their neighbours. */
function cellsAt(columns: readonly PdfColumn[], startMm: number) {
  let leftMm = startMm;
  return columns.map((column) => {
    const xMm = leftMm;
    leftMm += column.widthMm;
    return { column, xMm, widthMm: column.widthMm - 1.5 };
  });
}
