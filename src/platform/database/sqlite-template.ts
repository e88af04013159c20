/** A statement as SQLite takes it. */
export interface PlainStatement {
  readonly statement: string;
  readonly parameters: readonly unknown[];
}

/** A tagged template as SQLite takes it, by the same rules as TypeORM's `sql`: functions spread lists or stand for text. */
export function plainStatement(strings: TemplateStringsArray, values: readonly unknown[]): PlainStatement {
  const parameters: unknown[] = [];
  const place = (value: unknown): string => {
    if (value === null) return 'NULL';
    if (typeof value === 'function') {
      const made: unknown = (value as () => unknown)();
      if (typeof made === 'string') return made;
      if (!Array.isArray(made) || made.length === 0) throw new Error('a list in a query is empty or no list');
      return made.map((item: unknown) => place(item)).join(', ');
    }
    parameters.push(typeof value === 'boolean' ? Number(value) : value);
    return '?';
  };
  const statement = strings.reduce(
    (text, part, index) => text + part + (index < values.length ? place(values[index]) : ''),
    '',
  );
  return { statement, parameters };
}
