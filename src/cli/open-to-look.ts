import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import { DataSource } from 'typeorm';
import type { Config } from '../platform/config.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** A look into the database from beside a running server: it reads only and takes no lock. */
export interface Look {
  readonly from: ReadFrom;
  close(): Promise<void>;
}

export async function openToLook(config: Config): Promise<Look> {
  const file = join(config.dataFolder, 'packthread.sqlite');
  if (config.databaseUrl === null && !existsSync(file)) {
    throw new Error('There is no database in the data folder. Set DATA_FOLDER, or start the server once.');
  }
  const source = new DataSource(
    config.databaseUrl === null
      ? {
          type: 'better-sqlite3',
          database: file,
          prepareDatabase: (database: Database.Database) => {
            database.pragma('query_only = ON');
          },
        }
      : { type: 'postgres', url: config.databaseUrl, extra: { options: '-c default_transaction_read_only=on' } },
  );
  await source.initialize();
  return { from: source.manager, close: () => source.destroy() };
}
