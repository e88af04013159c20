import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { sha256 } from '../canonical-text.js';
import { browserSentencesInSpanish } from './browser.sentences.es.js';
import { browserSentences } from './browser.sentences.js';

/** A file as browsers get it. */
export interface BrowserFile {
  readonly type: string;
  readonly content: Buffer;
  readonly etag: string;
  /** Compressed at the first request for it, once. */
  packed(encoding: 'br' | 'gzip'): Buffer;
}

const root = new URL('../../', import.meta.url);
/** Where the compiled modules lie; beside the sources (in tests) they are those of the last build. */
const builtRoot = existsSync(new URL('platform/web/client/house.js', root)) ? root : new URL('../dist/src/', root);
const moduleFolders = ['platform/web/client/', 'core/identifiers/', 'core/test-packs/', 'core/units/'];

const files = new Map<string, BrowserFile>([
  ['house.css', fileOf('text/css; charset=utf-8', readFileSync(new URL('./house.css', import.meta.url), 'utf8'))],
  ['words/en.json', fileOf('application/json', JSON.stringify(browserSentences))],
  ['words/es.json', fileOf('application/json', JSON.stringify(browserSentencesInSpanish))],
  ...moduleFolders.flatMap(modulesIn),
]);

function modulesIn(folder: string): (readonly [string, BrowserFile])[] {
  const place = new URL(folder, builtRoot);
  if (!existsSync(place)) return [];
  return readdirSync(place)
    .filter((name) => /^[a-z0-9-]+\.js$/.test(name))
    .map((name) => {
      const source = readFileSync(new URL(name, place), 'utf8').replace(/^\/\/# sourceMappingURL=.*$/m, '');
      return [folder + name, fileOf('text/javascript; charset=utf-8', source)] as const;
    });
}

function fileOf(type: string, text: string): BrowserFile {
  const content = Buffer.from(text);
  const made = new Map<'br' | 'gzip', Buffer>();
  return {
    type,
    content,
    etag: `"${sha256(content).slice(0, 32)}"`,
    packed: (encoding) => {
      const packed = made.get(encoding) ?? (encoding === 'br' ? brotliCompressSync(content) : gzipSync(content));
      made.set(encoding, packed);
      return packed;
    },
  };
}

/** Names the whole set of style sheet and modules: it changes with any of them. */
export const assetVersion = sha256([...files].map(([path, { etag }]) => path + etag).join('\n')).slice(0, 12);

/** The file at a path such as `house.css`; null for all that was not read at the start. */
export function browserFile(path: string): BrowserFile | null {
  return files.get(path) ?? null;
}

/** The address of a file. It holds the version, so that browsers may keep it for ever; modules import each other by it. */
export function assetAddress(path: string): string {
  return `/assets/${assetVersion}/${path}`;
}

/** What every page runs before it is parsed, and the module that it loads. */
export const firstScript = 'platform/web/client/first-keys.js';
export const houseModule = 'platform/web/client/house.js';
