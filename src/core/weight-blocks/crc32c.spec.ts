import { describe, expect, it } from '@jest/globals';
import { crc32c } from './crc32c.js';

describe('the checksum CRC-32C', () => {
  // RFC 3720, B.4 (the bytes stand there in the order in which they are sent), and the usual check value.
  it.each([
    ['nine digits', new TextEncoder().encode('123456789'), 0xe3069283],
    ['32 zeros', new Uint8Array(32), 0x8a9136aa],
    ['32 times 255', new Uint8Array(32).fill(255), 0x62a8ab43],
    ['0 to 31', Uint8Array.from({ length: 32 }, (_, place) => place), 0x46dd794e],
    ['31 to 0', Uint8Array.from({ length: 32 }, (_, place) => 31 - place), 0x113fdb5c],
    ['nothing', new Uint8Array(0), 0],
  ])('of %s is the published one', (_, bytes, sum) => {
    expect(crc32c(bytes)).toBe(sum);
  });
});
