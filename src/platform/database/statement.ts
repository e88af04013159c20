import type { DataSource, QueryRunner } from 'typeorm';
import { plannedOnce, type ReadFrom } from './reading.js';

/** A statement and the values that are bound to it. */
export interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** What a statement found, or how many rows it changed. */
export interface Outcome {
  readonly rows: readonly Record<string, unknown>[];
  readonly affected: number;
}

/** The parts of a statement as they come; what is bound gets the placeholder of its database. */
export class Draft {
  readonly values: unknown[] = [];

  constructor(private readonly source: DataSource) {}

  /** The placeholder that stands for a value. */
  bind(value: unknown): string {
    this.values.push(value);
    return this.source.driver.createParameter('value', this.values.length - 1);
  }
}

/** A statement from a tagged template: values are bound, null stands in the text, a function gives a part of it or a list. */
export function statementOf(source: DataSource, strings: TemplateStringsArray, values: readonly unknown[]): Statement {
  const draft = new Draft(source);
  let text = strings[0] ?? '';
  for (const [place, value] of values.entries()) {
    text += partOf(draft, value) + (strings[place + 1] ?? '');
  }
  return { text: text.trim(), values: draft.values };
}

function partOf(draft: Draft, value: unknown): string {
  if (value === null) return 'NULL';
  if (typeof value !== 'function') return draft.bind(value);
  const given = (value as () => unknown)();
  if (typeof given === 'string') return given;
  if (!Array.isArray(given) || given.length === 0) throw new RangeError('a list in a statement that is none, or empty');
  return given.map((one) => draft.bind(one)).join(', ');
}

/** Has a statement done. */
export async function done(runner: QueryRunner, { text, values }: Statement): Promise<Outcome> {
  const isNamed = text.startsWith(plannedOnce()) && runner.dataSource.options.type === 'postgres';
  const asked = isNamed ? (named(text) as unknown as string) : text;
  const { records, affected } = await runner.query(asked, [...values], true);
  return { rows: records as Record<string, unknown>[], affected: affected ?? 0 };
}

/** Each name costs every connection a plan: more are never given out. Our own value, no source. */
const mostNames = 100;
const names = new Map<string, string>();

/** A statement under a name, as the driver of PostgreSQL takes it: prepared once for a connection. */
function named(text: string): { readonly name?: string; readonly text: string } {
  const known = names.get(text);
  if (known !== undefined) return { name: known, text };
  if (names.size >= mostNames) return { text };
  const name = `packthread_${names.size + 1}`;
  names.set(text, name);
  return { name, text };
}

/** Reads from a connection of a data source, each statement on the one that is free. */
export function readingFrom(source: DataSource): ReadFrom {
  return {
    sql: async <Row>(strings: TemplateStringsArray, ...values: unknown[]): Promise<Row[]> => {
      const runner = source.createQueryRunner();
      try {
        return (await done(runner, statementOf(source, strings, values))).rows as Row[];
      } finally {
        await runner.release();
      }
    },
  };
}
