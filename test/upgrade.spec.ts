import { describe, expect, it } from '@jest/globals';
import { ground } from '../migrations/0001-ground.js';
import { migrations } from '../migrations/index.js';
import { entities } from '../src/entities.js';
import { readConfig, type Config } from '../src/platform/config.js';
import { missingGuards } from '../src/platform/database/check-databases.js';
import { openDatabases, type Databases } from '../src/platform/database/databases.js';
import { migrate } from '../src/platform/database/migrate.js';
import type { Migration } from '../src/platform/database/migration.js';
import { barePlace } from './support/house.js';

/** What each earlier release had for migrations. */
const releases: readonly (readonly [string, readonly Migration[]])[] = [['0.1.0', [ground]]];

interface Column {
  readonly name: string;
  readonly type: string;
}

async function tablesOf({ kind, writer }: Databases): Promise<readonly string[]> {
  const rows: { name: string }[] = await writer.query(
    kind === 'sqlite'
      ? `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'schema_history'`
      : `SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_name <> 'schema_history'`,
  );
  return rows.map(({ name }) => name).sort();
}

async function columnsOf({ kind, writer }: Databases, table: string): Promise<readonly Column[]> {
  if (kind === 'sqlite') return writer.query(`PRAGMA table_info("${table}")`);
  return writer.query(
    `SELECT column_name AS name, data_type AS type FROM information_schema.columns WHERE table_name = '${table}' ORDER BY ordinal_position`,
  );
}

function madeUp({ name, type }: Column): string {
  if (name === 'voided_by') return 'NULL';
  if (/int/i.test(type)) return '1';
  if (/bool/i.test(type)) return 'false';
  if (/blob/i.test(type)) return `x'00'`;
  if (/bytea/i.test(type)) return `'\\x00'`;
  return `'row-1'`;
}

/** A row in every table, past foreign keys. */
async function fill(databases: Databases): Promise<Map<string, string>> {
  const runner = databases.writer.createQueryRunner();
  await runner.query(
    databases.kind === 'sqlite' ? 'PRAGMA foreign_keys = OFF' : 'SET session_replication_role = replica',
  );
  for (const table of await tablesOf(databases)) {
    const columns = await columnsOf(databases, table);
    const names = columns.map(({ name }) => `"${name}"`).join(', ');
    await runner.query(`INSERT INTO "${table}" (${names}) VALUES (${columns.map(madeUp).join(', ')})`);
  }
  await runner.release();
  return contentOf(databases, await shapeOf(databases));
}

type Shape = ReadonlyMap<string, readonly string[]>;

async function shapeOf(databases: Databases): Promise<Shape> {
  const shape = new Map<string, readonly string[]>();
  for (const table of await tablesOf(databases)) {
    shape.set(
      table,
      (await columnsOf(databases, table)).map(({ name }) => name),
    );
  }
  return shape;
}

async function contentOf(databases: Databases, shape: Shape): Promise<Map<string, string>> {
  const content = new Map<string, string>();
  for (const [table, columns] of shape) {
    const names = columns.map((name) => `"${name}"`).join(', ');
    content.set(table, JSON.stringify(await databases.writer.query(`SELECT ${names} FROM "${table}"`)));
  }
  return content;
}

describe.each(releases)('a filled database of release %s', (_, then) => {
  it('is brought up to date with every row as it was, every guard in place and nothing left to change', async () => {
    const place = await barePlace();
    const settings = place.databaseUrl === null ? {} : { DATABASE_URL: place.databaseUrl };
    const config: Config = readConfig({ DATA_FOLDER: place.dataFolder, LOG_LEVEL: 'silent', ...settings });
    try {
      const old = await openDatabases({ ...config, entities: [], migrations: then });
      await migrate(old);
      const shape = await shapeOf(old);
      const before = await fill(old);
      expect(before.size).toBeGreaterThan(80);
      await old.close();

      const now = await openDatabases({ ...config, entities, migrations });
      await migrate(now);
      expect(await contentOf(now, shape)).toEqual(before);
      expect(await missingGuards(now)).toEqual([]);
      const left = await now.writer.driver.createSchemaBuilder().log();
      expect(left.upQueries.map(({ query }) => query)).toEqual([]);
      await now.close();
    } finally {
      await place.remove();
    }
  });
});
