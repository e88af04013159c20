import type { Instant } from '../../platform/clock.js';

/** When the month of UTC begins in which an instant lies. */
export function monthOf(at: Instant): Instant {
  return `${at.slice(0, 7)}-01T00:00:00.000Z`;
}

/** When the month after that one begins. */
export function monthAfter(at: Instant): Instant {
  return new Date(Date.UTC(Number(at.slice(0, 4)), Number(at.slice(5, 7)))).toISOString();
}
