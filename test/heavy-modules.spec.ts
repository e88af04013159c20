import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from '@jest/globals';

const dist = join(process.cwd(), 'dist', 'src');
const questions = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.question.js'),
);

/** Prints the packages that the modules of all questions load. */
const program = `
  import { register, createRequire } from 'node:module';
  const hook = "export async function resolve(name, context, next) { const found = await next(name, context); console.log(found.url); return found; }";
  register('data:text/javascript,' + encodeURIComponent(hook));
  for (const file of ${JSON.stringify(questions.map((file) => join(dist, file)))}) await import(file);
  for (const file of Object.keys(createRequire(import.meta.url).cache)) console.log(file);
`;

describe('a thread of heavy reads', () => {
  it('loads readers and core, and no package of the rest of the house', () => {
    expect(questions.length).toBeGreaterThan(3);
    const loaded = execFileSync(process.execPath, ['--input-type=module', '--eval', program], { encoding: 'utf8' });
    const packages = [...loaded.matchAll(/node_modules\/((?:@[^/\s]+\/)?[^/\s]+)/g)].map(([, name]) => name);
    expect([...new Set(packages)].sort()).toEqual([]);
    expect(loaded).toContain('dist/src/core/hopper-flow/');
  });
});
