import { isFactClass } from '../../src/platform/database/fact-table.js';
import type { Databases } from '../../src/platform/database/databases.js';

/** The names of all fact tables. */
export function factTables(
  databases: Databases,
): readonly { table: string; isVoidable: boolean; keys: readonly string[] }[] {
  return databases.writer.entityMetadatas
    .filter((metadata) => isFactClass(metadata.target))
    .map((metadata) => ({
      table: metadata.tableName,
      isVoidable: metadata.columns.some((column) => column.databaseName === 'voided_by'),
      keys: metadata.primaryColumns.map((column) => column.databaseName),
    }));
}

/** Puts one made-up row into a table, past every foreign key, so that its triggers can be tried. */
export async function plantRow(databases: Databases, table: string): Promise<void> {
  const metadata = databases.writer.getMetadata(table);
  const columns = metadata.columns.filter((column) => column.databaseName !== 'voided_by');
  const names = columns.map((column) => `"${column.databaseName}"`).join(', ');
  const values = columns.map((column) => {
    if (column.type === 'integer' || column.type === 'bigint') return '1';
    if (column.type === 'boolean') return 'false';
    if (column.type === 'blob') return `x'00'`;
    if (column.type === 'bytea') return `'\\x00'`;
    return `'row-1'`;
  });
  await databases.writer.query(`INSERT INTO "${table}" (${names}) VALUES (${values.join(', ')})`);
}
