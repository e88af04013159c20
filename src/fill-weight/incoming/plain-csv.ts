import { instantOfBytes } from './instant-bytes.js';
import type { CsvColumn, CsvLayout } from './csv-layout.js';
import { mostHead, mostTextLength, type SentWeight, type WeightField } from './sent-weight.js';
import type { TextNumbers } from './text-numbers.js';

const [zero, point, quote, newline, carriageReturn] = [0x30, 0x2e, 0x22, 0x0a, 0x0d];
const needed: readonly WeightField[] = ['sequence', 'at'];
const nets: readonly CsvColumn[] = ['netGrams', 'netMilligrams'];
const mostDigits = 15;
const mostGramDigits = 9;
const mostDecimals = 3;

/**
 * Reads lines of a table as a weigher writes them: every field filled, digits alone, a point before decimals, no spaces and
 * no quotes. Any other line is for the reader that understands them all.
 */
export class PlainCsv {
  /** Where the field ends that was read last. */
  private next = 0;
  /** How long the last time was: the first guess at the next. */
  private instantLength = 0;

  private constructor(
    private readonly separator: number,
    private readonly columns: readonly WeightField[],
    private readonly lines: TextNumbers,
    private readonly runs: TextNumbers,
  ) {}

  /** Null where no line of such a table is plain: its times, marks or decimals are written in a way of their own. */
  static of(layout: CsvLayout, lines: TextNumbers, runs: TextNumbers): PlainCsv | null {
    const { columns, separator, instantOf, decimal, marks } = layout;
    const isUsual = instantOf === instantOfBytes && decimal === undefined && marks === undefined;
    const hasAll = needed.every((field) => columns.includes(field));
    if (!isUsual || !hasAll || columns.filter((column) => nets.includes(column)).length !== 1) return null;
    if (columns.some((column) => column === null || column === 'netKilograms')) return null;
    return new PlainCsv(separator, columns as readonly WeightField[], lines, runs);
  }

  /** Every column of the table is set, so nothing needs to be cleared. */
  read(bytes: Uint8Array, start: number, limit: number, into: SentWeight): number {
    const { columns, separator } = this;
    const last = columns.length - 1;
    this.next = start;
    for (let column = 0; column <= last; column += 1) {
      const from = this.next;
      if (!this.isField(columns[column] as WeightField, bytes, limit, into)) return -1;
      if (this.next === from || this.next >= limit) return -1;
      if (column === last) return this.lineEnd(bytes, limit);
      if (bytes[this.next] !== separator) return -1;
      this.next += 1;
    }
    return -1;
  }

  private lineEnd(bytes: Uint8Array, limit: number): number {
    const end = bytes[this.next] === carriageReturn ? this.next + 1 : this.next;
    return end < limit && bytes[end] === newline ? end : -1;
  }

  /** Whether the field that begins here is plain, and is read. */
  private isField(field: WeightField, bytes: Uint8Array, limit: number, into: SentWeight): boolean {
    switch (field) {
      case 'sequence':
        return (into.sequence = this.whole(bytes, limit)) >= 0;
      case 'at':
        return this.isInstant(bytes, limit, into);
      case 'netGrams':
        return (into.netMilligrams = this.thousandths(bytes, limit)) >= 0;
      case 'netMilligrams':
        return (into.netMilligrams = this.whole(bytes, limit)) >= 0;
      case 'head':
        into.head = this.whole(bytes, limit);
        return into.head >= 0 && into.head <= mostHead;
      case 'rejected':
        return this.isFlag(bytes, into);
      case 'line':
        return (into.line = this.text(bytes, limit, this.lines)) > 0;
      case 'run':
        return (into.run = this.text(bytes, limit, this.runs)) > 0;
    }
  }

  /** Whether one digit stands here that is a mark. */
  private isFlag(bytes: Uint8Array, into: SentWeight): boolean {
    into.rejected = (bytes[this.next] as number) - zero;
    this.next += 1;
    return into.rejected === 0 || into.rejected === 1;
  }

  /** −1: more digits than a whole number surely holds. */
  private whole(bytes: Uint8Array, limit: number): number {
    let value = 0;
    let place = this.next;
    for (; place < limit; place += 1) {
      const digit = (bytes[place] as number) - zero;
      if (digit < 0 || digit > 9) break;
      value = value * 10 + digit;
    }
    const count = place - this.next;
    this.next = place;
    return count <= mostDigits ? value : -1;
  }

  private thousandths(bytes: Uint8Array, limit: number): number {
    const start = this.next;
    const grams = this.whole(bytes, limit);
    if (grams < 0 || this.next - start > mostGramDigits) return -1;
    if (this.next >= limit || bytes[this.next] !== point) return grams * 1000;
    const from = this.next + 1;
    this.next = from;
    const decimals = this.whole(bytes, limit);
    const count = this.next - from;
    if (count === 1) return grams * 1000 + decimals * 100;
    if (count === 2) return grams * 1000 + decimals * 10;
    return count === mostDecimals ? grams * 1000 + decimals : -1;
  }

  private isInstant(bytes: Uint8Array, limit: number, into: SentWeight): boolean {
    const start = this.next;
    const guess = start + this.instantLength;
    const end = guess < limit && bytes[guess] === this.separator ? guess : this.fieldEnd(bytes, limit);
    into.atCentiseconds = end < 0 ? Number.NaN : instantOfBytes(bytes, start, end);
    this.instantLength = end - start;
    this.next = end;
    return !Number.isNaN(into.atCentiseconds);
  }

  /** Nothing is kept of a text whose end has not come. */
  private text(bytes: Uint8Array, limit: number, numbers: TextNumbers): number {
    const start = this.next;
    const guess = start + numbers.lastLength;
    if (guess < limit && this.isFieldEnd(bytes[guess] as number)) {
      const known = numbers.ofLast(bytes, start);
      this.next = guess;
      if (known > 0) return known;
      this.next = start;
    }
    const end = this.fieldEnd(bytes, limit);
    this.next = end;
    return end > start && end - start <= mostTextLength ? numbers.ofBytes(bytes, start, end) : 0;
  }

  private isFieldEnd(byte: number): boolean {
    return byte === this.separator || byte === newline || byte === carriageReturn;
  }

  /** Where a field of letters, digits and signs ends; −1: there are others in it, or its end has not come. */
  private fieldEnd(bytes: Uint8Array, limit: number): number {
    for (let place = this.next; place < limit; place += 1) {
      const byte = bytes[place] as number;
      if (this.isFieldEnd(byte)) return place;
      if (byte <= 0x20 || byte > 0x7e || byte === quote) return -1;
    }
    return -1;
  }
}
