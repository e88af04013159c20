import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { DemoOptions } from '../../src/demo/life/demo-plan.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const cacheFolder = join(root, 'node_modules', '.cache', 'packthread-demo');

/** A source state and the demo's options have one name: what was made of them can be used again, and of no others. */
export function nameOfDemo(options: DemoOptions, databaseKind: 'sqlite' | 'postgres'): string {
  const hash = createHash('sha256').update(JSON.stringify([options, databaseKind]));
  for (const folder of ['src', 'migrations']) {
    const paths = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).sort();
    for (const path of paths.filter(
      (name) => /\.tsx?$/.test(name) && !/\.(page|spec|sentences|sentences\.es)\.tsx?$/.test(name),
    )) {
      hash.update(path).update(readFileSync(join(root, folder, path)));
    }
  }
  return hash.digest('hex').slice(0, 16);
}

/**
 * The folder of what was made, a demo or a walk, once for all test files of a source state. `make` fills a folder; of two who
 * want the same one makes it and the other waits.
 */
export async function madeOnce(name: string, make: (folder: string) => Promise<void>): Promise<string> {
  const folder = join(cacheFolder, name);
  mkdirSync(cacheFolder, { recursive: true });
  while (!existsSync(folder)) {
    if (await tryToMake(folder, make)) break;
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  return folder;
}

/** What was made is gone from where it lay, such as a server that is new. */
export function forgetMade(name: string): void {
  rmSync(join(cacheFolder, name), { recursive: true, force: true });
}

const patienceMilliseconds = 600_000;

async function tryToMake(folder: string, make: (folder: string) => Promise<void>): Promise<boolean> {
  const underWay = `${folder}.making`;
  try {
    mkdirSync(underWay);
  } catch {
    // Whoever began this and was cut off left it behind.
    const isLeftBehind = existsSync(underWay) && Date.now() - statSync(underWay).mtimeMs > patienceMilliseconds;
    if (isLeftBehind) rmSync(underWay, { recursive: true, force: true });
    return false;
  }
  try {
    await make(underWay);
    forgetOthers();
    renameSync(underWay, folder);
    return true;
  } catch (error) {
    rmSync(underWay, { recursive: true, force: true });
    throw error;
  }
}

const keptCount = 8;

/** What was made of earlier source states goes. */
function forgetOthers(): void {
  const made = readdirSync(cacheFolder)
    .filter((name) => !name.endsWith('.making'))
    .map((name) => ({ path: join(cacheFolder, name), at: statSync(join(cacheFolder, name)).mtimeMs }))
    .sort((one, other) => other.at - one.at);
  for (const { path } of made.slice(keptCount)) rmSync(path, { recursive: true, force: true });
}
