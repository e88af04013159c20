const { register } = require('node:module');
const { join } = require('node:path');
const { pathToFileURL } = require('node:url');
const { runInNewContext } = require('node:vm');
const { default: JestRuntime } = require('jest-runtime');
const { mapPathOf } = require('./typescript-cache.cjs');

/** Under this name each test file's `describe`, `it`, `expect` and `jest` lie for `jest-globals.cjs`. */
const globalsKey = Symbol.for('packthread.jest-globals');

/** The language's own classes. */
const standardClasses = runInNewContext('Object.getOwnPropertyNames(globalThis)').filter(
  (name) => typeof globalThis[name] === 'function' && /^[A-Z]/.test(name),
);

/** Specs that this process has run: the same one again is loaded anew. */
const timesRun = new Map();
let isRegistered = false;

/**
 * Jest finds, runs and reports the specs; Node itself loads them and all that they import, once a process, as it loads
 * the server. Jest's own loader evaluates the whole house anew for each test file.
 */
class NodeRuntime extends JestRuntime {
  constructor(config, ...rest) {
    super(config, ...rest);
    const [environment] = rest;
    // Jest's own parts run in a context of their own; what `expect` takes for a String or an Error is what specs take for one.
    for (const name of standardClasses) environment.global[name] = globalThis[name];
    this.cacheFolder = join(config.cacheDirectory, 'typescript');
    if (isRegistered) return;
    isRegistered = true;
    const data = { root: pathToFileURL(`${config.rootDir}/`).href, cacheFolder: this.cacheFolder };
    register('./typescript-hooks.cjs', { parentURL: pathToFileURL(__filename), data });
  }

  unstable_shouldLoadAsEsm() {
    return true;
  }

  async unstable_importModule(path) {
    globalThis[globalsKey] = this.requireModuleOrMock(path, '@jest/globals');
    const times = timesRun.get(path) ?? 0;
    timesRun.set(path, times + 1);
    await import('reflect-metadata');
    return import(pathToFileURL(path).href + (times === 0 ? '' : `?again=${times}`));
  }

  /** What Jest asks to show a fault at its line of the source. */
  getSourceMaps() {
    return Object.assign(new Map(), { get: (source) => mapPathOf(source, this.cacheFolder) });
  }
}

module.exports = { __esModule: true, default: NodeRuntime };
