import type { PageRoute } from '../src/platform/web/page-routes.js';

/** Somebody whose pages are walked through. */
export interface Walker {
  readonly role: string;
  readonly cookie: string;
}

/** One page of each kind that the house has: where it was met, and by whom. */
export interface MetPage {
  readonly pattern: string;
  readonly path: string;
  readonly role: string;
  readonly cookie: string;
}

interface Crawl {
  readonly address: string;
  readonly routes: readonly PageRoute[];
  /** Where each walk begins, beside the start page. */
  readonly from?: readonly string[];
}

/**
 * Walks through the house by its links, as each of the people in turn, and keeps one page of every kind (addresses that
 * differ only in ids are of one kind).
 */
export async function crawlPages(
  { address, routes, from = [] }: Crawl,
  walkers: readonly Walker[],
): Promise<MetPage[]> {
  const met = new Map<string, MetPage>();
  const kinds = routes.filter(({ method }) => method === 'GET').map(({ path }) => ({ path, fits: patternOf(path) }));
  for (const { role, cookie } of walkers) {
    const seen = new Set<string>();
    const queue = ['/', '/home', ...from];
    for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
      const bare = path.split('?')[0] ?? path;
      const kind = kinds.find(({ fits }) => fits.test(bare));
      if (kind === undefined || seen.has(seenKey(kind.path, path))) continue;
      seen.add(seenKey(kind.path, path));
      const answer = await fetch(address + path, { headers: { cookie, accept: 'text/html' }, redirect: 'manual' });
      const onward = answer.headers.get('location');
      if (onward !== null) queue.push(onward.replace(address, ''));
      const isPage = answer.status === 200 && (answer.headers.get('content-type') ?? '').startsWith('text/html');
      const text = await answer.text();
      if (!isPage) continue;
      if (!met.has(kind.path)) met.set(kind.path, { pattern: kind.path, path, role, cookie });
      queue.push(...linksIn(text));
    }
  }
  return [...met.values()].sort((one, other) => one.pattern.localeCompare(other.pattern, 'en'));
}

/** A kind is looked at once by each person, with and without a query. */
function seenKey(pattern: string, path: string): string {
  return `${pattern} ${path.includes('?') ? '?' : ''}`;
}

function patternOf(path: string): RegExp {
  const parts = path
    .split('/')
    .map((part) => (part.startsWith(':') ? '[^/]+' : part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')));
  return new RegExp(`^${parts.join('/')}$`);
}

function linksIn(html: string): readonly string[] {
  return [...html.matchAll(/\shref="(\/[^"#]*)/g)].map(([, href]) => (href ?? '').replaceAll('&amp;', '&'));
}
