const { createHash } = require('node:crypto');
const { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } = require('node:fs');
const { dirname, join } = require('node:path');
const { fileURLToPath } = require('node:url');
const swc = require('@swc/core');

/** As `tsconfig.json` says it to the compiler. */
const options = {
  jsc: {
    parser: { syntax: 'typescript', tsx: true, decorators: true },
    target: 'es2023',
    keepClassNames: true,
    transform: {
      react: { runtime: 'automatic', importSource: 'preact' },
      legacyDecorator: true,
      decoratorMetadata: true,
    },
  },
  module: { type: 'es6' },
  sourceMaps: true,
  configFile: false,
  swcrc: false,
};

const placeOf = (path, source, cacheFolder) => {
  const hash = createHash('sha256')
    .update(JSON.stringify([swc.version, options, path]))
    .update(source)
    .digest('hex');
  return join(cacheFolder, hash.slice(0, 2), hash);
};

/** A TypeScript file as JavaScript, from the cache when the same text was translated before. */
exports.translated = (url, cacheFolder) => {
  const path = fileURLToPath(url);
  const source = readFileSync(path, 'utf8');
  const place = placeOf(path, source, cacheFolder);
  if (existsSync(`${place}.js`)) return readFileSync(`${place}.js`, 'utf8');
  const { code, map } = swc.transformSync(source, { ...options, filename: path });
  mkdirSync(dirname(place), { recursive: true });
  writeWhole(`${place}.map`, map);
  writeWhole(`${place}.js`, code);
  return code;
};

/** Where the map of a translated file lies; nothing for any other file. */
exports.mapPathOf = (url, cacheFolder) => {
  if (!/^file:.*\.tsx?(\?|$)/.test(url)) return undefined;
  const path = fileURLToPath(url);
  const place = `${placeOf(path, readFileSync(path, 'utf8'), cacheFolder)}.map`;
  return existsSync(place) ? place : undefined;
};

/** Two processes may write the same: whoever reads never meets half a file. */
function writeWhole(path, text) {
  writeFileSync(`${path}.${process.pid}`, text);
  renameSync(`${path}.${process.pid}`, path);
}
