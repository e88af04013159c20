import type { CsvLayout } from './csv-layout.js';
import { CsvWeights } from './csv-weights.js';
import { layoutOfHeader } from './csv-header.js';
import { LineFaults } from './line-faults.js';
import { NdjsonWeights } from './ndjson-weights.js';
import { emptyWeight, fault, type LineReader } from './sent-weight.js';
import { TextNumbers } from './text-numbers.js';
import { keepForNext, rowsForBatch, type WeightRows } from './weight-rows.js';

/** One request holds so many weights at most: they wait in memory until they are written. */
export const mostWeights = 1_000_000;
/** No line of a weight comes near this; one that does is no weight. */
export const longestLineBytes = 16_384;
/** Different runs, and lines, that one batch may name. */
const mostTexts = 200;

const newline = 0x0a;
const byteOrderMark = [0xef, 0xbb, 0xbf];

/** Where a table says in its first line what its columns mean, or this is known beforehand. */
export type WeightsKind =
  | { readonly kind: 'ndjson' }
  | { readonly kind: 'csv' }
  | { readonly kind: 'table'; readonly layout: CsvLayout; readonly headerLines: number };

/** Why a batch is given up before its end. */
export type BatchFault = 'too-many-weights' | 'header-in-error';

/** Takes a batch apart as its bytes arrive; only what is read of it stays in memory. */
export class ReadWeights {
  readonly rows: WeightRows = rowsForBatch();
  readonly faults = new LineFaults();
  readonly lines = new TextNumbers(mostTexts);
  readonly runs = new TextNumbers(mostTexts);
  /** Lines with something on them. */
  lineCount = 0;
  endsWithNewline = true;
  private readonly weight = emptyWeight();
  private reader: LineReader | null;
  private lineNumber = 0;
  private headerLines: number;
  private rest: Uint8Array | null = null;
  private isTooLong = false;
  /** No column counts packs: the place of a line in the file does. */
  private readonly countsLines: boolean;

  constructor(kind: WeightsKind) {
    this.reader = this.readerOf(kind);
    this.countsLines = kind.kind === 'table' && kind.layout.countsLines === true;
    this.headerLines = kind.kind === 'csv' ? 1 : kind.kind === 'table' ? kind.headerLines : 0;
  }

  /** @returns why nothing more is to be read; null: go on */
  take(chunk: Uint8Array): BatchFault | null {
    const bytes = chunk;
    let start = 0;
    if (this.rest !== null) {
      const end = chunk.indexOf(newline);
      const begun = joined(this.rest, end < 0 ? chunk : chunk.subarray(0, end));
      this.rest = null;
      if (end < 0) {
        this.keep(begun, 0);
        return null;
      }
      const stop = this.line(begun, 0, begun.length);
      if (stop !== null) return stop;
      start = end + 1;
    }
    for (;;) {
      const plainEnd = this.plainLine(bytes, start);
      const end = plainEnd < 0 ? bytes.indexOf(newline, start) : plainEnd;
      if (end < 0) break;
      const stop = plainEnd < 0 ? this.line(bytes, start, end) : this.addWeight();
      if (stop !== null) return stop;
      start = end + 1;
    }
    this.keep(bytes, start);
    return null;
  }

  /** Almost all lines: read in one go, their end found by the way. @returns where the newline stands; −1: another line */
  private plainLine(bytes: Uint8Array, start: number): number {
    if (this.headerLines > 0 || this.isTooLong || this.reader === null) return -1;
    const end = this.reader.readPlain(bytes, start, bytes.length, this.weight);
    if (end < 0 || end - start > longestLineBytes) return -1;
    this.lineNumber += 1;
    this.lineCount += 1;
    return end;
  }

  /** All is done with the rows that was to be done: what they take is left to the next batch. */
  done(): void {
    keepForNext(this.rows);
  }

  /** What stands after the last newline is a line too. */
  end(): BatchFault | null {
    this.endsWithNewline = this.rest === null && !this.isTooLong;
    if (this.endsWithNewline) return null;
    const last = this.rest ?? new Uint8Array(0);
    return this.line(last, 0, last.length);
  }

  /** The begin of a line whose end has not come yet; of one that is too long nothing is kept. */
  private keep(bytes: Uint8Array, start: number): void {
    if (start === bytes.length) return;
    if (this.isTooLong || bytes.length - start > longestLineBytes) this.isTooLong = true;
    else this.rest = bytes.slice(start);
  }

  private line(bytes: Uint8Array, from: number, to: number): BatchFault | null {
    this.lineNumber += 1;
    if (this.isTooLong || to - from > longestLineBytes) {
      this.isTooLong = false;
      this.lineCount += 1;
      this.faults.add(this.lineNumber, fault('', 'weight-line-too-long', { most: longestLineBytes }));
      return null;
    }
    const start = from + (this.lineNumber === 1 && beginsWithMark(bytes, from) ? byteOrderMark.length : 0);
    if (isBlank(bytes, start, to)) return null;
    if (this.headerLines > 0) return this.header(bytes.subarray(start, to));
    this.lineCount += 1;
    const wrong = this.reader?.read(bytes, start, to, this.weight) ?? null;
    if (wrong !== null) {
      this.faults.add(this.lineNumber, wrong);
      return null;
    }
    return this.addWeight();
  }

  private addWeight(): BatchFault | null {
    if (this.rows.count >= mostWeights) return 'too-many-weights';
    if (this.countsLines) this.weight.sequence = this.lineNumber;
    this.rows.add(this.weight, this.lineNumber);
    return null;
  }

  private header(line: Uint8Array): BatchFault | null {
    this.headerLines -= 1;
    if (this.reader !== null) return null;
    const layout = layoutOfHeader(line);
    if ('code' in layout) {
      this.faults.add(this.lineNumber, layout);
      return 'header-in-error';
    }
    this.reader = new CsvWeights(layout, this.lines, this.runs);
    return null;
  }

  private readerOf(kind: WeightsKind): LineReader | null {
    if (kind.kind === 'ndjson') return new NdjsonWeights(this.lines, this.runs);
    return kind.kind === 'table' ? new CsvWeights(kind.layout, this.lines, this.runs) : null;
  }
}

function joined(rest: Uint8Array, chunk: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(rest.length + chunk.length);
  bytes.set(rest);
  bytes.set(chunk, rest.length);
  return bytes;
}

function beginsWithMark(bytes: Uint8Array, start: number): boolean {
  return byteOrderMark.every((byte, place) => bytes[start + place] === byte);
}

function isBlank(bytes: Uint8Array, start: number, end: number): boolean {
  for (let place = start; place < end; place += 1) {
    const byte = bytes[place] as number;
    if (byte !== 0x20 && byte !== 0x09 && byte !== 0x0d) return false;
  }
  return true;
}
