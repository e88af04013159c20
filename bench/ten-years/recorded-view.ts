import Database from 'better-sqlite3';
import pg from 'pg';
import { unchanging, type ReadFrom } from '../../src/platform/database/reading.js';
import { plainStatement } from '../../src/platform/database/sqlite-template.js';

/** A statement as its driver takes it. */
export interface BareStatement {
  readonly text: string;
  readonly parameters: readonly unknown[];
}

/** Bare connections to one database: to read through, writing down every statement, and to run them again. */
export interface BareDatabase {
  /** A view that writes down what is asked of it. */
  recorded(statements: BareStatement[]): ReadFrom;
  run(statement: BareStatement): Promise<unknown>;
  close(): Promise<void>;
}

export function openBare(settings: { readonly dataFolder: string; readonly databaseUrl: string | null }): BareDatabase {
  return settings.databaseUrl === null
    ? bareSqlite(`${settings.dataFolder}/packthread.sqlite`)
    : barePostgres(settings.databaseUrl);
}

function bareSqlite(file: string): BareDatabase {
  const database = new Database(file);
  database.pragma('query_only = ON');
  const known = new Map<string, Database.Statement>();
  const run = async ({ text, parameters }: BareStatement): Promise<unknown> => {
    const prepared = known.get(text) ?? database.prepare(text);
    known.set(text, prepared);
    return prepared.all(...parameters);
  };
  return {
    recorded: (statements) =>
      unchanging({
        sql: async <Row>(strings: TemplateStringsArray, ...values: unknown[]) => {
          const { statement, parameters } = plainStatement(strings, values);
          statements.push({ text: statement, parameters });
          return (await run({ text: statement, parameters })) as Row[];
        },
      }),
    run,
    close: async () => {
      database.close();
    },
  };
}

function barePostgres(url: string): BareDatabase {
  const client = new pg.Client({ connectionString: url });
  const ready = client.connect();
  const names = new Map<string, string>();
  const run = async ({ text, parameters }: BareStatement): Promise<unknown[]> => {
    await ready;
    const name = names.get(text) ?? `s${names.size}`;
    names.set(text, name);
    const { rows } = await client.query<object>({ name, text, values: [...parameters] });
    return rows;
  };
  return {
    recorded: (statements) =>
      unchanging({
        sql: async <Row>(strings: TemplateStringsArray, ...values: unknown[]) => {
          const { statement, parameters } = plainStatement(strings, values);
          let place = 0;
          const text = statement.replaceAll('?', () => `$${(place += 1)}`);
          statements.push({ text, parameters });
          return (await run({ text, parameters })) as Row[];
        },
      }),
    run,
    close: () => client.end(),
  };
}
