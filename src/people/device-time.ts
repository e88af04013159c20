import { millisecondsBetween, type Instant } from '../platform/clock.js';

const instantWithOffset = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)$/;

/** How far a device's clock is ahead of the server's, by its `Device-Time` header; null when that cannot be read. */
export function deviceOffsetMilliseconds(header: string | string[] | undefined, now: Instant): number | null {
  if (typeof header !== 'string' || !instantWithOffset.test(header)) return null;
  const offset = millisecondsBetween(now, header);
  return Number.isSafeInteger(offset) ? offset : null;
}
