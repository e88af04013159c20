import 'reflect-metadata';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { writeHistory } from './write-history.js';

/** `npm run bench:ten-years -- [--days N] [--keep]`: writes a plant's history in bulk. */
const { values } = parseArgs({ options: { days: { type: 'string' }, keep: { type: 'boolean' } } });
const folder = mkdtempSync(join(tmpdir(), 'packthread-ten-years-'));
const begun = performance.now();
await writeHistory({ dataFolder: folder, databaseUrl: null }, Number(values.days ?? 30));
console.log(`${folder}: ${Math.round((performance.now() - begun) / 1000)} s`);
if (values.keep !== true) rmSync(folder, { recursive: true });
