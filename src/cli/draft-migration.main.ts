import 'reflect-metadata';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { entities } from '../entities.js';
import { openDatabases } from '../platform/database/databases.js';
import { migrations } from '../../migrations/index.js';
import { draftMigration } from './draft-migration.js';

/** `npm run migration:draft`: prints the steps for every table that the migrations do not make yet. */
const dataFolder = mkdtempSync(join(tmpdir(), 'packthread-draft-'));
const databases = await openDatabases({ databaseUrl: null, dataFolder, entities, migrations });
try {
  await databases.writer.runMigrations();
  const present = await databases.writer.sql<
    { name: string }[]
  >`SELECT "name" FROM "sqlite_master" WHERE "type" = 'table'`;
  const known = new Set(present.map((row) => row.name));
  const missing = databases.writer.entityMetadatas.map((m) => m.tableName).filter((name) => !known.has(name));
  process.stdout.write(`${draftMigration(databases.writer, new Set(missing))}\n`);
} finally {
  await databases.close();
  rmSync(dataFolder, { recursive: true });
}
