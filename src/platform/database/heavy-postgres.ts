import pg from 'pg';
import { Known, type HeavyConnection } from './heavy-ground.js';

/** Statements whose text is kept with its numbered parameters. */
const mostNumbered = 300;

/**
 * A connection to PostgreSQL, made with the first question. One that is lost ends the thread, whose next question then
 * makes a new one.
 */
export function connectToPostgres(url: string): HeavyConnection {
  const client = new pg.Client({ connectionString: url, options: '-c default_transaction_read_only=on' });
  const ready = client.connect();
  const numbered = new Known<string>(mostNumbered);
  return {
    begin: 'BEGIN TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY',
    rows: async (statement, parameters) => {
      await ready;
      const text = numbered.get(statement, () => withNumbers(statement));
      const { rows } = await client.query<object>(text, [...parameters]);
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
