import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DemoOptions } from './life/demo-plan.js';
import { usualDemo, type DemoWish } from './demo-options.js';
import { readTruth, truthFileName, type DemoTruth } from './truth.js';

const marker = 'demo-begun.txt';
const ours = [
  'packthread.sqlite',
  'packthread.sqlite-wal',
  'packthread.sqlite-shm',
  'packthread.lock',
  'packthread.lock-journal',
  truthFileName,
];

/** What is to be done with a folder: serve the demo that is in it, or make one. */
export type FolderPlan =
  { readonly kind: 'serve'; readonly truth: DemoTruth } | { readonly kind: 'make'; readonly options: DemoOptions };

/**
 * Looks into the folder. A demo that was finished is served; one that was broken off is made anew.
 *
 * @throws {Error} where it holds a demo other than the one asked for, or records that are no demo
 */
export function planFolder(folder: string, wish: DemoWish): FolderPlan {
  const truth = readTruth(folder);
  const asked = { days: wish.days, seed: wish.seed, size: wish.size };
  if (truth === null || wish.isFresh) return { kind: 'make', options: { ...usualDemo, ...withoutNulls(asked) } };
  const others = Object.entries(asked).filter(([name, value]) => value !== null && value !== truth[name as 'days']);
  if (others.length > 0) {
    const { days, seed, size } = truth;
    throw new Error(
      `The folder ${folder} holds a demo with --days ${days} --seed ${seed} --size ${size}. ` +
        'Add --fresh to make it anew, or name another folder with --data.',
    );
  }
  return { kind: 'serve', truth };
}

/**
 * Makes room for a demo. Only what a demo left there is deleted.
 *
 * @throws {Error} where the folder holds records that are no demo
 */
export function clearFolder(folder: string): void {
  const found = existsSync(folder) ? readdirSync(folder) : [];
  const isOurs = found.includes(marker);
  if (found.includes('packthread.sqlite') && !isOurs) {
    throw new Error(`The folder ${folder} holds a plant that is no demo. Name another folder with --data.`);
  }
  for (const name of isOurs ? ours : []) rmSync(join(folder, name), { force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, marker), 'All in this folder is invented, and is deleted when the demo is made anew.\n');
}

function withoutNulls(asked: { readonly [Name in keyof DemoOptions]: DemoOptions[Name] | null }): Partial<DemoOptions> {
  return Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== null));
}
