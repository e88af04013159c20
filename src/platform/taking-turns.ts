import { setImmediate as queueBehindOthers } from 'node:timers';
import { setImmediate } from 'node:timers/promises';

/** So long may work keep everybody else waiting. Our own value: a request may wait five times as long. */
const mostMilliseconds = 10;

/** Since when work has kept everybody else waiting; null: not since they had their turn. */
let begunAt: number | null = null;

/**
 * Whether work has had its time, all that is under way together: two that take turns keep others waiting no longer than
 * one. Who is told so goes on after others have had their turn.
 */
export function isTurnOver(): boolean {
  const now = performance.now();
  if (begunAt === null) {
    begunAt = now;
    queueBehindOthers(() => {
      begunAt = null;
    });
  }
  return now - begunAt >= mostMilliseconds;
}

/**
 * For work that would keep everybody else waiting: to be awaited between its parts. Goes on at once, and once the work
 * has had its time, after others have had their turn.
 */
export function takingTurns(): () => Promise<void> {
  isTurnOver();
  return async () => {
    if (isTurnOver()) await setImmediate();
  };
}
