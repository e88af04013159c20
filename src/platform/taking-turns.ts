import { setImmediate } from 'node:timers/promises';

/** So long may work keep everybody else waiting. Our own value: a request may wait five times as long. */
const mostMilliseconds = 10;

/**
 * For work that would keep everybody else waiting: to be awaited between its parts. Goes on at once, and once the work
 * has had its time, after others have had their turn.
 */
export function takingTurns(): () => Promise<void> {
  let begunAt = performance.now();
  return async () => {
    if (performance.now() - begunAt < mostMilliseconds) return;
    await setImmediate();
    begunAt = performance.now();
  };
}
