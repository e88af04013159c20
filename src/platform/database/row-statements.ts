import type { DataSource, EntityMetadata, EntityTarget, ObjectLiteral } from 'typeorm';
import { Draft, type Statement } from './statement.js';

/**
 * Statements that write rows of an entity. Every value is bound: TypeORM's own write numbers into the text on SQLite, so
 * that hardly any statement comes twice and each is prepared anew.
 */

/** SQLite takes 32 766 bound values, PostgreSQL 65 535. */
const mostValues = 30_000;

type Column = EntityMetadata['columns'][number];

/** As many statements as so many rows take. */
export function insertStatements<Row extends ObjectLiteral>(
  source: DataSource,
  entity: EntityTarget<Row>,
  rows: readonly object[],
): Statement[] {
  const { tablePath, columns } = source.getMetadata(entity);
  const head = `INSERT INTO ${quoted(tablePath)} (${columns.map(({ databaseName }) => quoted(databaseName)).join(', ')})`;
  const rowsAtOnce = Math.floor(mostValues / columns.length);
  const statements: Statement[] = [];
  for (let from = 0; from < rows.length; from += rowsAtOnce) {
    const draft = new Draft(source);
    const lists = rows
      .slice(from, from + rowsAtOnce)
      .map((row) => `(${columns.map((column) => draft.bind(stored(source, column, row) ?? null)).join(', ')})`);
    statements.push({ text: `${head} VALUES ${lists.join(', ')}`, values: draft.values });
  }
  return statements;
}

/** @throws {RangeError} where nothing is set, or a name is no column */
export function updateStatement<Row extends ObjectLiteral>(
  source: DataSource,
  entity: EntityTarget<Row>,
  { where, set }: { readonly where: object; readonly set: object },
): Statement {
  const metadata = source.getMetadata(entity);
  const draft = new Draft(source);
  const sets = columnsIn(metadata, set).map(
    (column) => `${quoted(column.databaseName)} = ${draft.bind(stored(source, column, set))}`,
  );
  if (sets.length === 0) throw new RangeError('an update that sets nothing');
  const conditions = conditionsOf(source, metadata, where, draft);
  return {
    text: `UPDATE ${quoted(metadata.tablePath)} SET ${sets.join(', ')} WHERE ${conditions}`,
    values: draft.values,
  };
}

export function deleteStatement<Row extends ObjectLiteral>(
  source: DataSource,
  entity: EntityTarget<Row>,
  where: object,
): Statement {
  const metadata = source.getMetadata(entity);
  const draft = new Draft(source);
  const conditions = conditionsOf(source, metadata, where, draft);
  return { text: `DELETE FROM ${quoted(metadata.tablePath)} WHERE ${conditions}`, values: draft.values };
}

/** Null finds what is null; a `where` without any condition is a mistake, never "all rows". */
function conditionsOf(source: DataSource, metadata: EntityMetadata, where: object, draft: Draft): string {
  const columns = columnsIn(metadata, where);
  if (columns.length === 0) throw new RangeError('a where without any condition');
  return columns
    .map((column) => {
      const value = stored(source, column, where);
      return `${quoted(column.databaseName)} ${value === null ? 'IS NULL' : `= ${draft.bind(value)}`}`;
    })
    .join(' AND ');
}

/** The columns of which a row says something. @throws {RangeError} for a name that is no column */
function columnsIn({ columns, tablePath }: EntityMetadata, row: object): Column[] {
  const unknown = Object.keys(row).find((name) => !columns.some((column) => beginOf(column) === name));
  if (unknown !== undefined) throw new RangeError(`${unknown} is no column of ${tablePath}`);
  return columns.filter((column) => column.getEntityValue(row) !== undefined);
}

/** The property of the row in which a column's value stands. */
function beginOf({ propertyPath }: Column): string {
  return propertyPath.split('.', 1)[0] ?? propertyPath;
}

/** A row's value as it is written. */
function stored(source: DataSource, column: Column, row: object): unknown {
  return source.driver.preparePersistentValue(column.getEntityValue(row), column) as unknown;
}

function quoted(name: string): string {
  return `"${name}"`;
}
