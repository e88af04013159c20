import type { DataSource, EntityMetadata } from 'typeorm';
import { isFactClass } from '../platform/database/fact-table.js';

/**
 * Drafts the steps that make the tables of these entities: portable SQL and the guards of fact tables, as TypeScript
 * text for a file in `migrations/`. For a table that exists already, write a plain ALTER TABLE by hand.
 */
export function draftMigration(dataSource: DataSource, tables: ReadonlySet<string>): string {
  const metadatas = dataSource.options.entities as unknown as readonly (new () => object)[];
  const steps = metadatas
    .map((target) => dataSource.getMetadata(target))
    .filter((metadata) => tables.has(metadata.tableName))
    .flatMap((metadata) => [createTable(metadata), ...createIndexes(metadata), ...guard(metadata)]);
  return steps.map((step) => `  ${step},`).join('\n');
}

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

function createTable(metadata: EntityMetadata): string {
  const columns = metadata.columns.map((column) => {
    const type = column.type === 'blob' || column.type === 'bytea' ? '{bytes}' : String(column.type);
    return `"${column.databaseName}" ${type}${column.isNullable ? '' : ' NOT NULL'}`;
  });
  const uniques = metadata.uniques.map(
    (unique) => `CONSTRAINT "${unique.name}" UNIQUE (${quoted(unique.columns.map((c) => c.databaseName))})`,
  );
  const foreign = metadata.foreignKeys.map(
    (key) =>
      `CONSTRAINT "${key.name}" FOREIGN KEY (${quoted(key.columnNames)}) REFERENCES "${key.referencedTablePath}" (${quoted(key.referencedColumnNames)})`,
  );
  const primary = `CONSTRAINT "pk_${metadata.tableName}" PRIMARY KEY (${quoted(metadata.primaryColumns.map((c) => c.databaseName))})`;
  const lines = [...columns, primary, ...uniques, ...foreign].map((line) => `    ${line}`);
  return `\`CREATE TABLE "${metadata.tableName}" (\n${lines.join(',\n')}\n  )\``;
}

function createIndexes(metadata: EntityMetadata): string[] {
  return metadata.indices.map((index) => {
    const columns = quoted(index.columns.map((column) => column.databaseName));
    const where = index.where === undefined ? '' : ` WHERE ${index.where}`;
    return `\`CREATE ${index.isUnique ? 'UNIQUE ' : ''}INDEX "${index.name}" ON "${metadata.tableName}" (${columns})${where}\``;
  });
}

function guard(metadata: EntityMetadata): string[] {
  if (!isFactClass(metadata.target)) return [];
  const columns = metadata.columns.map((column) => column.databaseName);
  const keys = [
    { columns: metadata.primaryColumns.map((column) => column.databaseName) },
    ...metadata.uniques.map((unique) => ({ columns: unique.columns.map((column) => column.databaseName) })),
    ...metadata.indices
      .filter((index) => index.isUnique)
      .map((index) => ({
        columns: index.columns.map((column) => column.databaseName),
        ...(index.where === undefined ? {} : { where: index.where }),
      })),
  ];
  return [
    `{\n    guard: ${JSON.stringify({ table: metadata.tableName, columns, voidable: columns.includes('voided_by'), keys })},\n  }`,
  ];
}
