import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { instantOfMilliseconds, millisecondsOfInstant } from './instant.js';

describe('an instant', () => {
  it('is UTC text of fixed width', () => {
    expect(instantOfMilliseconds(1500)).toBe('1970-01-01T00:00:01.500Z');
    expect(millisecondsOfInstant('1970-01-01T00:00:01.500Z')).toBe(1500);
  });

  it.each([
    '2026-02-30T00:00:00.000Z',
    '2026-01-01T24:00:00.000Z',
    '2026-01-01T00:00:00Z',
    '2026-01-01T00:00:00.000+01:00',
    '2026-01-01',
    '',
    '1599-12-31T23:59:59.999Z',
  ])('refuses %j, which is not a moment written that way', (text) => {
    expect(() => millisecondsOfInstant(text)).toThrow(RangeError);
  });

  it.each([NaN, Infinity, 0.5, Date.parse('9999-12-31T23:59:59.999Z') + 1])(
    'refuses %d milliseconds',
    (milliseconds) => {
      expect(() => instantOfMilliseconds(milliseconds)).toThrow(RangeError);
    },
  );

  it('comes back from its text, and texts stand in the order of time', () => {
    const milliseconds = fc.integer({ min: Date.parse('1600-01-01'), max: Date.parse('9999-12-31') });
    fc.assert(
      fc.property(milliseconds, milliseconds, (one, other) => {
        expect(millisecondsOfInstant(instantOfMilliseconds(one))).toBe(one);
        expect(instantOfMilliseconds(one) < instantOfMilliseconds(other)).toBe(one < other);
      }),
    );
  });
});
