import type { Databases } from '../platform/database/databases.js';

/** The tables, indexes and triggers of a SQLite database as SQL text, as `docs/schema.sql` shows them. */
export async function schemaText(databases: Databases): Promise<string> {
  const rows = await databases.writer.sql<{ sql: string }[]>`
    SELECT "sql" FROM "sqlite_master"
    WHERE "sql" IS NOT NULL AND "tbl_name" NOT LIKE 'sqlite_%' AND "tbl_name" <> 'schema_history' ORDER BY "rowid"`;
  const head = '-- The schema on SQLite, with its triggers. Written by `npm run schema:write`; a test compares.\n';
  return `${head}\n${rows.map((row) => `${row.sql};`).join('\n\n')}\n`;
}
