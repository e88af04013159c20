import { instantOfText } from './instant-bytes.js';
import {
  fault,
  missingField,
  mostHead,
  mostSequence,
  mostTextLength,
  weightFields,
  type LineFault,
  type SentWeight,
  type WeightField,
} from './sent-weight.js';
import type { TextNumbers } from './text-numbers.js';

const example = '{"sequence":1,"at":"2026-03-12T07:41:03.41Z","netGrams":1003.2}';
const decoder = new TextDecoder('utf-8', { fatal: true });

/** Reads lines that are JSON objects by the parser of the language, so that all JSON is understood and nothing else. */
export class ParsedWeights {
  constructor(
    private readonly lines: TextNumbers,
    private readonly runs: TextNumbers,
  ) {}

  read(line: Uint8Array, into: SentWeight): LineFault | null {
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

function numberOfText(value: unknown, numbers: TextNumbers): number {
  if (typeof value !== 'string' || value.trim() === '' || value.length > mostTextLength) return 0;
  return numbers.ofText(value.trim());
}
