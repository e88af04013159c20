import { templateText } from './template-text.js';

/** A statement as SQLite takes it. */
export interface PlainStatement {
  readonly statement: string;
  readonly parameters: readonly unknown[];
}

/**
 * A tagged template as SQLite takes it. Lists stand in `IN (…)` alone, where saying a value twice changes nothing: they are
 * filled up to the next power of two, so that one statement has few lengths and is prepared once for many questions.
 */
export function plainStatement(strings: TemplateStringsArray, values: readonly unknown[]): PlainStatement {
  const parameters: unknown[] = [];
  const one = (value: unknown): string => {
    parameters.push(typeof value === 'boolean' ? Number(value) : value);
    return '?';
  };
  const many = (list: readonly unknown[]): string => {
    const filled = filledUp(list);
    if (!filled.every((item) => typeof item === 'string')) return filled.map(one).join(', ');
    parameters.push(...filled);
    return marks(filled.length);
  };
  return { statement: templateText(strings, values, { one, many }), parameters };
}

const marksByLength = new Map<number, string>();

/** So many question marks; the lengths are few. */
function marks(length: number): string {
  const known = marksByLength.get(length) ?? Array(length).fill('?').join(', ');
  marksByLength.set(length, known);
  return known;
}

function filledUp(list: readonly unknown[]): readonly unknown[] {
  const length = 2 ** Math.ceil(Math.log2(list.length));
  return length === list.length ? list : [...list, ...Array<unknown>(length - list.length).fill(list[0])];
}
