import { makeDocumentNumber, readDocumentNumber } from '../core/identifiers/document-number.js';

const prefix = 'RB';

/** The number of a rework bin, such as `RB-2026-000007`; the serial starts anew with the plant's year. */
export function makeBinNumber(year: number, serial: number): string {
  return makeDocumentNumber({ prefix, year, serial });
}

/** A bin's number as typed, in the form in which it is stored; null when it is none. */
export function readBinNumber(text: string): string | null {
  const typed = readDocumentNumber(text, prefix);
  return typed === null ? null : makeDocumentNumber(typed);
}
