import {
  clear,
  fault,
  missingField,
  mostHead,
  mostSequence,
  mostTextLength,
  type LineFault,
  type LineReader,
  type SentWeight,
} from './sent-weight.js';
import type { CsvLayout } from './csv-layout.js';
import { isSpace } from './line-bytes.js';
import { PlainCsv } from './plain-csv.js';
import { unquoted } from './quoted-fields.js';
import type { TextNumbers } from './text-numbers.js';

const [quote, zero, point, comma] = [0x22, 0x30, 0x2e, 0x2c];

/**
 * Reads lines of a table. Decimals have a point; where fields are not parted by commas, a comma is as good. Fields in
 * quotes are understood (RFC 4180), but no line end inside of them.
 */
export class CsvWeights implements LineReader {
  private day = Number.NaN;
  private clock = Number.NaN;
  private readonly plain: PlainCsv | null;

  constructor(
    private readonly layout: CsvLayout,
    private readonly lines: TextNumbers,
    private readonly runs: TextNumbers,
  ) {
    this.plain = PlainCsv.of(layout, lines, runs);
  }

  readPlain(bytes: Uint8Array, start: number, limit: number, into: SentWeight): number {
    return this.plain === null ? -1 : this.plain.read(bytes, start, limit, into);
  }

  read(bytes: Uint8Array, start: number, end: number, into: SentWeight): LineFault | null {
    this.begin(into);
    const { separator, columns } = this.layout;
    let column = 0;
    let place = start;
    while (place <= end) {
      if (bytes[place] === quote && place < end) return this.readQuoted(bytes.subarray(start, end), into);
      let stop = place;
      while (stop < end && bytes[stop] !== separator) stop += 1;
      if (column >= columns.length) return this.fieldCount(bytes, start, end);
      const wrong = this.take(column, bytes, place, stop, into);
      if (wrong !== null) return wrong;
      column += 1;
      place = stop + 1;
    }
    return column === columns.length ? this.finish(into) : this.fieldCount(bytes, start, end);
  }

  private fieldCount(bytes: Uint8Array, start: number, end: number): LineFault {
    let found = 1;
    for (let place = start; place < end; place += 1) if (bytes[place] === this.layout.separator) found += 1;
    return fault('', 'weight-fields-not-counted', { found, expected: this.layout.columns.length });
  }

  /** The line taken apart anew, its quotes taken off, as a line without any. */
  private readQuoted(line: Uint8Array, into: SentWeight): LineFault | null {
    const fields = unquoted(line, String.fromCharCode(this.layout.separator));
    if (fields === null) return fault('', 'weight-quotes-not-closed');
    const { columns } = this.layout;
    if (fields.length !== columns.length) {
      return fault('', 'weight-fields-not-counted', { found: fields.length, expected: columns.length });
    }
    this.begin(into);
    for (const [column, field] of fields.entries()) {
      const bytes = Buffer.from(field);
      const wrong = this.take(column, bytes, 0, bytes.length, into);
      if (wrong !== null) return wrong;
    }
    return this.finish(into);
  }

  private begin(into: SentWeight): void {
    clear(into);
    if (this.layout.countsLines === true) into.sequence = 0;
    this.day = this.clock = Number.NaN;
  }

  private finish(into: SentWeight): LineFault | null {
    const { dayClock } = this.layout;
    if (dayClock !== undefined && !Number.isNaN(this.day + this.clock)) {
      into.atCentiseconds = dayClock.instantOf(this.day + this.clock);
      if (Number.isNaN(into.atCentiseconds)) return fault('at', 'field-not-local-time');
    }
    return missingField(into);
  }

  private take(column: number, bytes: Uint8Array, from: number, to: number, into: SentWeight): LineFault | null {
    const field = this.layout.columns[column] ?? null;
    let [start, end] = [from, to];
    while (start < end && isSpace(bytes[start] as number)) start += 1;
    while (end > start && isSpace(bytes[end - 1] as number)) end -= 1;
    if (field === null || start === end) return null;
    switch (field) {
      case 'netGrams':
        return this.net(bytes, start, end, { into, scale: 3, field });
      case 'netMilligrams':
        return this.net(bytes, start, end, { into, scale: 0, field });
      case 'netKilograms':
        return this.net(bytes, start, end, { into, scale: 6, field });
      case 'sequence':
        into.sequence = wholeOf(bytes, start, end, mostSequence);
        return Number.isNaN(into.sequence) ? fault(field, 'field-not-whole', { least: 0, most: mostSequence }) : null;
      case 'head':
        into.head = wholeOf(bytes, start, end, mostHead);
        return Number.isNaN(into.head) ? fault(field, 'field-not-whole', { least: 0, most: mostHead }) : null;
      case 'at':
        into.atCentiseconds = this.layout.instantOf(bytes, start, end);
        return Number.isNaN(into.atCentiseconds) ? fault(field, this.timeFault) : null;
      case 'day':
        this.day = this.layout.dayClock?.dayOf(bytes, start, end) ?? Number.NaN;
        return Number.isNaN(this.day) ? fault('at', 'weight-time-not-read') : null;
      case 'clock':
        this.clock = this.layout.dayClock?.clockOf(bytes, start, end) ?? Number.NaN;
        return Number.isNaN(this.clock) ? fault('at', 'weight-time-not-read') : null;
      case 'rejected':
        into.rejected = this.layout.marks?.(textOf(bytes, start, end)) ?? flagOf(bytes, start, end);
        return into.rejected < 0 ? fault(field, 'field-not-flag') : null;
      case 'line':
        return (into.line = numberOfText(bytes, start, end, this.lines)) === 0
          ? fault(field, 'weight-text-not-taken')
          : null;
      case 'run':
        return (into.run = numberOfText(bytes, start, end, this.runs)) === 0
          ? fault(field, 'weight-text-not-taken')
          : null;
    }
  }

  private get timeFault(): string {
    return this.layout.decimal === undefined ? 'field-not-instant' : 'weight-time-not-read';
  }

  private net(
    bytes: Uint8Array,
    start: number,
    end: number,
    { into, scale, field }: { readonly into: SentWeight; readonly scale: number; readonly field: string },
  ): LineFault | null {
    if (!Number.isNaN(into.netMilligrams)) return fault(field, 'weight-given-twice');
    const { decimal, separator } = this.layout;
    const mayHaveComma = decimal === undefined ? separator !== comma : decimal === 'comma';
    into.netMilligrams = decimalOf(bytes, start, end, { scale, mayHaveComma, mayHavePoint: decimal !== 'comma' });
    return Number.isNaN(into.netMilligrams) ? fault(field, 'weight-not-number') : null;
  }
}

/**
 * A decimal, `scale` places to the right of its point counted whole; what is finer is rounded, halves away from zero.
 * NaN for anything but digits with one point (or comma, where it may have one) and a sign before them.
 */
export function decimalOf(
  bytes: Uint8Array,
  start: number,
  end: number,
  { scale, mayHaveComma, mayHavePoint }: DecimalMarks,
): number {
  const sign = bytes[start] === 0x2d ? -1 : 1;
  const first = start + (bytes[start] === 0x2d || bytes[start] === 0x2b ? 1 : 0);
  let [value, decimals, digits, roundsUp] = [0, -1, 0, false];
  for (let place = first; place < end; place += 1) {
    const byte = bytes[place] as number;
    if ((byte === point && mayHavePoint) || (byte === comma && mayHaveComma)) {
      if (decimals >= 0) return Number.NaN;
      decimals = 0;
    } else if (byte < zero || byte > zero + 9) {
      return Number.NaN;
    } else {
      digits += 1;
      if (decimals < scale) value = value * 10 + byte - zero;
      else if (decimals === scale) roundsUp = byte - zero >= 5;
      if (decimals >= 0) decimals += 1;
    }
  }
  if (digits === 0 || digits > 20 || decimals === 0) return Number.NaN;
  const missing = scale - Math.min(scale, Math.max(0, decimals));
  return sign * (value * 10 ** missing + (roundsUp ? 1 : 0)) + 0;
}

interface DecimalMarks {
  readonly scale: number;
  readonly mayHaveComma: boolean;
  readonly mayHavePoint: boolean;
}

/** A mark is a short word; bytes beyond ASCII are told apart, whatever they mean. */
function textOf(bytes: Uint8Array, start: number, end: number): string {
  return Buffer.from(bytes.subarray(start, Math.min(end, start + 64))).toString('latin1');
}

function wholeOf(bytes: Uint8Array, start: number, end: number, most: number): number {
  if (end - start > 16) return Number.NaN;
  let value = 0;
  for (let place = start; place < end; place += 1) {
    const digit = (bytes[place] as number) - zero;
    if (digit < 0 || digit > 9) return Number.NaN;
    value = value * 10 + digit;
  }
  return value <= most ? value : Number.NaN;
}

const yes: ReadonlySet<string> = new Set(['1', 'true', 'yes']);
const no: ReadonlySet<string> = new Set(['0', 'false', 'no']);

function flagOf(bytes: Uint8Array, start: number, end: number): number {
  if (end - start === 1 && (bytes[start] === zero || bytes[start] === zero + 1)) return bytes[start] - zero;
  if (end - start > 5) return -1;
  const text = String.fromCharCode(...bytes.subarray(start, end)).toLowerCase();
  return yes.has(text) ? 1 : no.has(text) ? 0 : -1;
}

function numberOfText(bytes: Uint8Array, start: number, end: number, numbers: TextNumbers): number {
  if (end - start > mostTextLength) return 0;
  for (let place = start; place < end; place += 1) {
    const byte = bytes[place] as number;
    if (byte < 0x20 || byte > 0x7e) return 0;
  }
  return numbers.ofBytes(bytes, start, end);
}
