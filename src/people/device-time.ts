import { millisecondsBetween, type Instant } from '../platform/clock.js';

const instantWithOffset = /^(?:19|20|21)\d{2}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)$/;

/** An instant that a device states in a header, as the house writes instants; null when that cannot be read. */
export function instantOfHeader(header: string | string[] | undefined): Instant | null {
  if (typeof header !== 'string' || !instantWithOffset.test(header)) return null;
  const at = Date.parse(header);
  return Number.isNaN(at) ? null : new Date(at).toISOString();
}

/** How far a device's clock is ahead of the server's, by its `Device-Time` header; null when that cannot be read. */
export function deviceOffsetMilliseconds(header: string | string[] | undefined, now: Instant): number | null {
  const shown = instantOfHeader(header);
  return shown === null ? null : millisecondsBetween(now, shown);
}
