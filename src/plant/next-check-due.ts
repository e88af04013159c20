import { shifted, type Instant } from '../platform/clock.js';

/** When the check after one at `checkedAt` is due. */
export function nextCheckDueAt(checkedAt: Instant, checkEveryHours: number): Instant {
  return shifted(checkedAt, checkEveryHours * 3_600_000);
}
