import { describe, expect, it } from '@jest/globals';
import { instantOfLocal, localOfInstant, NoSuchTime } from './local-time.js';

describe('the plant’s own clock on a form', () => {
  it.each([
    ['2026-03-12T07:41', '2026-03-12T06:41:00.000Z'],
    ['2026-07-12 07:41', '2026-07-12T05:41:00.000Z'],
    ['2026-12-31T23:59:30', '2026-12-31T22:59:30.000Z'],
  ])('reads %s in Berlin as %s', (text, at) => {
    expect(instantOfLocal(text, 'Europe/Berlin')).toBe(at);
  });

  it('tells the two 02:30s of the night when the clocks go back', () => {
    expect(instantOfLocal('2026-10-25T02:30', 'Europe/Berlin')).toBe('2026-10-25T00:30:00.000Z');
    expect(instantOfLocal('2026-10-25T02:30', 'Europe/Berlin', 'later')).toBe('2026-10-25T01:30:00.000Z');
  });

  it.each(['2026-03-29T02:30', '2026-13-01T00:00', 'tomorrow', ''])('refuses %p, which no clock showed', (text) => {
    expect(() => instantOfLocal(text, 'Europe/Berlin')).toThrow(NoSuchTime);
  });

  it('shows an instant as a field holds it, in zones of half hours too', () => {
    expect(localOfInstant('2026-03-12T06:41:59.999Z', 'Europe/Berlin')).toBe('2026-03-12T07:41');
    expect(localOfInstant('2026-03-12T06:41:00.000Z', 'Asia/Kolkata')).toBe('2026-03-12T12:11');
  });
});
