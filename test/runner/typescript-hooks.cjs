const { existsSync } = require('node:fs');
const { join } = require('node:path');
const { fileURLToPath, pathToFileURL } = require('node:url');
const { translated } = require('./typescript-cache.cjs');

const jestGlobals = pathToFileURL(join(__dirname, 'jest-globals.cjs')).href;

let root = '';
let cacheFolder = '';

exports.initialize = (given) => {
  ({ root, cacheFolder } = given);
};

/** Our own modules are named as they will be built (`.js`) and lie there as `.ts` or `.tsx`. */
exports.resolve = (specifier, context, next) => {
  if (specifier === '@jest/globals') return found(jestGlobals);
  const { parentURL = '' } = context;
  if (!specifier.startsWith('.') || !isOurs(parentURL)) return next(specifier, context);
  const url = new URL(specifier, parentURL).href;
  const source = [url.replace(/\.js$/, '.ts'), url.replace(/\.js$/, '.tsx')].find(
    (one) => isOurs(one) && existsSync(fileURLToPath(one)),
  );
  return source === undefined ? next(specifier, context) : found(source);
};

exports.load = (url, context, next) => {
  if (!isOurs(url)) return next(url, context);
  return { format: 'module', source: translated(url, cacheFolder), shortCircuit: true };
};

const found = (url) => ({ url, shortCircuit: true });

function isOurs(url) {
  return /\.tsx?(\?|$)/.test(url) && url.startsWith(root) && !url.startsWith(`${root}node_modules/`);
}
