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

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { pathname, origin } = new URL(request.url);
  if (origin !== self.location.origin) return;
  const asset = answerAsset(request);
  if (asset !== null) {
    event.respondWith(asset);
  } else if (request.method === 'POST' && /^\/sign-(in|out)$/.test(pathname)) {
    // Whoever comes next must not see the pages of who was here.
    event.waitUntil(forgetPerson());
  } else if (request.method === 'GET' && request.mode === 'navigate') {
    event.respondWith(isWorkingPage(pathname) ? answerPage(request) : withOffLinePage(request));
  }
});

async function withOffLinePage(request: Request): Promise<Response> {
  try {
    return await fetch(request);
  } catch {
    return offLinePage();
  }
}
