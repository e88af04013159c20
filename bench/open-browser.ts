import { existsSync } from 'node:fs';
import chromium from '@sparticuz/chromium';
import { chromium as engine, type Browser } from 'playwright-core';

/** Chromium: the one that CHROMIUM_PATH names, else the one that comes with the packages. */
export async function openBrowser(): Promise<Browser> {
  const named = process.env['CHROMIUM_PATH'];
  // The packaged browser brings the libraries that a bare machine lacks, when it is told that it runs where none are.
  if (!existsSync('/usr/lib/x86_64-linux-gnu/libnss3.so')) process.env['AWS_LAMBDA_JS_RUNTIME'] = 'nodejs20.x';
  const executablePath = named ?? (await chromium.executablePath());
  return engine.launch({ executablePath, args: ['--no-sandbox'] });
}
