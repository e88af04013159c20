/**
 * Where a reader reads from: the open unit of work, the read-only connection, or the heavy reader. Raw SQL comes as a
 * tagged template only, so that each database gets its own parameters; `${() => [a, b]}` spreads a list.
 */
export interface ReadFrom {
  sql<Row>(strings: TemplateStringsArray, ...values: unknown[]): Promise<Row[]>;
}

/** The token under which the read-only connection is given to classes. */
export const READER = Symbol('reader');

/** The only row, or null when there is none. */
export function onlyRow<Row>(rows: readonly Row[]): Row | null {
  return rows[0] ?? null;
}
