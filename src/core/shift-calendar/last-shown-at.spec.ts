import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { instantOfMilliseconds, millisecondsOfInstant } from './instant.js';
import { lastShownAt } from './last-shown-at.js';
import { localMomentAt } from './local-time.js';

describe('a time written without its day', () => {
  it('is the evening before, when the clock has not come to it today', () => {
    expect(lastShownAt('Europe/Berlin', '22:40', '2026-03-13T06:30:00.000Z')).toBe('2026-03-12T21:40:00.000Z');
    expect(lastShownAt('Europe/Berlin', '03:10', '2026-03-13T06:30:00.000Z')).toBe('2026-03-13T02:10:00.000Z');
  });

  it('is this very minute at the limit, and a day ago a millisecond before it', () => {
    expect(lastShownAt('UTC', '06:30', '2026-03-13T06:30:00.000Z')).toBe('2026-03-13T06:30:00.000Z');
    expect(lastShownAt('UTC', '06:30', '2026-03-13T06:29:59.999Z')).toBe('2026-03-12T06:30:00.000Z');
  });

  it('is the second coming in the hour that comes twice, once that has been', () => {
    expect(lastShownAt('Europe/Berlin', '02:30', '2026-10-25T05:00:00.000Z')).toBe('2026-10-25T01:30:00.000Z');
    expect(lastShownAt('Europe/Berlin', '02:30', '2026-10-25T01:00:00.000Z')).toBe('2026-10-25T00:30:00.000Z');
  });

  it('is of the night before where the clocks jumped over it', () => {
    expect(lastShownAt('Europe/Berlin', '02:30', '2026-03-29T05:00:00.000Z')).toBe('2026-03-28T01:30:00.000Z');
  });

  it('reads back as written, is never ahead, and lies at most two days back', () => {
    const anyTime = fc
      .integer({ min: 0, max: 1439 })
      .map((minute) => `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`);
    const anyUntil = fc.integer({ min: Date.parse('2020-01-01'), max: Date.parse('2035-01-01') });
    fc.assert(
      fc.property(
        fc.constantFrom('UTC', 'Europe/Berlin', 'America/St_Johns'),
        anyTime,
        anyUntil,
        (zone, time, until) => {
          const at = lastShownAt(zone, time, instantOfMilliseconds(until));
          expect(localMomentAt(zone, at).time.slice(0, 5)).toBe(time);
          const back = until - millisecondsOfInstant(at);
          expect(back).toBeGreaterThanOrEqual(0);
          expect(back).toBeLessThan(2 * 86_400_000);
        },
      ),
    );
  });
});
