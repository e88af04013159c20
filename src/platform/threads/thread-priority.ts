import { readlinkSync } from 'node:fs';
import { getPriority, setPriority } from 'node:os';

/** Nice levels of Linux: ten of them leave a thread a tenth of what others get where there is not enough for all. */
const stepsBack = 10;
const lastLevel = 19;

/**
 * Has the system put this thread behind others where there is not enough processor for all. Linux knows each thread by a
 * number of its own, which its file system of processes tells; elsewhere, or where that is kept from us, all stay alike.
 */
export function letOthersGoFirst(): void {
  if (process.platform !== 'linux') return;
  try {
    const own = Number(readlinkSync('/proc/thread-self').split('/').at(-1));
    setPriority(own, Math.min(lastLevel, getPriority(own) + stepsBack));
  } catch {
    // Then a report takes its equal share.
  }
}
