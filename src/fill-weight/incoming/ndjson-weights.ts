import { instantOfBytes } from './instant-bytes.js';
import {
  clear,
  missingField,
  mostHead,
  mostTextLength,
  weightFields,
  type LineFault,
  type LineReader,
  type SentWeight,
  type WeightField,
} from './sent-weight.js';
import { isAt, isSpace } from './line-bytes.js';
import { shapeOf, type LineShape, type ValuePlace } from './line-shape.js';
import { ParsedWeights } from './parsed-weights.js';
import type { TextNumbers } from './text-numbers.js';

const [quote, backslash, braceOpen, braceClose, comma, colon] = [0x22, 0x5c, 0x7b, 0x7d, 0x2c, 0x3a];
const [zero, point, space, newline] = [0x30, 0x2e, 0x20, 0x0a];

const asBytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const names = weightFields.map((field) => ({ field, bytes: asBytes(field) }));
const [trueBytes, falseBytes] = [asBytes('true'), asBytes('false')];
/** Whoever writes lines of more shapes mixes them. Our own value, no source. */
const mostShapes = 100;

/**
 * Reads lines that are JSON objects. The usual shape (our own names, plain ASCII, numbers without exponent) is read
 * straight from the bytes; every other line goes through JSON.parse, so that all JSON is understood and nothing else.
 */
export class NdjsonWeights implements LineReader {
  private bytes = new Uint8Array(0);
  private place = 0;
  private end = 0;
  /** Where the values of the line stand. */
  private values: ValuePlace[] = [];
  /** Of the last line that was of another shape than the one before: the first guess at the next. */
  private shape: LineShape | null = null;
  private shapeCount = 0;
  /** How long the last time was, its quotes aside: the first guess at the next. */
  private instantLength = 0;
  private readonly parser: ParsedWeights;

  constructor(
    private readonly lines: TextNumbers,
    private readonly runs: TextNumbers,
  ) {
    this.parser = new ParsedWeights(lines, runs);
  }

  read(bytes: Uint8Array, start: number, end: number, into: SentWeight): LineFault | null {
    this.bytes = bytes as Uint8Array<ArrayBuffer>;
    this.place = start;
    this.end = end;
    clear(into);
    if (this.isPlain(into) && this.place === end) return missingField(into);
    clear(into);
    return this.parser.read(bytes.subarray(start, end), into);
  }

  readPlain(bytes: Uint8Array, start: number, limit: number, into: SentWeight): number {
    this.bytes = bytes as Uint8Array<ArrayBuffer>;
    this.place = start;
    this.end = limit;
    clear(into);
    if (this.shape !== null && this.isOfShape(this.shape, into)) return this.place - 1;
    this.place = start;
    clear(into);
    const isRead = this.isPlain(into) && this.place < limit && bytes[this.place] === newline;
    if (!isRead || missingField(into) !== null) return -1;
    this.keepShape(start);
    return this.place;
  }

  /** Whether a line of that shape stands here, and is read with its newline. */
  private isOfShape({ fields, before, after }: LineShape, into: SentWeight): boolean {
    for (let slot = 0; slot < fields.length; slot += 1) {
      const text = before[slot] as Uint8Array;
      if (!this.stands(text, this.place)) return false;
      this.place += text.length;
      if (!this.isValue(fields[slot] as WeightField, into)) return false;
    }
    if (!this.stands(after, this.place)) return false;
    this.place += after.length;
    return true;
  }

  /** Lines of many shapes are read without. */
  private keepShape(start: number): void {
    if (this.shapeCount >= mostShapes) return;
    this.shapeCount += 1;
    this.shape = shapeOf(this.bytes, { start, end: this.place, values: this.values });
  }

  /** Whether a line of the usual shape stands here, and is read; what follows it is to be looked at. */
  private isPlain(into: SentWeight): boolean {
    this.skipSpaces();
    if (this.bytes[this.place] !== braceOpen) return false;
    this.values = [];
    do {
      this.place += 1;
      this.skipSpaces();
      const field = this.name();
      const from = this.place;
      if (field === null || !this.isValue(field, into)) return false;
      this.values.push({ field, from, to: this.place });
      this.skipSpaces();
    } while (this.bytes[this.place] === comma && this.place < this.end);
    if (this.bytes[this.place] !== braceClose) return false;
    this.place += 1;
    this.skipSpaces();
    return true;
  }

  /** The field that is named next, past its colon; null: not of the usual shape. */
  private name(): WeightField | null {
    const { bytes } = this;
    if (bytes[this.place] !== quote) return null;
    const start = this.place + 1;
    const known = names.find(({ bytes: name }) => bytes[start + name.length] === quote && this.stands(name, start));
    if (known === undefined) return null;
    this.place = start + known.bytes.length + 1;
    this.skipSpaces();
    if (bytes[this.place] !== colon) return null;
    this.place += 1;
    this.skipSpaces();
    return known.field;
  }

  private isValue(field: WeightField, into: SentWeight): boolean {
    switch (field) {
      case 'sequence':
        return (into.sequence = this.whole()) >= 0;
      case 'head':
        into.head = this.whole();
        return into.head >= 0 && into.head <= mostHead;
      case 'netGrams':
        return Number.isNaN(into.netMilligrams) && (into.netMilligrams = this.thousandths()) >= 0;
      case 'netMilligrams':
        return Number.isNaN(into.netMilligrams) && (into.netMilligrams = this.whole()) >= 0;
      case 'at':
        return this.isInstant(into);
      case 'rejected':
        return (into.rejected = this.flag()) >= 0;
      case 'line':
        return (into.line = this.text(this.lines)) > 0;
      case 'run':
        return (into.run = this.text(this.runs)) > 0;
    }
  }

  /** A whole number of up to 15 digits; −1: something else. */
  private whole(): number {
    const { bytes, place: start } = this;
    const limit = Math.min(this.end, start + 16);
    let value = 0;
    let place = start;
    for (; place < limit; place += 1) {
      const digit = (bytes[place] as number) - zero;
      if (digit < 0 || digit > 9) break;
      value = value * 10 + digit;
    }
    const count = place - start;
    if (count === 0 || count > 15 || (count > 1 && bytes[start] === zero) || !this.isValueEnd(place)) return -1;
    this.place = place;
    return value;
  }

  /** A number with up to three decimals, in thousandths; −1: something else. */
  private thousandths(): number {
    const { bytes, place: start } = this;
    const limit = Math.min(this.end, start + 14);
    let value = 0;
    let pointAt = -1;
    let place = start;
    for (; place < limit; place += 1) {
      const byte = bytes[place] as number;
      if (byte === point && pointAt < 0) pointAt = place;
      else if (byte < zero || byte > zero + 9) break;
      else value = value * 10 + byte - zero;
    }
    const whole = (pointAt < 0 ? place : pointAt) - start;
    const decimals = pointAt < 0 ? 0 : place - pointAt - 1;
    if (whole === 0 || whole > 9 || (whole > 1 && bytes[start] === zero) || !this.isValueEnd(place)) return -1;
    if ((pointAt >= 0 && decimals === 0) || decimals > 3) return -1;
    this.place = place;
    return decimals === 3 ? value : decimals === 2 ? value * 10 : decimals === 1 ? value * 100 : value * 1000;
  }

  private isInstant(into: SentWeight): boolean {
    const start = this.place + 1;
    const guess = start + this.instantLength;
    const isAsLong = guess < this.end && this.bytes[guess] === quote && this.bytes[start - 1] === quote;
    const end = isAsLong ? guess : this.stringEnd();
    if (end < 0) return false;
    this.instantLength = end - start;
    into.atCentiseconds = instantOfBytes(this.bytes, start, end);
    this.place = end + 1;
    return !Number.isNaN(into.atCentiseconds);
  }

  private flag(): number {
    const value = this.stands(trueBytes, this.place) ? 1 : this.stands(falseBytes, this.place) ? 0 : -1;
    if (value >= 0) this.place += value === 1 ? trueBytes.length : falseBytes.length;
    return value;
  }

  private text(numbers: TextNumbers): number {
    const start = this.place + 1;
    const guess = start + numbers.lastLength;
    if (guess < this.end && this.bytes[guess] === quote && this.bytes[start - 1] === quote) {
      const known = numbers.ofLast(this.bytes, start);
      if (known > 0) {
        this.place = guess + 1;
        return known;
      }
    }
    const end = this.stringEnd();
    const isTidy = this.bytes[start] !== space && this.bytes[end - 1] !== space;
    if (end <= start || end - start > mostTextLength || !isTidy) return 0;
    this.place = end + 1;
    return numbers.ofBytes(this.bytes, start, end);
  }

  /** Where the string that begins here ends, when it is plain ASCII without an escape; −1: something else. */
  private stringEnd(): number {
    const { bytes, end } = this;
    if (bytes[this.place] !== quote) return -1;
    for (let place = this.place + 1; place < end; place += 1) {
      const byte = bytes[place] as number;
      if (byte === quote) return place;
      if (byte === backslash || byte < 0x20 || byte > 0x7e) return -1;
    }
    return -1;
  }

  private stands(text: Uint8Array, at: number): boolean {
    return at + text.length <= this.end && isAt(this.bytes, at, text);
  }

  /** A number ends at a comma, a brace or a space; a dot, an exponent or a letter is for the parser. */
  private isValueEnd(place: number): boolean {
    const byte = place < this.end ? this.bytes[place] : 0;
    return byte === comma || byte === braceClose || isSpace(byte as number);
  }

  private skipSpaces(): void {
    while (this.place < this.end && isSpace(this.bytes[this.place] as number)) this.place += 1;
  }
}
