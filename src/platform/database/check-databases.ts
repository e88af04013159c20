import { isFactClass } from './fact-table.js';
import { guardNames } from './fact-guards.js';
import type { Databases } from './databases.js';

/**
 * What must hold before the first request: durable settings on SQLite, collation C on PostgreSQL, and on both the
 * triggers of every fact table.
 *
 * @throws {Error} naming what does not hold and what to do
 */
export async function checkDatabases(databases: Databases): Promise<void> {
  if (databases.kind === 'sqlite') await checkPragmas(databases);
  else await checkCollation(databases);
  const missing = await missingGuards(databases);
  if (missing.length > 0) {
    const named = missing.slice(0, 5).join(', ');
    throw new Error(`${missing.length} triggers are missing, so facts could be changed: ${named} … Restore a backup.`);
  }
}

async function checkPragmas({ writer }: Databases): Promise<void> {
  const wanted = { journal_mode: 'wal', synchronous: 2, foreign_keys: 1, recursive_triggers: 1 };
  for (const [name, value] of Object.entries(wanted)) {
    const [row] = await writer.query<Record<string, unknown>[]>(`PRAGMA ${name}`);
    if (row?.[name] !== value)
      throw new Error(`SQLite runs with ${name} = ${String(row?.[name])}, not ${String(value)}`);
  }
}

async function checkCollation({ writer }: Databases): Promise<void> {
  const [row] = await writer.sql<{ collation: string }[]>`
    SELECT "datcollate" AS "collation" FROM "pg_database" WHERE "datname" = current_database()`;
  if (row?.collation === 'C' || row?.collation === 'POSIX') return;
  throw new Error(
    `The PostgreSQL database has collation ${row?.collation ?? 'unknown'}; make it with LC_COLLATE 'C' TEMPLATE template0.`,
  );
}

/** The guards that should be there and are not. */
export async function missingGuards(databases: Databases): Promise<readonly string[]> {
  const rows =
    databases.kind === 'sqlite'
      ? await databases.writer.sql<{ name: string }[]>`SELECT "name" FROM "sqlite_master" WHERE "type" = 'trigger'`
      : await databases.writer.sql<
          { name: string }[]
        >`SELECT "tgname" AS "name" FROM "pg_trigger" WHERE NOT "tgisinternal" AND "tgenabled" <> 'D'`;
  const present = new Set(rows.map((row) => row.name));
  return databases.writer.entityMetadatas
    .filter((metadata) => isFactClass(metadata.target))
    .flatMap((metadata) =>
      guardNames(
        databases.kind,
        metadata.tableName,
        metadata.columns.some((c) => c.databaseName === 'voided_by'),
      ),
    )
    .filter((name) => !present.has(name));
}
