/** The polynomial of Castagnoli, bits reversed: RFC 3720, 12.1. */
const polynomial = 0x82f63b78;

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = (rest & 1) === 1 ? (rest >>> 1) ^ polynomial : rest >>> 1;
  return rest;
});

/**
 * The checksum CRC-32C of some bytes: it differs for any two texts of one length that differ in one bit, or in bits
 * that lie within 32 bits of each other.
 *
 * @returns a whole number, 0 to 2^32 − 1; 0 for no bytes
 * @see RFC 3720, 12.1 and B.4
 * @example crc32c(new TextEncoder().encode('123456789')) // 0xe3069283
 */
export function crc32c(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (let place = 0; place < bytes.length; place += 1) {
    sum = (table[(sum ^ (bytes[place] ?? 0)) & 0xff] ?? 0) ^ (sum >>> 8);
  }
  return (sum ^ 0xffffffff) >>> 0;
}
