/** Spaces of any width between groups of three digits: `12 480`. */
const spacedGroups = /^-?\d{1,3}(?:\s\d{3})+(?![\d\s])/;

/** A number as it was typed, without the spaces between its thousands and with a plain minus: `12 480,5` is `12480,5`. */
export function withoutGroups(typed: string): string {
  const text = typed.trim().replace(/^\u2212/, '-');
  const groups = spacedGroups.exec(text)?.[0];
  return groups === undefined ? text : groups.replaceAll(/\s/g, '') + text.slice(groups.length);
}

/**
 * Whether a point or a comma stands where a whole number is asked for. It may part thousands or decimals (`1.250`), and
 * nobody can know which: it is refused, never guessed.
 */
export function hasSeparator(typed: unknown): boolean {
  return typeof typed === 'string' && /^[-\u2212]?[\d\s]*\d[.,][\d\s.,]*$/.test(typed.trim());
}
