/** Whether these bytes stand at a place. */
export function isAt(bytes: Uint8Array, at: number, text: Uint8Array): boolean {
  const { length } = text;
  for (let place = 0; place < length; place += 1) if (bytes[at + place] !== text[place]) return false;
  return true;
}

/** A space, a tab, or what some put before the end of a line. */
export function isSpace(byte: number): boolean {
  return byte === 0x20 || byte === 0x09 || byte === 0x0d;
}
