import { describe, expect, it } from '@jest/globals';
import { fitsSecret, hashSecret } from './password-hash.js';
import { deviceOffsetMilliseconds } from './device-time.js';
import { ownPath } from './own-path.js';
import { refuseEasyPassword, refuseEasyPin } from './secret-rules.js';
import { newBadgeText, newOneTimePassword, newToken, tidyBadgeText } from './secrets.js';

describe('secrets', () => {
  it('makes badges of 26 characters that every symbol prints, never the same', () => {
    const badges = Array.from({ length: 200 }, newBadgeText);
    expect(new Set(badges).size).toBe(200);
    for (const badge of badges) expect(badge).toMatch(/^[A-Z2-7]{26}$/);
  });

  it('reads a badge in whatever case and grouping it was typed', () => {
    expect(tidyBadgeText(' abcd-EFGH 2345\r\n')).toBe('ABCDEFGH2345');
  });

  it('makes tokens of 256 bits and one-time passwords that are read aloud without a doubt', () => {
    expect(Buffer.from(newToken(), 'base64url')).toHaveLength(32);
    expect(newOneTimePassword()).toMatch(/^[a-hj-km-np-z2-9]{4}(-[a-hj-km-np-z2-9]{4}){3}$/);
    expect(newOneTimePassword()).not.toBe(newOneTimePassword());
  });

  it('fits a password to its hash, however the keyboard composed its letters', async () => {
    const secretHash = await hashSecret('gr\u00fcne Felder');
    expect(await fitsSecret(secretHash, 'gru\u0308ne Felder')).toBe(true);
    expect(await fitsSecret(secretHash, 'grune Felder')).toBe(false);
    expect(await fitsSecret(null, 'gr\u00fcne Felder')).toBe(false);
  });

  it('computes many hashes, though never more than two at a time', async () => {
    const hashes = await Promise.all(Array.from({ length: 6 }, (_, number) => hashSecret(`secret ${number}`)));
    expect(new Set(hashes).size).toBe(6);
    expect(await fitsSecret(hashes[5] ?? null, 'secret 5')).toBe(true);
  });
});

describe('the rules for secrets', () => {
  it.each([
    ['ninechars', 'password-too-short'],
    ['I am JMOOR here', 'password-has-code'],
    ['aaaaaaaaaaaa', 'password-too-easy'],
    ['abababababab', 'password-too-easy'],
    ['abcdefghijkl', 'password-too-easy'],
    ['9876543210', 'password-too-easy'],
  ])('refuses the password “%s”: %s', (password, code) => {
    expect(() => {
      refuseEasyPassword(password, 'jmoor');
    }).toThrow(code);
  });

  it('takes a password of ten characters, and does not mind a code of two letters in it', () => {
    expect(() => {
      refuseEasyPassword('grey heron', 'jm');
      refuseEasyPassword('a jmile off', 'jm');
    }).not.toThrow();
  });

  it.each(['0000', '1234', '87654321', '4711'])('refuses the PIN %s of the person whose code is 4711', (pin) => {
    expect(() => {
      refuseEasyPin(pin, '4711');
    }).toThrow('pin-too-easy');
  });

  it('takes another PIN', () => {
    expect(() => {
      refuseEasyPin('4093', '4711');
    }).not.toThrow();
  });
});

describe('the clock of a device', () => {
  const now = '2026-03-12T06:00:00.000Z';

  it('is ahead by what its header says', () => {
    expect(deviceOffsetMilliseconds('2026-03-12T06:00:01.500Z', now)).toBe(1500);
    expect(deviceOffsetMilliseconds('2026-03-12T06:59:00+01:00', now)).toBe(-60_000);
  });

  it.each([undefined, '', 'noon', '2026-03-12', '2026-13-40T06:00:00Z', ['2026-03-12T06:00:00Z']])(
    'is not known from %p',
    (header) => {
      expect(deviceOffsetMilliseconds(header, now)).toBeNull();
    },
  );
});

describe('where to go after signing in', () => {
  it.each([
    ['/', '/'],
    ['/thread?code=L42', '/thread?code=L42'],
    ['//elsewhere.invalid', '/'],
    ['/\\elsewhere.invalid', '/'],
    ['/\t/elsewhere.invalid', '/'],
    ['/a\n/b', '/'],
    ['https://elsewhere.invalid/', '/'],
    ['javascript:alert(1)', '/'],
    ['/..//elsewhere.invalid', '/'],
    [undefined, '/'],
    [['/a'], '/'],
  ])('reads %p as %s', (asked, path) => {
    expect(ownPath(asked)).toBe(path);
  });
});
