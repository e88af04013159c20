import Database from 'better-sqlite3';
import { Client } from 'pg';
import type { DataSource } from 'typeorm';

/** Where rows of history go: many at once, past the one door, the triggers and the foreign keys. For this bench alone. */
export interface RowSink {
  /** A row of an entity, by the names of its properties. */
  put<Row extends object>(entity: new () => Row, row: Row): void;
  /** Writes what was put, in one transaction. */
  endChunk(): Promise<void>;
  /** Puts guards back and closes. */
  finish(): Promise<void>;
}

type Value = string | number | boolean | null;

interface Table {
  readonly name: string;
  readonly columns: readonly string[];
  readonly properties: readonly string[];
}

/** The rows of a chunk by their table, in the order in which tables were met. */
class Waiting {
  private readonly tables = new Map<new () => object, { readonly table: Table; readonly rows: Value[][] }>();

  constructor(private readonly source: DataSource) {}

  add(entity: new () => object, row: object): void {
    let own = this.tables.get(entity);
    if (own === undefined) {
      own = { table: tableOf(this.source, entity), rows: [] };
      this.tables.set(entity, own);
    }
    const values = row as Readonly<Record<string, Value>>;
    own.rows.push(own.table.properties.map((property) => values[property] ?? null));
  }

  *take(): Generator<{ readonly table: Table; readonly rows: readonly Value[][] }> {
    for (const { table, rows } of this.tables.values()) {
      if (rows.length > 0) yield { table, rows };
      rows.length = 0;
    }
  }
}

function tableOf(source: DataSource, entity: new () => object): Table {
  const { tableName, columns } = source.getMetadata(entity);
  return {
    name: tableName,
    columns: columns.map(({ databaseName }) => databaseName),
    properties: columns.map(({ propertyName }) => propertyName),
  };
}

/** Prepared statements, one transaction a chunk; nothing is safe on disk before the end. */
export function sqliteSink(file: string, source: DataSource): RowSink {
  const database = new Database(file);
  for (const pragma of ['synchronous = OFF', 'cache_size = -200000', 'foreign_keys = OFF']) database.pragma(pragma);
  database.pragma('journal_mode = MEMORY');
  const guards = database
    .prepare<[], { name: string; sql: string }>(`SELECT "name", "sql" FROM sqlite_master WHERE "type" = 'trigger'`)
    .all();
  for (const { name } of guards) database.exec(`DROP TRIGGER "${name}"`);
  const waiting = new Waiting(source);
  const inserts = new Map<string, Database.Statement>();
  const insertOf = ({ name, columns }: Table): Database.Statement => {
    const known =
      inserts.get(name) ??
      database.prepare(
        `INSERT INTO "${name}" (${columns.map((c) => `"${c}"`).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
      );
    inserts.set(name, known);
    return known;
  };
  return {
    put: (entity, row) => {
      waiting.add(entity, row);
    },
    endChunk: async () => {
      database.exec('BEGIN');
      for (const { table, rows } of waiting.take()) {
        const insert = insertOf(table);
        for (const row of rows) insert.run(row.map((value) => (typeof value === 'boolean' ? Number(value) : value)));
      }
      database.exec('COMMIT');
    },
    finish: async () => {
      for (const { sql } of guards) database.exec(sql);
      database.pragma('journal_mode = WAL');
      database.close();
    },
  };
}

const rowsAtOnce = 2000;

/**
 * Arrays of a column each, unnested into rows; triggers and foreign keys sleep in this session. Indexes that guard nothing
 * are made at the end; while the database writes a chunk, the next is thought of.
 */
export async function postgresSink(url: string, source: DataSource): Promise<RowSink> {
  const client = new Client({ connectionString: url });
  await client.connect();
  await client.query('SET session_replication_role = replica');
  await client.query('SET synchronous_commit = off');
  await client.query(`SET maintenance_work_mem = '512MB'`);
  const types = await columnTypes(client);
  const indexes = await dropIndexes(client);
  const waiting = new Waiting(source);
  let written: Promise<void> = Promise.resolve();
  return {
    put: (entity, row) => {
      waiting.add(entity, row);
    },
    endChunk: async () => {
      await written;
      const chunk = Array.from(waiting.take(), ({ table, rows }) => ({ table, rows: [...rows] }));
      written = writeChunk(client, types, chunk);
      // It is told at the next chunk.
      written.catch(() => undefined);
    },
    finish: async () => {
      await written;
      for (const index of indexes) await client.query(index);
      await client.query('VACUUM ANALYZE');
      await client.end();
    },
  };
}

interface Chunk {
  readonly table: Table;
  readonly rows: readonly Value[][];
}

async function writeChunk(client: Client, types: ReadonlyMap<string, string>, chunk: readonly Chunk[]): Promise<void> {
  await client.query('BEGIN');
  for (const { table, rows } of chunk) {
    const arrays = table.columns.map((column, at) => `$${at + 1}::${types.get(`${table.name}.${column}`) ?? ''}[]`);
    const text = `INSERT INTO "${table.name}" (${table.columns.map((c) => `"${c}"`).join(', ')}) SELECT * FROM unnest(${arrays.join(', ')})`;
    for (let at = 0; at < rows.length; at += rowsAtOnce) {
      const some = rows.slice(at, at + rowsAtOnce);
      const values = table.columns.map((_, column) => some.map((row) => row[column]));
      await client.query({ name: table.name, text, values });
    }
  }
  await client.query('COMMIT');
}

/** Takes away the indexes that no constraint stands on; answers what makes them again. */
async function dropIndexes(client: Client): Promise<readonly string[]> {
  const { rows } = await client.query<{ name: string; made: string }>(
    `SELECT i."indexname" AS "name", i."indexdef" AS "made" FROM pg_indexes i WHERE i."schemaname" = 'public'
       AND i."indexdef" NOT LIKE 'CREATE UNIQUE%'
       AND NOT EXISTS (SELECT 1 FROM pg_constraint c WHERE c."conname" = i."indexname")
     ORDER BY i."indexname"`,
  );
  for (const { name } of rows) await client.query(`DROP INDEX "${name}"`);
  return rows.map(({ made }) => made);
}

async function columnTypes(client: Client): Promise<ReadonlyMap<string, string>> {
  const { rows } = await client.query<{ place: string; type: string }>(
    `SELECT table_name || '.' || column_name AS "place", data_type AS "type" FROM information_schema.columns
     WHERE table_schema = 'public'`,
  );
  return new Map(rows.map(({ place, type }) => [place, type]));
}
