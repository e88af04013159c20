/// <reference lib="webworker" />
import { answerAsset } from './kept-assets.js';
import { answerPage, forgetPerson, isWorkingPage, offLinePage } from './kept-pages.js';

declare const self: ServiceWorkerGlobalScope;

/** What stands between the pages and the network: it keeps style sheet, modules and the pages of work, and no more. */
self.addEventListener('install', () => {
  void self.skipWaiting();
});

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim());
});

/** A form went out, and the page that its answer leads to has not been asked for yet. */
let entryIsOut = false;

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  const { pathname, origin } = address;
  if (origin !== self.location.origin) return;
  const asset = answerAsset(request);
  if (asset !== null) {
    event.respondWith(asset);
  } else if (request.method === 'POST' && /^\/sign-(in|out)$/.test(pathname)) {
    // Whoever comes next must not see the pages of who was here.
    event.waitUntil(forgetPerson());
  } else if (request.mode === 'navigate') {
    if (request.method === 'GET') {
      event.respondWith(isWorkingPage(address) ? answerPage(request, entryIsOut) : withOffLinePage(request));
    }
    entryIsOut = request.method === 'POST';
  }
});

async function withOffLinePage(request: Request): Promise<Response> {
  try {
    return await fetch(request);
  } catch {
    return offLinePage();
  }
}
