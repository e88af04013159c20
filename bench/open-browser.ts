import { existsSync } from 'node:fs';
import { mkdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import chromium from '@sparticuz/chromium';
import { chromium as engine, type Browser } from 'playwright-core';

/** Chromium: the one that CHROMIUM_PATH names, else the one that comes with the packages. */
export async function openBrowser(): Promise<Browser> {
  return engine.launch({ executablePath: await chromiumPath(), args: ['--no-sandbox'] });
}

/** Where the browser lies, ready to start on this machine. */
export async function chromiumPath(): Promise<string> {
  // The packaged browser brings the libraries that a bare machine lacks, when it is told that it runs where none are.
  if (!existsSync('/usr/lib/x86_64-linux-gnu/libnss3.so')) process.env['AWS_LAMBDA_JS_RUNTIME'] = 'nodejs20.x';
  return process.env['CHROMIUM_PATH'] ?? (await oneAtATime(() => chromium.executablePath()));
}

/** Unpacking takes seconds; a process that came in the midst of another's would start half a browser. */
async function oneAtATime<Result>(unpack: () => Promise<Result>): Promise<Result> {
  const lock = join(tmpdir(), 'packthread-browser-unpacking');
  while (!(await isTaken(lock))) await delay(100);
  try {
    return await unpack();
  } finally {
    await rm(lock, { recursive: true, force: true });
  }
}

/** A folder is made by one process alone; one that was killed leaves it behind, for a minute. */
async function isTaken(lock: string): Promise<boolean> {
  try {
    await mkdir(lock);
    return true;
  } catch {
    const madeAt = await stat(lock).then(({ mtimeMs }) => mtimeMs, Date.now);
    if (Date.now() - madeAt > 60_000) await rm(lock, { recursive: true, force: true });
    return false;
  }
}
