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
  /** Where to look for a kind of page that no link was met to. */
  readonly addressesOf?: (pattern: string) => Promise<readonly string[]>;
}

/**
 * Walks through the house by its links, as each of the people in turn, and keeps one page of every kind (addresses that
 * differ only in ids are of one kind).
 */
export async function crawlPages(crawl: Crawl, walkers: readonly Walker[]): Promise<MetPage[]> {
  const met = new Map<string, MetPage>();
  const kinds = crawl.routes
    .filter(({ method }) => method === 'GET')
    .map(({ path }) => ({
      path,
      fits: patternOf(path),
      fixedParts: path.split('/').filter((part) => !part.startsWith(':')).length,
    }))
    // `/dispatch/new` is no delivery: what is fixed goes first.
    .sort((one, other) => other.fixedParts - one.fixedParts);
  for (const walker of walkers) await walk(crawl.address, kinds, walker, met);
  for (const { path } of kinds.filter((kind) => !met.has(kind.path))) {
    const found = await tryAddresses(crawl.address, (await crawl.addressesOf?.(path)) ?? [], walkers);
    if (found !== null) met.set(path, { ...found, pattern: path });
  }
  return [...met.values()].sort((one, other) => one.pattern.localeCompare(other.pattern, 'en'));
}

interface Kind {
  readonly path: string;
  readonly fits: RegExp;
}

async function walk(address: string, kinds: readonly Kind[], walker: Walker, met: Map<string, MetPage>): Promise<void> {
  const seen = new Set<string>();
  const queue = ['/', '/home'];
  for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
    const bare = path.split('?')[0] ?? path;
    const kind = kinds.find(({ fits }) => fits.test(bare));
    if (kind === undefined || seen.has(seenKey(kind.path, path))) continue;
    seen.add(seenKey(kind.path, path));
    const { text, onward } = await look(address, path, walker.cookie);
    if (onward !== null) queue.push(onward);
    if (text === null) continue;
    if (!met.has(kind.path)) met.set(kind.path, { ...walker, pattern: kind.path, path });
    queue.push(...linksIn(text));
  }
}

async function tryAddresses(
  address: string,
  paths: readonly string[],
  walkers: readonly Walker[],
): Promise<(Walker & { readonly path: string }) | null> {
  for (const path of paths) {
    for (const walker of walkers) {
      const { text } = await look(address, path, walker.cookie);
      if (text !== null) return { ...walker, path };
    }
  }
  return null;
}

/** A page's text, or where it leads to; neither for what is no page or is refused. */
async function look(
  address: string,
  path: string,
  cookie: string,
): Promise<{ readonly text: string | null; readonly onward: string | null }> {
  const answer = await fetch(address + path, { headers: { cookie, accept: 'text/html' }, redirect: 'manual' });
  const isPage = answer.status === 200 && (answer.headers.get('content-type') ?? '').startsWith('text/html');
  const text = await answer.text();
  return { text: isPage ? text : null, onward: answer.headers.get('location')?.replace(address, '') ?? null };
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
