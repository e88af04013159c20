import { joinModules } from './join-modules.js';

/** The last step of `npm run build`: writes `dist/src/main.joined.cjs`, which `npm start` starts. */
const { bytes, moduleCount } = await joinModules(new URL('../', import.meta.url));
process.stdout.write(`${moduleCount} modules in one file of ${(bytes / 1e6).toFixed(1)} MB\n`);
