import pg from 'pg';

/** Where a bench writes: a database of its own on a PostgreSQL server, or (null) a file in its folder. */
export interface OwnDatabase {
  readonly url: string | null;
  drop(): Promise<void>;
}

/**
 * Makes a database for this process.
 *
 * @param serverUrl of a database of somebody who may make others; null: SQLite
 */
export async function ownDatabase(serverUrl: string | null, name: string): Promise<OwnDatabase> {
  if (serverUrl === null) return { url: null, drop: () => Promise.resolve() };
  const own = `packthread_bench_${name}_${process.pid}`;
  await atServer(serverUrl, `CREATE DATABASE "${own}" LC_COLLATE 'C' LC_CTYPE 'C' TEMPLATE template0`);
  const url = new URL(serverUrl);
  url.pathname = `/${own}`;
  return { url: url.href, drop: () => atServer(serverUrl, `DROP DATABASE "${own}" WITH (FORCE)`) };
}

/** Rows of one statement on a connection of its own. */
export async function askOnce<Row extends pg.QueryResultRow>(url: string, statement: string): Promise<Row[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Row>(statement)).rows;
  } finally {
    await client.end();
  }
}

async function atServer(url: string, statement: string): Promise<void> {
  await askOnce(url, statement);
}
