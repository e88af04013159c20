import 'reflect-metadata';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readConfig } from '../platform/config.js';
import { openGround } from '../start-house.js';
import { schemaText } from './schema-text.js';

/** `npm run schema:write`: writes `docs/schema.sql`. */
const dataFolder = mkdtempSync(join(tmpdir(), 'packthread-schema-'));
const databases = await openGround(readConfig({ DATA_FOLDER: dataFolder }));
try {
  writeFileSync('docs/schema.sql', await schemaText(databases));
} finally {
  await databases.close();
  rmSync(dataFolder, { recursive: true });
}
