import { sendOnce } from './once.js';

/** What every page loads. It stays small: the rest is fetched by what the page holds. */
sendOnce(document);
