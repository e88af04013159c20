import Database from 'better-sqlite3';
import { Known, type HeavyConnection } from './heavy-ground.js';
import { cacheOf } from './sqlite-cache.js';

/** Statements are kept prepared; a list in a statement makes another one for each length. */
const mostPrepared = 300;

/** A connection to a SQLite file. */
export function connectToSqlite(file: string): HeavyConnection {
  const database = new Database(file, { fileMustExist: true });
  database.pragma('query_only = ON');
  database.pragma(cacheOf('heavy'));
  const known = new Known<Prepared>(mostPrepared);
  return {
    begin: 'BEGIN',
    rows: (text, parameters) => {
      const { statement, names } = known.get(text, () => prepare(database, text));
      if (names !== null) return statement.all(...parameters).map((values) => rowOf(names, values));
      statement.run(...parameters);
      return [];
    },
  };
}

interface Prepared {
  readonly statement: Database.Statement<unknown[], readonly unknown[]>;
  /** Of its columns; null where it reads nothing. */
  readonly names: readonly string[] | null;
}

function prepare(database: Database.Database, text: string): Prepared {
  const statement = database.prepare<unknown[], readonly unknown[]>(text);
  if (!statement.reader) return { statement, names: null };
  return { statement: statement.raw(), names: statement.columns().map(({ name }) => name) };
}

/** The driver's lists, put together here, take two thirds of the time of the driver's objects. */
function rowOf(names: readonly string[], values: readonly unknown[]): object {
  const row: Record<string, unknown> = {};
  for (let place = 0; place < names.length; place += 1) row[names[place] ?? ''] = values[place];
  return row;
}
