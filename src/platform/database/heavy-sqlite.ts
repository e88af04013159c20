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
  const known = new Known<Database.Statement>(mostPrepared);
  return {
    begin: 'BEGIN',
    rows: (statement, parameters) => {
      const prepared = known.get(statement, () => database.prepare(statement));
      if (prepared.reader) return prepared.all(...parameters);
      prepared.run(...parameters);
      return [];
    },
  };
}
