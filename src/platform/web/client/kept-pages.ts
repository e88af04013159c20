import { allOn, onShelf } from './store.js';

/** A page of work as it was last seen by a person on this device. */
interface KeptPage {
  readonly personId: string;
  readonly path: string;
  readonly html: string;
  readonly at: string;
}

const patienceMilliseconds = 4000;
/** What answers an entry is worth waiting for: the network has just carried the entry, and a copy would not know of it. */
const answerPatienceMilliseconds = 20_000;
/** A proxy that stands before a server which is away. */
const away = new Set([502, 503, 504]);

/**
 * The pages that are of use without network: those where work is entered. The settings of a line with a figure filled in
 * are none: what was advised then may not be the advice any more.
 */
export function isWorkingPage({ pathname, search }: URL): boolean {
  if (/^\/lines\/[0-9a-f-]{36}\/settings$/.test(pathname)) return search === '';
  return /^\/(line|dock|dryer|device)(\/|$)/.test(pathname);
}

/** The page from the network, where it comes in time; else as this person last saw it on this device. */
export async function answerPage(request: Request, answersEntry: boolean): Promise<Response> {
  const path = new URL(request.url).pathname;
  const coming = fetch(request).then(async (answer) => {
    if (away.has(answer.status)) throw new Error('the server is away');
    if (answer.ok && !answer.redirected) await keepPage(path, answer.clone());
    return answer;
  });
  try {
    return await inTime(coming, answersEntry ? answerPatienceMilliseconds : patienceMilliseconds);
  } catch {
    const kept = await keptPage(path);
    if (kept !== null) return kept;
    // Nothing is kept: whatever the network still brings is better than nothing.
    return coming.catch(() => offLinePage());
  }
}

function inTime<Answer>(coming: Promise<Answer>, milliseconds: number): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      reject(new Error('too late'));
    }, milliseconds);
    coming.then(resolve, reject).finally(() => {
      clearTimeout(timer);
    });
  });
}

/** The page says itself whose it is. */
async function keepPage(path: string, answer: Response): Promise<void> {
  const html = await answer.text();
  const personId = /<body[^>]* data-person="([0-9a-f-]{36})"/.exec(html)?.[1];
  if (personId === undefined) return;
  const others = (await allOn<KeptPage>('pages')).filter((page) => page.personId !== personId);
  for (const page of others) await dropPage(page);
  const kept: KeptPage = { personId, path, html, at: new Date().toISOString() };
  await onShelf('pages', 'readwrite', (store) => store.put(kept));
}

async function dropPage({ personId, path }: KeptPage): Promise<void> {
  await onShelf('pages', 'readwrite', (store) => store.delete([personId, path]));
}

/** Somebody signs in or out: the copies of before are nobody's any more. */
export async function forgetPerson(): Promise<void> {
  await onShelf('pages', 'readwrite', (store) => store.clear());
}

async function keptPage(path: string): Promise<Response | null> {
  const page = (await allOn<KeptPage>('pages')).find((one) => one.path === path);
  if (page === undefined) return null;
  const words = await wordsOf(page.html);
  const strip = stripOf(words['browser-off-line-since'] ?? '', page.at);
  const html = page.html.replace(/(<main\b[^>]*>)/, (main) => main + strip);
  return asPage(html, 200);
}

/** Shown for pages that are of no use without network: what can be done meanwhile. */
export async function offLinePage(): Promise<Response> {
  const [last] = await allOn<KeptPage>('pages');
  const words = await wordsOf(last?.html ?? '');
  const kept = await allOn<KeptPage>('pages');
  const links = kept.map(({ path }) => `<li><a href="${textOf(path)}">${textOf(path)}</a></li>`).join('');
  const word = (code: string): string => textOf(words[code] ?? '');
  const style = styleOf(last?.html ?? '');
  return asPage(
    `<!doctype html><html lang="${words['browser-language'] ?? 'en'}"><head><meta charset="utf-8">` +
      `<meta name="viewport" content="width=device-width, initial-scale=1"><title>${word('browser-off-line')}</title>${style}</head>` +
      `<body class="tablet"><main id="content"><h1>${word('browser-off-line')}</h1><p class="sentence">${word('browser-off-line-says')}</p>` +
      `<ul>${links}</ul></main></body></html>`,
    503,
  );
}

/** The address of the texts stands beside that of this module; the page says in which language. */
async function wordsOf(html: string): Promise<Readonly<Record<string, string>>> {
  const language = /<html lang="es"/.test(html) ? 'es' : 'en';
  const address = new URL(`../../../words/${language}.json`, import.meta.url);
  const answer = (await caches.match(address)) ?? (await fetch(address).catch(() => null));
  return answer === null ? {} : ((await answer.json()) as Record<string, string>);
}

function styleOf(html: string): string {
  return /<link rel="stylesheet" href="\/assets\/[0-9a-f]{12}\/house\.css"\/?>/.exec(html)?.[0] ?? '';
}

function stripOf(sentence: string, at: string): string {
  const time = new Date(at).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return `<p id="off-line" class="off-line" role="status">${textOf(sentence.replace('{at}', time))}</p>`;
}

function textOf(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}

/** Under the same policy as the server's pages, which a made answer does not carry by itself. */
function asPage(html: string, status: number): Response {
  const policy =
    "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; worker-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";
  return new Response(html, {
    status,
    headers: {
      'Content-Type': 'text/html; charset=utf-8',
      'Content-Security-Policy': policy,
      'Cache-Control': 'no-store',
    },
  });
}
