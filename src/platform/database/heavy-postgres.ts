import pg from 'pg';
import { Known, type HeavyConnection } from './heavy-ground.js';
import { PlanNames } from './plan-names.js';

/** Statements whose text is kept with its numbered parameters, and those that the server keeps prepared. */
const [mostNumbered, mostPrepared] = [400, 400];

/** Nothing is written; and what takes milliseconds is not worth compiling, which the server would do for its costliest plans. */
const options = '-c default_transaction_read_only=on -c jit=off';

/**
 * A connection to PostgreSQL, made with the first question. One that is lost ends the thread, whose next question then
 * makes a new one.
 */
export function connectToPostgres(url: string): HeavyConnection {
  const client = new pg.Client({ connectionString: url, options });
  const ready = client.connect();
  const numbered = new Known<string>(mostNumbered);
  const plans = new PlanNames(mostPrepared);
  return {
    begin: 'BEGIN TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY',
    rows: async (statement, parameters) => {
      await ready;
      const text = numbered.get(statement, () => withNumbers(statement));
      const { rows } = await client.query<object>({ ...plans.of(text), values: [...parameters] });
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
