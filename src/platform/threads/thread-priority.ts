import { readdirSync, readlinkSync } from 'node:fs';
import { constants, getPriority, setPriority } from 'node:os';

/** Nice levels of Linux: ten of them leave a thread a tenth of what others get where there is not enough for all. */
const { PRIORITY_BELOW_NORMAL: stepsBack, PRIORITY_LOW: lastLevel } = constants.priority;

/** How many threads Node gives its engine where nothing is said of them. */
const usualPoolSize = 4;

/**
 * Has the system put this thread behind all others where there is not enough processor for all. Linux knows each thread by
 * a number of its own, which its file system of processes tells; elsewhere, or where that is kept from us, all stay alike.
 */
export function letOthersGoFirst(): void {
  whereThreadsAreTold(() => {
    setPriority(Number(readlinkSync('/proc/thread-self').split('/').at(-1)), lastLevel);
  });
}

/**
 * Has the system put the engine's own threads (they compile what runs often, and help to collect what is dropped, reports'
 * too) behind those of the server where there is not enough processor for all, before reports. They are the first that a
 * process begins: one that keeps time, then as many as `--v8-pool-size` says.
 */
export function letEngineGoBehind(): void {
  whereThreadsAreTold(() => {
    const others = readdirSync('/proc/self/task')
      .map(Number)
      .filter((id) => id > process.pid)
      .sort((one, other) => one - other);
    const level = Math.min(lastLevel, getPriority() + stepsBack);
    for (const id of others.slice(0, 1 + poolSize())) setPriority(id, level);
  });
}

function poolSize(): number {
  const told = process.execArgv
    .map((flag) => /^--v8-pool-size=(\d+)$/.exec(flag)?.[1])
    .find((size) => size !== undefined);
  return told === undefined ? usualPoolSize : Number(told);
}

function whereThreadsAreTold(work: () => void): void {
  if (process.platform !== 'linux') return;
  try {
    work();
  } catch {
    // Then all take their equal share.
  }
}
