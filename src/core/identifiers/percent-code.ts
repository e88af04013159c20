/**
 * Undoes the percent coding of a part of a web address, byte by byte; in a query a plus sign is a space. What is no proper
 * percent sequence stays as it stands.
 *
 * @example
 * decodePercent('A%2F61', 'path') // 'A/61'
 */
export function decodePercent(coded: string, part: 'path' | 'query'): string {
  const text = part === 'query' ? coded.replaceAll('+', ' ') : coded;
  return text.replace(/%([0-9A-Fa-f]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
}

/**
 * Percent-codes a value for the path or the query of a Digital Link: everything but A-Z, a-z, 0-9, `-`, `.`, `_` and `~`.
 *
 * @param value characters of one byte each, as character set 82 has them.
 * @throws RangeError where a character needs more than one byte.
 * @example
 * encodePercent('A/61') // 'A%2F61'
 */
export function encodePercent(value: string): string {
  return value.replace(/[^A-Za-z0-9\-._~]/g, (character) => {
    const code = character.charCodeAt(0);
    if (code > 0xff) throw new RangeError(`no single byte: "${character}"`);
    return `%${code.toString(16).toUpperCase().padStart(2, '0')}`;
  });
}
