import { existsSync } from 'node:fs';
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
  return process.env['CHROMIUM_PATH'] ?? (await chromium.executablePath());
}
