/** How what is bound to a statement stands in its text. */
export interface Binding {
  one(value: unknown): string;
  /** A list of one or more. */
  many(list: readonly unknown[]): string;
}

/**
 * The text of a tagged template: values are bound, null stands in the text, and a function gives a part of the text or a
 * list to be bound.
 */
export function templateText(strings: TemplateStringsArray, values: readonly unknown[], binding: Binding): string {
  let text = strings[0] ?? '';
  for (const [place, value] of values.entries()) text += partOf(value, binding) + (strings[place + 1] ?? '');
  return text;
}

function partOf(value: unknown, binding: Binding): string {
  if (value === null) return 'NULL';
  if (typeof value !== 'function') return binding.one(value);
  const given = (value as () => unknown)();
  if (typeof given === 'string') return given;
  if (!Array.isArray(given) || given.length === 0) throw new RangeError('a list in a statement is empty or no list');
  return binding.many(given);
}
