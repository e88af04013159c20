import { describe, expect, it } from '@jest/globals';
import { LocalClock } from './local-clock.js';

const at = (text: string): number => Date.parse(text) / 10;

describe('times as a machine’s own clock shows them', () => {
  it('are read in the order of year, month and day that was said', () => {
    const utc = at('2026-03-12T07:41:03.410Z');
    expect(new LocalClock('ymd', 'UTC').instantOf('2026-03-12 07:41:03.41')).toBe(utc);
    expect(new LocalClock('ymd', 'UTC').instantOf('2026/3/12T7:41:03,41')).toBe(utc);
    expect(new LocalClock('dmy', 'UTC').instantOf('12.03.2026 07:41:03.419')).toBe(utc);
    expect(new LocalClock('dmy', 'UTC').instantOf('12.03.26 07:41')).toBe(at('2026-03-12T07:41:00Z'));
    expect(new LocalClock('mdy', 'UTC').instantOf('3/12/2026 7:41:03.41 AM')).toBe(utc);
    expect(new LocalClock('mdy', 'UTC').instantOf('03/12/2026 12:05:00 PM')).toBe(at('2026-03-12T12:05:00Z'));
    expect(new LocalClock('mdy', 'UTC').instantOf('03/12/2026 12:05:00 am')).toBe(at('2026-03-12T00:05:00Z'));
  });

  it('are refused where no clock or calendar shows them', () => {
    const wrong = (text: string): number => new LocalClock('dmy', 'UTC').instantOf(text);
    for (const text of ['31.02.2026 07:41', '12.13.2026 07:41', '00.03.2026 07:41', '12.03.2026', '2026-03-12 07:41']) {
      expect([text, wrong(text)]).toEqual([text, Number.NaN]);
    }
    for (const clock of ['24:00', '07:60', '07:41:60', '7', '13:00 PM', '0:10 AM', '07:41:03.', 'NaN', '']) {
      expect([clock, wrong(`12.03.2026 ${clock}`)]).toEqual([clock, Number.NaN]);
    }
  });

  it('follow the zone: an hour that is left out is no time, and the order tells the hour that comes twice', () => {
    const spring = new LocalClock('ymd', 'Europe/Berlin');
    expect(spring.instantOf('2026-03-29 01:59:59')).toBe(at('2026-03-29T00:59:59Z'));
    expect(spring.instantOf('2026-03-29 02:30:00')).toBeNaN();
    expect(spring.instantOf('2026-03-29 03:00:00')).toBe(at('2026-03-29T01:00:00Z'));
    const autumn = new LocalClock('ymd', 'Europe/Berlin');
    expect(autumn.instantOf('2026-10-25 02:58:00')).toBe(at('2026-10-25T00:58:00Z'));
    expect(autumn.instantOf('2026-10-25 02:00:01')).toBe(at('2026-10-25T01:00:01Z'));
    // A pack that comes a little out of order is no change of the clocks.
    expect(autumn.instantOf('2026-10-25 02:00:00')).toBe(at('2026-10-25T01:00:00Z'));
    expect(autumn.instantOf('2026-10-25 02:20:00')).toBe(at('2026-10-25T01:20:00Z'));
    expect(autumn.instantOf('2026-10-25 02:45:00')).toBe(at('2026-10-25T01:45:00Z'));
    expect(autumn.instantOf('2026-10-25 03:00:00')).toBe(at('2026-10-25T02:00:00Z'));
  });
});
