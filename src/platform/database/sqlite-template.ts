/** A statement as SQLite takes it. */
export interface PlainStatement {
  readonly statement: string;
  readonly parameters: readonly unknown[];
}

/**
 * A tagged template as SQLite takes it, by the same rules as TypeORM's `sql`: functions spread lists or stand for text.
 * Lists stand in `IN (…)` alone, where saying a value twice changes nothing: they are filled up to the next power of two, so
 * that one statement has few lengths and is prepared once for many questions.
 */
export function plainStatement(strings: TemplateStringsArray, values: readonly unknown[]): PlainStatement {
  const parameters: unknown[] = [];
  const place = (value: unknown): string => {
    if (value === null) return 'NULL';
    if (typeof value === 'function') {
      const made: unknown = (value as () => unknown)();
      if (typeof made === 'string') return made;
      if (!Array.isArray(made) || made.length === 0) throw new Error('a list in a query is empty or no list');
      return placeList(filledUp(made));
    }
    parameters.push(typeof value === 'boolean' ? Number(value) : value);
    return '?';
  };
  const placeList = (list: readonly unknown[]): string => {
    if (!list.every((item) => typeof item === 'string')) return list.map(place).join(', ');
    parameters.push(...list);
    return marks(list.length);
  };
  const statement = strings.reduce(
    (text, part, index) => text + part + (index < values.length ? place(values[index]) : ''),
    '',
  );
  return { statement, parameters };
}

const marksByLength = new Map<number, string>();

/** So many question marks; the lengths are few. */
function marks(length: number): string {
  const known = marksByLength.get(length) ?? Array(length).fill('?').join(', ');
  marksByLength.set(length, known);
  return known;
}

function filledUp(list: readonly unknown[]): readonly unknown[] {
  const length = 2 ** Math.ceil(Math.log2(list.length));
  return length === list.length ? list : [...list, ...Array<unknown>(length - list.length).fill(list[0])];
}
