import type { PDFFont } from 'pdf-lib';
import { points, pointsPerMillimetre } from './millimetres.js';

/** Letters are about this much of the type size above the line: DejaVu Sans' capitals, 0.729 of an em. */
export const capitalShare = 0.729;

/** Type sizes in points are what printers speak; a line takes a quarter more than its letters. */
const lineShare = 1.25;

/** The height of a line of this type size. */
export function lineHeightMm(sizePoints: number): number {
  return (sizePoints * lineShare) / pointsPerMillimetre;
}

/** The type size whose capital letters and digits are so many millimetres high. */
export function sizeForCapitals(heightMm: number): number {
  return points(heightMm) / capitalShare;
}

/** What a page can't show becomes a space: control characters would stop the printing of a paper for ever. */
export function printable(text: string): string {
  return text.replaceAll(/[\p{Cc}\p{Cs}\p{Co}\p{Cn}]+/gu, ' ');
}

export function widthMm(font: PDFFont, text: string, sizePoints: number): number {
  return font.widthOfTextAtSize(printable(text), sizePoints) / pointsPerMillimetre;
}

/** Breaks a text into lines at its spaces and its own line ends; a word too long for a line is broken where it ends. */
export function wrapped(font: PDFFont, text: string, sizePoints: number, withinMm: number): readonly string[] {
  return text.split('\n').flatMap((paragraph) => wrapParagraph(font, printable(paragraph), sizePoints, withinMm));
}

function wrapParagraph(font: PDFFont, paragraph: string, sizePoints: number, withinMm: number): readonly string[] {
  const fits = (line: string): boolean => widthMm(font, line, sizePoints) <= withinMm;
  const lines: string[] = [];
  let line = '';
  for (const word of paragraph.split(/\s+/).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = brokenWord(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  return [...lines, line];
}

function brokenWord(word: string, fits: (text: string) => boolean): readonly string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && !fits(piece + letter)) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}

/** Makes a line fit: first smaller, down to `leastPoints`, then cut, with an ellipsis that says so. */
export function fitted(
  font: PDFFont,
  text: string,
  size: { readonly sizePoints: number; readonly leastPoints: number },
  withinMm: number,
): { readonly text: string; readonly sizePoints: number } {
  const line = printable(text);
  const wide = widthMm(font, line, size.sizePoints);
  if (wide <= withinMm) return { text: line, sizePoints: size.sizePoints };
  const smaller = Math.floor(size.sizePoints * (withinMm / wide) * 10) / 10;
  if (smaller >= size.leastPoints) return { text: line, sizePoints: smaller };
  // About as many letters as there is room for, and a few more; the rest goes one by one.
  const share = withinMm / widthMm(font, line, size.leastPoints);
  const letters = [...line].slice(0, Math.ceil([...line].length * share) + 8);
  while (letters.length > 1 && widthMm(font, `${letters.join('')}…`, size.leastPoints) > withinMm) letters.pop();
  return { text: `${letters.join('').trimEnd()}…`, sizePoints: size.leastPoints };
}
