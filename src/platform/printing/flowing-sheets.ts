import type { PdfKit } from './pdf-kit.js';
import type { PdfSheet } from './pdf-sheet.js';
import { tableHead, tableRow, tableRowMm, type PdfColumn, type PdfRow } from './pdf-table.js';

export const noteLeftMm = 15;
export const noteWidthMm = 180;
const topMm = 15;
const footMm = 16;

/** A note's text flowing down its pages: whatever does not fit goes onto the next one, under a short head. */
export class NoteFlow {
  private sheet: PdfSheet;
  yMm = topMm;

  constructor(
    private readonly kit: PdfKit,
    private readonly shortHead: string,
  ) {
    this.sheet = kit.addSheet('a4');
  }

  get page(): PdfSheet {
    return this.sheet;
  }

  /** Begins a page unless there is so much room; answers whether it did. */
  need(heightMm: number): boolean {
    if (this.yMm + heightMm <= this.sheet.heightMm - footMm) return false;
    this.begin();
    return true;
  }

  /** A new page with its short head. */
  begin(): void {
    this.sheet = this.kit.addSheet('a4');
    const at = { xMm: noteLeftMm, yMm: topMm - 4, widthMm: noteWidthMm };
    this.yMm = this.sheet.text(this.shortHead, { ...at, sizePoints: 8.5, quiet: true }) + 1;
    this.sheet.rule({ xMm: noteLeftMm, yMm: this.yMm }, { xMm: noteLeftMm + noteWidthMm, yMm: this.yMm });
    this.yMm += 4;
  }

  line(text: string, style: { sizePoints?: number; bold?: boolean; quiet?: boolean } = {}): void {
    this.need(6);
    this.yMm = this.sheet.text(text, { xMm: noteLeftMm, yMm: this.yMm, widthMm: noteWidthMm, ...style });
  }

  paragraph(text: string, style: { sizePoints?: number; bold?: boolean; quiet?: boolean } = {}): void {
    const column = { widthMm: noteWidthMm, ...style };
    this.need(this.sheet.paragraphHeightMm(text, column));
    this.yMm = this.sheet.paragraph(text, { xMm: noteLeftMm, yMm: this.yMm, ...column });
  }

  /** A table that repeats its head, under its own caption, on each page that it runs over. */
  table(caption: string, columns: readonly PdfColumn[], rows: readonly PdfRow[]): void {
    this.need(tableRowMm * 4);
    this.tableHead(caption, columns);
    for (const [place, row] of rows.entries()) {
      // A sum never stands alone on a page.
      const roomMm = rows[place + 1]?.isTotal === true ? tableRowMm * 2 : tableRowMm;
      if (this.need(roomMm)) this.tableHead(`${caption} …`, columns);
      this.yMm = tableRow(this.sheet, columns, row, { xMm: noteLeftMm, yMm: this.yMm });
    }
    this.yMm += 2.5;
  }

  private tableHead(caption: string, columns: readonly PdfColumn[]): void {
    this.line(caption, { bold: true });
    this.yMm = tableHead(this.sheet, columns, { xMm: noteLeftMm, yMm: this.yMm });
  }
}
