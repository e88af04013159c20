import { shifted, type Instant } from '../../platform/clock.js';

const dayMilliseconds = 86_400_000;
const longestMonthDays = 31;

/** Single weights that were weighed before this may go: so many months ago, each taken at its longest. */
export function mayGoBefore(now: Instant, monthsKept: number): Instant {
  return shifted(now, -monthsKept * longestMonthDays * dayMilliseconds);
}
