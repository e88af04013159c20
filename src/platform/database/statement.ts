import type { DataSource, QueryRunner } from 'typeorm';
import { PlanNames } from './plan-names.js';
import { plannedOnce, type ReadFrom } from './reading.js';
import { templateText } from './template-text.js';

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

/** A statement from a tagged template, as `templateText` reads it. */
export function statementOf(source: DataSource, strings: TemplateStringsArray, values: readonly unknown[]): Statement {
  const draft = new Draft(source);
  const one = (value: unknown): string => draft.bind(value);
  const text = templateText(strings, values, { one, many: (list) => list.map(one).join(', ') });
  return { text: text.trim(), values: draft.values };
}

/** Has a statement done. */
export async function done(runner: QueryRunner, { text, values }: Statement): Promise<Outcome> {
  const isNamed = text.startsWith(plannedOnce()) && runner.dataSource.options.type === 'postgres';
  const asked = isNamed ? (plans.of(text) as unknown as string) : text;
  const { records, affected } = await runner.query(asked, [...values], true);
  return { rows: records as Record<string, unknown>[], affected: affected ?? 0 };
}

/** Our own value, no source. */
const plans = new PlanNames(100);

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
