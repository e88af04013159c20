import { readFile } from 'node:fs/promises';
import { dirname, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'esbuild';

/** What was made: the length of the file, and how many modules it holds. */
export interface Joined {
  readonly bytes: number;
  readonly moduleCount: number;
}

/**
 * Joins the server's modules, its packages among them, into one file beside `main.js`: what the engine keeps of each
 * module is a third of all that the main thread lives in (docs/decisions/0053-one-file-to-start.md). Modules that are
 * loaded later (threads, libraries for papers) stay where they are.
 *
 * @param built the folder of the built `main.js`
 */
export async function joinModules(built: URL): Promise<Joined> {
  const outfile = fileURLToPath(new URL('main.joined.cjs', built));
  const { metafile } = await build({
    entryPoints: [fileURLToPath(new URL('main.js', built))],
    outfile,
    bundle: true,
    platform: 'node',
    // A module of the newer kind keeps the code that ran once.
    format: 'cjs',
    target: 'node20',
    external: loadedByTheirDriver,
    // Blanks go, names stay; a map beside the file finds the line.
    minifyWhitespace: true,
    lineLimit: 500,
    sourcemap: 'linked',
    sourcesContent: false,
    legalComments: 'none',
    banner: { js: beginning },
    define: { 'import.meta.url': 'placeOfTheFile' },
    plugins: [absentStaysOutside, leftOut, packagesWithin, placesAndNamesStay(dirname(outfile))],
    metafile: true,
    logLevel: 'warning',
  });
  const text = await readFile(outfile, 'utf8');
  if (/[^\0-\x7f]/.test(text)) throw new Error('a letter of the joined file is not plain');
  return { bytes: text.length, moduleCount: Object.keys(metafile.inputs).length };
}

/** Packages with a part in machine code, which they look for beside themselves, and drivers of databases. */
const loadedByTheirDriver = ['better-sqlite3', 'pg', '@node-rs/argon2'];

/** The file is as strict as the modules that it holds; and in a file of the older kind a place has another name. */
const beginning = '"use strict";const placeOfTheFile = require("node:url").pathToFileURL(__filename).href;';

/**
 * A module of the house finds what lies beside it (a thread's module, a style sheet) where it did before, and its classes
 * are called what they were, by which routes are described: what has to give way to another of its name in the one file is
 * called anew there.
 */
function placesAndNamesStay(folder: string): Plugin {
  return {
    name: 'places-and-names-stay',
    setup(building) {
      building.onLoad({ filter: /\.js$/ }, async ({ path }) => {
        if (path.includes('node_modules')) return undefined;
        const place = JSON.stringify(`./${relative(folder, path)}`);
        const text = inPlainLetters(await readFile(path, 'utf8'))
          .replaceAll('import.meta.url', `new URL(${place}, import.meta.url).href`)
          .replaceAll(headOfAClass, (head, name: string) => `${head} static { ${nameStays(name)} }`);
        return { contents: text, loader: 'js' };
      });
    },
  };
}

/** As the compiler writes it. */
const headOfAClass = /^(?:export )?(?:let \w+ = (?:\w+ = )?)?class (\w+)(?: extends [^{]+)? \{/gm;

const nameStays = (name: string): string =>
  `if (this.name !== '${name}') Object.defineProperty(this, 'name', { value: '${name}', configurable: true });`;

/** Packages that others would use if they were there: they are asked for when they are used, as before. */
const absent = new Set([
  '@fastify/multipart',
  '@fastify/static',
  '@fastify/view',
  '@nestjs/microservices',
  '@nestjs/microservices/microservices-module.js',
  '@nestjs/platform-express',
  '@nestjs/websockets/socket-module.js',
  // A place of an earlier release, looked for after that of this one.
  'class-transformer/storage',
  'swagger-ui-dist/absolute-path.js',
]);

/** Whatever else is not there lets the build fail. */
const absentStaysOutside: Plugin = {
  name: 'absent-stays-outside',
  setup(building) {
    building.onResolve({ filter: /^[^./]/ }, ({ path }) => (absent.has(path) ? { path, external: true } : undefined));
  },
};

const unusedDrivers = [
  'aurora-mysql',
  'aurora-postgres',
  'capacitor',
  'cockroachdb',
  'cordova',
  'expo',
  'mongodb',
  'mysql',
  'nativescript',
  'oracle',
  'react-native',
  'sap',
  'spanner',
  'sqljs',
  'sqlserver',
];

/** What no house uses: drivers of other databases, and numbers of telephones, which the checks of forms bring along. */
const leftOut: Plugin = {
  name: 'left-out',
  setup(building) {
    const filter = new RegExp(`/node_modules/(typeorm/driver/(${unusedDrivers.join('|')})|libphonenumber-js)/`);
    building.onLoad({ filter }, () => ({ contents: nothing, loader: 'js' }));
  },
};

/** Answers a class for every name: something can be derived from it and compared with it, and none is ever made. */
const nothing = `
  class LeftOut {
    constructor() {
      throw new Error('left out of the joined file');
    }
  }
  module.exports = new Proxy({}, { get: () => LeftOut });
`;

/**
 * Packages in plain letters: one beyond Latin-1 would double what the engine keeps of the whole text. And what they ask
 * for by a `require` of their own making is found in the file: a second copy beside it would not know what was told to the first.
 */
const packagesWithin: Plugin = {
  name: 'packages-within',
  setup(building) {
    building.onLoad({ filter: /\/node_modules\/.*\.[cm]?js$/ }, async ({ path }) => {
      const text = (await readFile(path, 'utf8')).replace(ownRequire, '');
      if (/= createRequire\(import\.meta\.url\)/.test(text)) throw new Error(`${path} makes itself another require`);
      return { contents: inPlainLetters(text), loader: 'js' };
    });
  },
};

const ownRequire = /^const require = createRequire\(import\.meta\.url\);$/m;

/** The bundler escapes letters by itself, but not in patterns. */
function inPlainLetters(text: string): string {
  return text.replaceAll(/[^\0-\x7f]/g, (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
