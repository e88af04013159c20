import { randomBytes, randomInt } from 'node:crypto';

/** A token of 256 random bits, for a cookie or a machine. Only its SHA-256 is stored. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** The 32 characters of RFC 4648 base32: upper-case letters and 2 to 7, which every symbology prints. */
const base32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

/** The text of a new badge: 128 random bits, as 26 characters of base32. Only its SHA-256 is stored. */
export function newBadgeText(): string {
  const bits = [...randomBytes(16)].map((byte) => byte.toString(2).padStart(8, '0')).join('');
  const groups = bits.padEnd(130, '0').match(/.{5}/g) ?? [];
  return groups.map((group) => base32.charAt(Number.parseInt(group, 2))).join('');
}

/** A badge as it was scanned or typed: case, spaces and hyphens do not matter. */
export function tidyBadgeText(scanned: string): string {
  return scanned.replaceAll(/[\s-]/g, '').toUpperCase();
}

/** Letters and digits that nobody mistakes for each other when read aloud or copied from a slip. */
const readable = 'abcdefghjkmnpqrstuvwxyz23456789';

/** A one-time password: 16 characters (79 bits) in four groups. */
export function newOneTimePassword(): string {
  const group = (): string => Array.from({ length: 4 }, () => readable.charAt(randomInt(readable.length))).join('');
  return Array.from({ length: 4 }, group).join('-');
}
