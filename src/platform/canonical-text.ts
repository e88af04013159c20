import { createHash } from 'node:crypto';

/** What can be written as canonical text: no fractions, so that every database and language reads the same number. */
export type Canonical =
  string | number | boolean | null | readonly Canonical[] | { readonly [key: string]: Canonical | undefined };

/**
 * One text for one content: keys sorted by code unit, no spaces, absent (`undefined`) keys left out.
 *
 * @throws {RangeError} for a number that is not a whole number within 2^53
 */
export function canonicalText(content: Canonical): string {
  if (typeof content === 'number' && !Number.isSafeInteger(content)) {
    throw new RangeError(`canonical text holds whole numbers only, not ${content}`);
  }
  if (content === null || typeof content !== 'object') return JSON.stringify(content);
  if (Array.isArray(content)) return `[${content.map((item: Canonical) => canonicalText(item)).join(',')}]`;
  const fields = Object.entries(content as Record<string, Canonical | undefined>)
    .filter((field): field is [string, Canonical] => field[1] !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, value]) => `${JSON.stringify(key)}:${canonicalText(value)}`);
  return `{${fields.join(',')}}`;
}

/** SHA-256 of a text (UTF-8) or of bytes, as 64 lower-case hexadecimal digits. */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}
