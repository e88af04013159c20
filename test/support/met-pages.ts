import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { crawlPages, type MetPage } from '../../bench/crawl-pages.js';
import { crawlOf } from '../../bench/page-addresses.js';
import { signInWalkers } from '../../bench/walkers.js';
import { pageRoutesOf } from '../../src/platform/web/page-routes.js';
import type { DemoHouse } from './a-demo.js';
import { madeOnce } from './made-demo.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** What the walk depends on: one of another state of these is walked anew. */
const walkedThrough = ['src', 'migrations', 'bench', 'test/support'];

function nameOfWalk(): string {
  const hash = createHash('sha256').update(process.env['TEST_DATABASE_URL'] ? 'postgres' : 'sqlite');
  for (const folder of walkedThrough) {
    const paths = readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).sort();
    for (const path of paths.filter((name) => /\.tsx?$/.test(name) && !name.includes('.spec.')))
      hash.update(path).update(readFileSync(join(root, folder, path)));
  }
  return `walk-${hash.digest('hex').slice(0, 16)}`;
}

/**
 * One page of every kind that links, forms and scans lead to in the usual demo of two days, which all files walk through
 * alike: the first file of a source state walks, the others go where it has been, signed in on their own.
 */
export async function metPages(demo: DemoHouse, address: string): Promise<readonly MetPage[]> {
  const walkers = await signInWalkers(address);
  const made = await madeOnce(nameOfWalk(), async (folder) => {
    const { routes, addressesOf } = crawlOf(demo.app, address);
    const isPage = (pattern: string): boolean => routes.some(({ path }) => path === pattern);
    const met = await crawlPages(
      {
        address,
        routes: pageRoutesOf(demo.app),
        addressesOf: async (pattern) => (isPage(pattern) ? addressesOf(pattern) : []),
      },
      walkers,
    );
    writeFileSync(
      join(folder, 'met.json'),
      JSON.stringify(met.map(({ role, pattern, path }) => ({ role, pattern, path }))),
    );
  });
  const met = JSON.parse(readFileSync(join(made, 'met.json'), 'utf8')) as readonly Omit<MetPage, 'cookie'>[];
  return met.map((page) => ({ ...page, cookie: cookieOf(page.role) }));

  function cookieOf(role: string): string {
    const walker = walkers.find((one) => one.role === role);
    if (walker === undefined) throw new Error(`nobody of the demo is ${role}`);
    return walker.cookie;
  }
}
