const shelf = 'assets';

/** `/assets/<version>/…`: the version is a hash of all assets, so an answer under such an address never changes. */
const versioned = /^\/assets\/([0-9a-f]{12})\//;

/** The size of this screen: asked for with each page, and kept for when the network is away. */
const sizePath = '/assets/size.css';

/** A style sheet or module from the device where it is kept; null for any other request. */
export function answerAsset(request: Request): Promise<Response> | null {
  const { pathname } = new URL(request.url);
  if (request.method === 'GET' && pathname === sizePath) return fromNetworkFirst(request);
  const version = versioned.exec(pathname)?.[1];
  if (request.method !== 'GET' || version === undefined) return null;
  return fromShelf(request, version);
}

async function fromShelf(request: Request, version: string): Promise<Response> {
  const cache = await caches.open(shelf);
  const kept = await cache.match(request.url);
  if (kept !== undefined) return kept;
  const answer = await fetch(request);
  // An answer of another version (the server was changed meanwhile) may be used, but not kept.
  if (answer.ok && answer.headers.get('cache-control')?.includes('immutable') === true) {
    await cache.put(request.url, answer.clone());
    await forgetOthers(cache, version);
  }
  return answer;
}

async function fromNetworkFirst(request: Request): Promise<Response> {
  const cache = await caches.open(shelf);
  try {
    const answer = await fetch(request);
    if (answer.ok) await cache.put(request.url, answer.clone());
    return answer;
  } catch (error) {
    const kept = await cache.match(request.url);
    if (kept === undefined) throw error;
    return kept;
  }
}

async function forgetOthers(cache: Cache, version: string): Promise<void> {
  for (const kept of await cache.keys()) {
    const other = versioned.exec(new URL(kept.url).pathname)?.[1];
    if (other !== undefined && other !== version) await cache.delete(kept);
  }
}
