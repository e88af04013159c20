import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type BetterSqlite3 from 'better-sqlite3';
import Database from 'better-sqlite3';
import { DataSource, getMetadataArgsStorage, type EntityTarget, type ObjectLiteral } from 'typeorm';
import type { DatabaseKind } from './database-kind.js';
import type { HeavyGround } from './heavy-ground.js';
import { HouseNaming } from './naming.js';
import { type Migration } from './migration.js';
import { cacheOf } from './sqlite-cache.js';

/** The token under which the databases are given to classes. */
export const DATABASES = Symbol('databases');

export type EntityClass = EntityTarget<ObjectLiteral>;

/** Where the plant's records are kept, and what they are made of. */
export interface DatabaseOptions {
  readonly databaseUrl: string | null;
  readonly dataFolder: string;
  readonly entities: readonly EntityClass[];
  readonly migrations: readonly Migration[];
}

/**
 * The writer and the read-only reader of one plant database, and the lock that keeps a second server away. What is read
 * is asked for by statements alone: the reader knows no entity.
 */
export interface Databases {
  readonly kind: DatabaseKind;
  readonly writer: DataSource;
  readonly reader: DataSource;
  /** The SQLite file; null on PostgreSQL. */
  readonly file: string | null;
  /** Where threads with connections of their own read from. */
  readonly ground: HeavyGround;
  close(): Promise<void>;
}

/** The house has some hundreds of statements; of the driver's own hundred, the oldest goes first, however often it is asked. */
const statementCacheSize = 400;

/** Opens both connections. Migrations have not run yet. */
export async function openDatabases(options: DatabaseOptions): Promise<Databases> {
  return options.databaseUrl === null ? openSqlite(options) : openPostgres(options, options.databaseUrl);
}

async function openSqlite(options: DatabaseOptions): Promise<Databases> {
  nameByteColumns('blob');
  mkdirSync(options.dataFolder, { recursive: true });
  const file = join(options.dataFolder, 'packthread.sqlite');
  const lock = holdLock(join(options.dataFolder, 'packthread.lock'));
  const shared = {
    type: 'better-sqlite3' as const,
    database: file,
    namingStrategy: new HouseNaming(),
    statementCacheSize,
  };
  const writer = new DataSource({
    ...shared,
    entities: [...options.entities] as never[],
    migrations: options.migrations as never[],
    migrationsTableName: 'schema_history',
    prepareDatabase: (database: BetterSqlite3.Database) => {
      database.pragma('journal_mode = WAL');
      database.pragma('synchronous = FULL');
      database.pragma(cacheOf('writer'));
      database.pragma('foreign_keys = ON');
      // Without this, REPLACE deletes the row that stands in its way and no trigger sees it.
      database.pragma('recursive_triggers = ON');
    },
  });
  await writer.initialize();
  const reader = new DataSource({
    ...shared,
    prepareDatabase: (database: BetterSqlite3.Database) => {
      database.pragma('query_only = ON');
      database.pragma(cacheOf('reader'));
    },
  });
  await reader.initialize();
  return {
    kind: 'sqlite',
    writer,
    reader,
    file,
    ground: { file },
    close: async () => {
      await reader.destroy();
      await writer.destroy();
      lock.close();
    },
  };
}

/** A lock that the operating system drops with the process, even when it is killed. */
function holdLock(path: string): BetterSqlite3.Database {
  const lock = new Database(path, { timeout: 2000 });
  try {
    lock.exec('BEGIN EXCLUSIVE');
  } catch {
    lock.close();
    throw new Error('Another Packthread server holds this data folder. Stop it first, or set DATA_FOLDER to another.');
  }
  return lock;
}

async function openPostgres(options: DatabaseOptions, url: string): Promise<Databases> {
  nameByteColumns('bytea');
  const shared = {
    type: 'postgres' as const,
    url,
    namingStrategy: new HouseNaming(),
  };
  const writer = new DataSource({
    ...shared,
    entities: [...options.entities] as never[],
    migrations: options.migrations as never[],
    migrationsTableName: 'schema_history',
    extra: { max: 10 },
  });
  await writer.initialize();
  const reader = new DataSource({
    ...shared,
    extra: { max: 10, options: '-c default_transaction_read_only=on' },
  });
  await reader.initialize();
  return {
    kind: 'postgres',
    writer,
    reader,
    file: null,
    ground: { url },
    close: async () => {
      await reader.destroy();
      await writer.destroy();
    },
  };
}

/** Byte columns are declared once, as `blob`; each database has its own word for them. */
function nameByteColumns(type: 'blob' | 'bytea'): void {
  for (const column of getMetadataArgsStorage().columns) {
    if (column.options.type === 'blob' || column.options.type === 'bytea') column.options.type = type;
  }
}
