/**
 * Where a reader reads from: the open unit of work, the read-only connection, or the heavy reader. Raw SQL comes as a
 * tagged template only, so that each database gets its own parameters; `${() => [a, b]}` spreads a list.
 */
export interface ReadFrom {
  sql<Row>(strings: TemplateStringsArray, ...values: unknown[]): Promise<Row[]>;
}

/**
 * Begins a statement that is asked again and again with the same text, and costs more to plan than to run: PostgreSQL then
 * keeps its plan with the connection. It names its columns, since what a kept plan answers may not change.
 */
export const plannedOnce = (): string => '/* planned once */';

/** What was read in an unchanging view of the database; forgotten with the view. */
const memories = new WeakMap<ReadFrom, Map<string, Promise<unknown>>>();

/** Says that a view does not change while it is read from: what was read in it once stays true in it. */
export function unchanging(from: ReadFrom): ReadFrom {
  memories.set(from, new Map());
  return from;
}

/** Reads once for each key in an unchanging view; everywhere else, where something may change in between, each time. */
export function once<Answer>(from: ReadFrom, key: string, read: () => Promise<Answer>): Promise<Answer> {
  const memory = memories.get(from);
  if (memory === undefined) return read();
  const known = (memory.get(key) as Promise<Answer> | undefined) ?? read();
  memory.set(key, known);
  return known;
}

/** The token under which the read-only connection is given to classes. */
export const READER = Symbol('reader');

/** The only row, or null when there is none. */
export function onlyRow<Row>(rows: readonly Row[]): Row | null {
  return rows[0] ?? null;
}
