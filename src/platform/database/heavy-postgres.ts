import pg from 'pg';
import type { HeavyConnection } from './heavy-ground.js';

/** Statements that the server keeps prepared for the connection; what comes after them is planned each time it is asked. */
const mostPrepared = 400;

/** Nothing is written; and what takes milliseconds is not worth compiling, which the server would do for its costliest plans. */
const options = '-c default_transaction_read_only=on -c jit=off';

/**
 * A connection to PostgreSQL, made with the first question. One that is lost ends the thread, whose next question then
 * makes a new one.
 */
export function connectToPostgres(url: string): HeavyConnection {
  const client = new pg.Client({ connectionString: url, options });
  const ready = client.connect();
  const prepared = new Map<string, { readonly name: string; readonly text: string }>();
  const queryOf = (statement: string): { readonly name?: string; readonly text: string } => {
    const known = prepared.get(statement);
    if (known !== undefined) return known;
    const text = withNumbers(statement);
    if (prepared.size >= mostPrepared) return { text };
    const made = { name: `heavy ${prepared.size}`, text };
    prepared.set(statement, made);
    return made;
  };
  return {
    begin: 'BEGIN TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY',
    rows: async (statement, parameters) => {
      await ready;
      const { rows } = await client.query<object>({ ...queryOf(statement), values: [...parameters] });
      return rows;
    },
  };
}

/** No statement of the house holds a question mark of its own. */
function withNumbers(statement: string): string {
  let place = 0;
  return statement.replaceAll('?', () => {
    place += 1;
    return `$${place}`;
  });
}
