import { makeDocumentNumber, readDocumentNumber } from '../core/identifiers/document-number.js';

const prefix = 'PR';

/** The number of a packing run, such as `PR-2026-000042`; the serial starts anew with the plant's year. */
export function makeRunNumber(year: number, serial: number): string {
  return makeDocumentNumber({ prefix, year, serial });
}

/** A run's number as typed, in the form in which it is stored; null when it is none. */
export function readRunNumber(text: string): string | null {
  const typed = readDocumentNumber(text, prefix);
  return typed === null ? null : makeDocumentNumber(typed);
}
