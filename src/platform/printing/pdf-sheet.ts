import type { PDFFont, PDFPage, RGB } from 'pdf-lib';
import { points } from './millimetres.js';
import type { PaperFonts } from './paper-fonts.js';
import { pdfLib } from './paper-libraries.js';
import { capitalShare, fitted, lineHeightMm, printable, widthMm, wrapped } from './pdf-text.js';
import type { MeasuredSymbol } from './symbols.js';

/** Where a line of text begins: `xMm` from the left, `yMm` the top of its line. */
export interface TextPlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly sizePoints?: number;
  readonly bold?: boolean;
  /** Second ink: what is read second. */
  readonly quiet?: boolean;
  /** The column to stay in; text is aligned within it and made to fit. */
  readonly widthMm?: number;
  readonly align?: 'left' | 'right' | 'centre';
  /** How small the type may become to fit; then it is cut with an ellipsis. */
  readonly leastPoints?: number;
}

const ink = (): RGB => pdfLib().rgb(0.08, 0.09, 0.11);
const secondInk = (): RGB => pdfLib().rgb(0.25, 0.28, 0.31);
const usualPoints = 9;

/** One page, in millimetres from its left upper corner. Each call that sets text answers where the next line may begin. */
export class PdfSheet {
  constructor(
    private readonly page: PDFPage,
    private readonly fonts: PaperFonts,
    readonly widthMm: number,
    readonly heightMm: number,
  ) {}

  /** One line of text. */
  text(text: string, place: TextPlace): number {
    const font = this.fontOf(place);
    const sizePoints = place.sizePoints ?? usualPoints;
    const bottomMm = place.yMm + lineHeightMm(sizePoints);
    const least = Math.min(place.leastPoints ?? 6, sizePoints);
    const line =
      place.widthMm === undefined
        ? { text: printable(text), sizePoints }
        : fitted(font, text, { sizePoints, leastPoints: least }, place.widthMm);
    if (line.text.trim() === '') return bottomMm;
    // The size asked for sets the base line, so that a line made smaller still stands on it.
    const baseMm = place.yMm + (sizePoints * (capitalShare + 0.15)) / points(1);
    this.page.drawText(line.text, {
      x: points(this.startOf(line.text, font, line.sizePoints, place)),
      y: points(this.heightMm - baseMm),
      size: line.sizePoints,
      font,
      color: place.quiet === true ? secondInk() : ink(),
    });
    return bottomMm;
  }

  /** A text over several lines within its column. */
  paragraph(text: string, place: TextPlace & { readonly widthMm: number }): number {
    const lines = wrapped(this.fontOf(place), text, place.sizePoints ?? usualPoints, place.widthMm);
    return lines.reduce((yMm, line) => this.text(line, { ...place, yMm }), place.yMm);
  }

  /** How high a paragraph would be. */
  paragraphHeightMm(text: string, place: Omit<TextPlace, 'xMm' | 'yMm'> & { readonly widthMm: number }): number {
    const sizePoints = place.sizePoints ?? usualPoints;
    return wrapped(this.fontOf(place), text, sizePoints, place.widthMm).length * lineHeightMm(sizePoints);
  }

  /** A straight line. */
  rule(from: { xMm: number; yMm: number }, to: { xMm: number; yMm: number }, thicknessMm = 0.2): void {
    this.page.drawLine({
      start: { x: points(from.xMm), y: points(this.heightMm - from.yMm) },
      end: { x: points(to.xMm), y: points(this.heightMm - to.yMm) },
      thickness: points(thicknessMm),
      color: ink(),
    });
  }

  /** An empty box to write in. */
  box(place: { xMm: number; yMm: number; widthMm: number; heightMm: number }, thicknessMm = 0.2): void {
    this.page.drawRectangle({
      x: points(place.xMm),
      y: points(this.heightMm - place.yMm - place.heightMm),
      width: points(place.widthMm),
      height: points(place.heightMm),
      borderWidth: points(thicknessMm),
      borderColor: ink(),
    });
  }

  /** A closed shape by its corners, filled with a grey (0 is black) or empty, framed or not. */
  shape(
    corners: readonly (readonly [xMm: number, yMm: number])[],
    { fillGrey, lineMm = 0, dashMm }: { fillGrey?: number; lineMm?: number; dashMm?: number },
  ): void {
    const path = `M${corners.map((corner) => corner.join(' ')).join(' L')} Z`;
    this.page.drawSvgPath(path, {
      ...{ x: 0, y: points(this.heightMm), scale: points(1), borderWidth: lineMm },
      ...(fillGrey === undefined ? {} : { color: pdfLib().grayscale(fillGrey) }),
      ...(lineMm === 0 ? {} : { borderColor: ink() }),
      ...(dashMm === undefined ? {} : { borderDashArray: [dashMm, dashMm] }),
    });
  }

  /** A line through several places, whole or dashed. */
  trail(
    places: readonly (readonly [xMm: number, yMm: number])[],
    { lineMm, dashMm }: { lineMm: number; dashMm?: number },
  ): void {
    this.page.drawSvgPath(`M${places.map((place) => place.join(' ')).join(' L')}`, {
      ...{ x: 0, y: points(this.heightMm), scale: points(1), borderWidth: lineMm, borderColor: ink() },
      ...(dashMm === undefined ? {} : { borderDashArray: [dashMm, dashMm] }),
    });
  }

  /** A circle about its middle, filled with a grey and framed. */
  circle(
    { xMm, yMm, radiusMm }: { xMm: number; yMm: number; radiusMm: number },
    { fillGrey, lineMm }: { fillGrey: number; lineMm: number },
  ): void {
    this.page.drawCircle({
      ...{ x: points(xMm), y: points(this.heightMm - yMm), size: points(radiusMm) },
      ...{ color: pdfLib().grayscale(fillGrey), borderColor: ink(), borderWidth: points(lineMm) },
    });
  }

  /** A symbol as one path with one fill: exact, small, and with no hairlines between its rectangles. */
  symbol(symbol: MeasuredSymbol, place: { readonly xMm: number; readonly yMm: number }): number {
    const { PDFNumber, PDFOperator, PDFOperatorNames } = pdfLib();
    const { popGraphicsState, pushGraphicsState, setFillingGrayscaleColor } = pdfLib();
    const rectangles = symbol.darks.map((dark) =>
      PDFOperator.of(
        PDFOperatorNames.AppendRectangle,
        [place.xMm + dark.xMm, this.heightMm - place.yMm - dark.yMm - dark.heightMm, dark.widthMm, dark.heightMm].map(
          (lengthMm) => PDFNumber.of(points(lengthMm)),
        ),
      ),
    );
    this.page.pushOperators(
      pushGraphicsState(),
      setFillingGrayscaleColor(0),
      ...rectangles,
      PDFOperator.of(PDFOperatorNames.FillNonZero),
      popGraphicsState(),
    );
    return place.yMm + symbol.heightMm;
  }

  private fontOf(place: { readonly bold?: boolean }): PDFFont {
    return place.bold === true ? this.fonts.bold : this.fonts.plain;
  }

  private startOf(line: string, font: PDFFont, sizePoints: number, place: TextPlace): number {
    if (place.widthMm === undefined || place.align === undefined || place.align === 'left') return place.xMm;
    const free = place.widthMm - widthMm(font, line, sizePoints);
    return place.xMm + (place.align === 'right' ? free : free / 2);
  }
}
