import { instantOfBytes, instantOfText } from './instant-bytes.js';
import {
  clear,
  fault,
  missingField,
  mostHead,
  mostSequence,
  weightFields,
  type LineFault,
  type LineReader,
  type SentWeight,
  type WeightField,
} from './sent-weight.js';
import type { TextNumbers } from './text-numbers.js';

const [quote, backslash, braceOpen, braceClose, comma, colon] = [0x22, 0x5c, 0x7b, 0x7d, 0x2c, 0x3a];
const [zero, point, space] = [0x30, 0x2e, 0x20];

const asBytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const names = weightFields.map((field) => ({ field, bytes: asBytes(field) }));
const [trueBytes, falseBytes] = [asBytes('true'), asBytes('false')];
const example = '{"sequence":1,"at":"2026-03-12T07:41:03.41Z","netGrams":1003.2}';
const decoder = new TextDecoder('utf-8', { fatal: true });

/**
 * Reads lines that are JSON objects. The usual shape (our own names, plain ASCII, numbers without exponent) is read
 * straight from the bytes; every other line goes through JSON.parse, so that all JSON is understood and nothing else.
 */
export class NdjsonWeights implements LineReader {
  private bytes = new Uint8Array(0);
  private place = 0;
  private end = 0;
  /** Which field followed which on the line before: the first guess at the next. */
  private readonly followers = new Uint8Array(names.length + 1);
  private before = names.length;

  constructor(
    private readonly lines: TextNumbers,
    private readonly runs: TextNumbers,
  ) {}

  read(bytes: Uint8Array, start: number, end: number, into: SentWeight): LineFault | null {
    this.bytes = bytes as Uint8Array<ArrayBuffer>;
    this.place = start;
    this.end = end;
    this.before = names.length;
    clear(into);
    if (this.isPlain(into)) return missingField(into);
    clear(into);
    return this.readByParser(bytes.subarray(start, end), into);
  }

  /** Whether the line was of the usual shape, and is read. */
  private isPlain(into: SentWeight): boolean {
    this.skipSpaces();
    if (this.bytes[this.place] !== braceOpen) return false;
    do {
      this.place += 1;
      this.skipSpaces();
      const field = this.name();
      if (field === null || !this.isValue(field, into)) return false;
      this.skipSpaces();
    } while (this.bytes[this.place] === comma && this.place < this.end);
    if (this.bytes[this.place] !== braceClose) return false;
    this.place += 1;
    this.skipSpaces();
    return this.place === this.end;
  }

  /** The field that is named next, past its colon; null: not of the usual shape. */
  private name(): WeightField | null {
    const { bytes } = this;
    if (bytes[this.place] !== quote) return null;
    const start = this.place + 1;
    const number = this.numberOfName(start);
    const known = names[number];
    if (known === undefined) return null;
    this.followers[this.before] = number;
    this.before = number;
    this.place = start + known.bytes.length + 1;
    this.skipSpaces();
    if (bytes[this.place] !== colon) return null;
    this.place += 1;
    this.skipSpaces();
    return known.field;
  }

  /** Where the name that stands here has its place among the names; their count: it is none of ours. */
  private numberOfName(start: number): number {
    const guess = this.followers[this.before] as number;
    if (this.isName(guess, start)) return guess;
    let number = 0;
    while (number < names.length && !this.isName(number, start)) number += 1;
    return number;
  }

  private isName(number: number, start: number): boolean {
    const name = names[number]?.bytes;
    return name !== undefined && this.bytes[start + name.length] === quote && this.stands(name, start);
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
    const end = this.stringEnd();
    if (end < 0) return false;
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
    if (at + text.length > this.end) return false;
    for (let place = 0; place < text.length; place += 1) {
      if (this.bytes[at + place] !== text[place]) return false;
    }
    return true;
  }

  /** A number ends at a comma, a brace or a space; a dot, an exponent or a letter is for the parser. */
  private isValueEnd(place: number): boolean {
    const byte = place < this.end ? this.bytes[place] : 0;
    return byte === comma || byte === braceClose || isSpace(byte as number);
  }

  private skipSpaces(): void {
    while (this.place < this.end && isSpace(this.bytes[this.place] as number)) this.place += 1;
  }

  private readByParser(line: Uint8Array, into: SentWeight): LineFault | null {
    const said = parsed(line);
    if (said === null) return fault('', 'weight-line-not-json', { example });
    if (typeof said.value !== 'object' || said.value === null || Array.isArray(said.value)) {
      return fault('', 'weight-line-not-json', { example });
    }
    const isTwice = given(said.value, 'netGrams') && given(said.value, 'netMilligrams');
    if (isTwice) return fault('netGrams', 'weight-given-twice');
    for (const [name, value] of Object.entries(said.value)) {
      const wrong = this.take(name, value, into);
      if (wrong !== null) return wrong;
    }
    return missingField(into);
  }

  /** A field as JSON.parse gave it. Null is absent, as everywhere in the house. */
  private take(name: string, value: unknown, into: SentWeight): LineFault | null {
    const field = weightFields.find((known) => known === name);
    if (field === undefined) return fault(name.slice(0, 40), 'field-unknown');
    if (value === null) return null;
    switch (field) {
      case 'sequence':
        into.sequence = wholeUpTo(value, mostSequence);
        return Number.isNaN(into.sequence) ? fault(field, 'field-not-whole', { least: 0, most: mostSequence }) : null;
      case 'head':
        into.head = wholeUpTo(value, mostHead);
        return Number.isNaN(into.head) ? fault(field, 'field-not-whole', { least: 0, most: mostHead }) : null;
      case 'netGrams':
        into.netMilligrams = isFinite(value) ? Math.round(value * 1000) + 0 : Number.NaN;
        return Number.isNaN(into.netMilligrams) ? fault(field, 'weight-not-number') : null;
      case 'netMilligrams':
        into.netMilligrams = isFinite(value) && Number.isInteger(value) ? value + 0 : Number.NaN;
        return Number.isNaN(into.netMilligrams) ? fault(field, 'weight-not-number') : null;
      case 'at':
        into.atCentiseconds = typeof value === 'string' ? instantOfText(value) : Number.NaN;
        return Number.isNaN(into.atCentiseconds) ? fault(field, 'field-not-instant') : null;
      case 'rejected':
        into.rejected = value === true ? 1 : value === false ? 0 : -1;
        return into.rejected < 0 ? fault(field, 'field-not-flag') : null;
      case 'line':
        return (into.line = numberOfText(value, this.lines)) === 0 ? fault(field, 'weight-text-not-taken') : null;
      case 'run':
        return (into.run = numberOfText(value, this.runs)) === 0 ? fault(field, 'weight-text-not-taken') : null;
    }
  }
}

function given(said: object, name: WeightField): boolean {
  return ((said as Record<string, unknown>)[name] ?? null) !== null;
}

function isSpace(byte: number): boolean {
  return byte === 0x20 || byte === 0x09 || byte === 0x0d || byte === 0x0a;
}

function parsed(line: Uint8Array): { readonly value: unknown } | null {
  try {
    return { value: JSON.parse(decoder.decode(line)) as unknown };
  } catch {
    return null;
  }
}

function isFinite(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function wholeUpTo(value: unknown, most: number): number {
  return isFinite(value) && Number.isInteger(value) && value >= 0 && value <= most ? value + 0 : Number.NaN;
}

const mostTextLength = 60;

function numberOfText(value: unknown, numbers: TextNumbers): number {
  if (typeof value !== 'string' || value.trim() === '' || value.length > mostTextLength) return 0;
  return numbers.ofText(value.trim());
}
