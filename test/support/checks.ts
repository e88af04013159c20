import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe } from '@jest/globals';

const checksFolder = fileURLToPath(new URL('../../../shared/checks/', import.meta.url));

/** Whether the folder of published values and vectors lies beside the project. A stranger's clone has none. */
export const hasChecks = existsSync(checksFolder);

/** A file of `../shared/checks`, parsed. Call it only inside `describeWithChecks`. */
export function readChecks<T>(path: string): T {
  return JSON.parse(readFileSync(checksFolder + path, 'utf8')) as T;
}

/** Like `describe`, but counted as skipped, with the reason in its name, where the folder of vectors is absent. */
export function describeWithChecks(name: string, body: () => void): void {
  if (hasChecks) describe(name, body);
  // Skipped on purpose: without the folder there is nothing to compare with, and a pass would be a lie.
  else describe.skip(`${name} (skipped: ../shared/checks is not beside the project)`, body);
}
