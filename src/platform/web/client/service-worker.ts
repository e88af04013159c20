/// <reference lib="webworker" />
import { answerAsset } from './kept-assets.js';

declare const self: ServiceWorkerGlobalScope;

self.addEventListener('fetch', (event) => {
  const asset = answerAsset(event.request);
  if (asset !== null) event.respondWith(asset);
});
