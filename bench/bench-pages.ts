import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { clockAfter } from '../src/demo/demo-clock.js';
import type { DemoTruth } from '../src/demo/truth.js';
import { readConfig } from '../src/platform/config.js';
import { buildHouse, openGround } from '../src/start-house.js';
import { crawlPages, type MetPage } from './crawl-pages.js';
import { crawlOf } from './page-addresses.js';
import { quantile } from './floor.js';
import { signInWalkers } from './walkers.js';

/** One page measured: what the server takes for it, and what comes over the wire for a first visit. */
export interface PageFigure {
  readonly pattern: string;
  readonly role: string;
  readonly medianMilliseconds: number;
  readonly p95Milliseconds: number;
  /** Times what the same server takes for the smallest page that somebody signed in can ask for. */
  readonly ratio: number;
  /** Page, style sheets and modules, as compressed as they were sent. */
  readonly kilobytes: number;
}

/** The smallest page behind the guard: what signing, routing, rendering and packing cost by themselves. */
const floorPage = '/no-such-page';

/** Every kind of page of the house on a copy of the demo's plant. */
export async function benchPages(plantFolder: string, truth: DemoTruth, count: number): Promise<PageFigure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'packthread-bench-'));
  cpSync(plantFolder, folder, { recursive: true });
  const config = readConfig({ DATA_FOLDER: folder, LOG_LEVEL: 'silent', REQUESTS_PER_MINUTE: '1000000' });
  const databases = await openGround(config);
  const house = await buildHouse(config, databases, { clock: clockAfter(truth.endsAt) });
  try {
    await house.listen(0, '127.0.0.1');
    const address = await house.getUrl();
    const met = await crawlPages(crawlOf(house, address), await signInWalkers(address));
    const figures: PageFigure[] = [];
    for (const page of met) figures.push(await figureOf(address, page, count));
    return figures;
  } finally {
    await house.close();
    await databases.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function figureOf(address: string, page: MetPage, count: number): Promise<PageFigure> {
  const times: number[] = [];
  const floors: number[] = [];
  for (let turn = 0; turn < count; turn += 1) {
    times.push(await millisecondsOf(address + page.path, page.cookie));
    floors.push(await millisecondsOf(address + floorPage, page.cookie));
  }
  const medianMilliseconds = quantile(times, 0.5);
  return {
    pattern: page.pattern,
    role: page.role,
    medianMilliseconds,
    p95Milliseconds: quantile(times, 0.95),
    ratio: medianMilliseconds / quantile(floors, 0.5),
    kilobytes: (await weightOf(address, page)) / 1000,
  };
}

async function millisecondsOf(url: string, cookie: string): Promise<number> {
  const begun = performance.now();
  const answer = await fetch(url, { headers: { cookie, accept: 'text/html', 'accept-encoding': 'br' } });
  await answer.arrayBuffer();
  return performance.now() - begun;
}

/** Bytes of a page with all that it links and imports, as sent. */
async function weightOf(address: string, { path, cookie }: MetPage): Promise<number> {
  const seen = new Set<string>();
  const queue = [path];
  let bytes = 0;
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    if (seen.has(next)) continue;
    seen.add(next);
    const headers = { cookie, accept: next === path ? 'text/html' : '*/*' };
    bytes += await bytesSent(address + next, headers);
    queue.push(...partsOf(next, await (await fetch(address + next, { headers })).text()));
  }
  return bytes;
}

async function bytesSent(url: string, headers: Readonly<Record<string, string>>): Promise<number> {
  const { get } = await import('node:http');
  return new Promise((resolve, reject) => {
    get(url, { headers: { ...headers, 'accept-encoding': 'br, gzip' } }, (answer) => {
      let bytes = 0;
      answer.on('data', (data: Buffer) => (bytes += data.length));
      answer.on('end', () => {
        resolve(bytes);
      });
    }).on('error', reject);
  });
}

/** Style sheets and modules that a page names, and what modules import. */
function partsOf(path: string, text: string): readonly string[] {
  if (path.includes('/assets/') && path.includes('.js')) {
    const imports = [...text.matchAll(/(?:from|import)\s*\(?\s*['"](\.[^'"]+)['"]/g)].map(([, name]) => name ?? '');
    return imports.map((name) => new URL(name, `http://house.invalid${path}`).pathname);
  }
  const linked = [...text.matchAll(/<(?:link rel="stylesheet" href|script[^>]* src)="([^"]+)"/g)];
  return linked.map(([, href]) => (href ?? '').replaceAll('&amp;', '&'));
}
