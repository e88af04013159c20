import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import pg from 'pg';
import { clockAfter, DemoClock, DemoIds } from '../../src/demo/demo-clock.js';
import { planDemo, type DemoOptions } from '../../src/demo/life/demo-plan.js';
import { liveThrough } from '../../src/demo/life/live-through.js';
import { instantOf } from '../../src/demo/life/minutes.js';
import { makeDemo } from '../../src/demo/make-demo.js';
import { playDays } from '../../src/demo/play/play-days.js';
import { readTruth, type DemoTruth } from '../../src/demo/truth.js';
import { journalHeadOf } from '../../src/journal/journal-entries.js';
import { readConfig, type Config } from '../../src/platform/config.js';
import type { Databases } from '../../src/platform/database/databases.js';
import { READER, type ReadFrom } from '../../src/platform/database/reading.js';
import { buildHouse, openGround } from '../../src/start-house.js';
import { hastenWrites } from './house.js';
import { forgetMade, madeOnce, nameOfDemo } from './made-demo.js';

/** A demo that was made, and the house opened on it. */
export interface DemoHouse {
  readonly app: NestFastifyApplication;
  readonly databases: Databases;
  readonly from: ReadFrom;
  readonly truth: DemoTruth;
  close(): Promise<void>;
}

let demoCount = 0;

/**
 * Opens the house on a demo of its own (SQLite, or on the server that TEST_DATABASE_URL names). The demo itself is made
 * once for a source state and copied.
 */
export async function aDemo(options: DemoOptions): Promise<DemoHouse> {
  const place = await copyOfDemo(options);
  const truth = readTruth(place.config.dataFolder);
  if (truth === null) throw new Error('the demo has no truth');
  const databases = await openGround(place.config);
  await hastenWrites(databases);
  const app = await buildHouse(place.config, databases, { clock: clockAfter(truth.endsAt) });
  return {
    app,
    databases,
    from: app.get<ReadFrom>(READER, { strict: false }),
    truth,
    close: async () => {
      await app.close();
      await databases.close();
      await place.remove();
    },
  };
}

/** The journal's head after the first hours of a demo. */
export async function headAfterHours(seed: number, hours: number): Promise<string | null> {
  const plan = planDemo({ days: 1, seed, size: 'usual' });
  const lived = liveThrough(plan);
  const until = instantOf(plan.from + hours * 60);
  const acts = lived.acts.filter(({ at }) => at < until);
  const place = await freshPlace();
  const databases = await openGround(place.config);
  await hastenWrites(databases);
  const clock = new DemoClock(instantOf(plan.from - 1440));
  const app = await buildHouse(place.config, databases, { clock, ids: new DemoIds(clock, seed) });
  const hand = await playDays(app, clock, { plan, lived: { ...lived, acts } });
  const head = await journalHeadOf(hand.reader, hand.plant.siteId);
  await app.close();
  await databases.close();
  await place.remove();
  return head;
}

/** A fresh database with the demo in it. */
export async function copyOfDemo(options: DemoOptions): Promise<Place> {
  const server = process.env['TEST_DATABASE_URL'] ?? '';
  const name = nameOfDemo(options, server === '' ? 'sqlite' : 'postgres');
  const template = server === '' ? null : `packthread_made_${name}`;
  if (template !== null && !(await hasDatabase(server, template))) forgetMade(name);
  const made = await madeOnce(name, async (folder) => {
    if (template !== null) await forgetTemplates(server);
    const database = template === null ? null : await freshDatabase(server, template);
    await makeDemo(configOf(folder, database), options);
  });
  demoCount += 1;
  const dataFolder = mkdtempSync(join(tmpdir(), 'packthread-demo-'));
  cpSync(made, dataFolder, { recursive: true });
  if (template === null) return placeOf(dataFolder, null, null);
  const copy = `packthread_demo_${process.pid}_${demoCount}`;
  await atServer(server, `CREATE DATABASE "${copy}" TEMPLATE "${template}"`);
  await atServer(server, `ALTER DATABASE "${copy}" SET synchronous_commit = off`);
  return placeOf(dataFolder, addressOf(server, copy), copy);
}

async function hasDatabase(server: string, name: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  try {
    const found = await client.query('SELECT 1 FROM pg_database WHERE datname = $1', [name]);
    return found.rows.length > 0;
  } finally {
    await client.end();
  }
}

/** Demos of other source states that were left on the server. */
async function forgetTemplates(server: string): Promise<void> {
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  try {
    const found = await client.query<{ name: string }>(
      `SELECT datname AS name FROM pg_database WHERE datname LIKE 'packthread_made_%'`,
    );
    for (const { name } of found.rows) await client.query(`DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
  } finally {
    await client.end();
  }
}

/** Where a demo lies. */
export interface Place {
  readonly config: Config;
  remove(): Promise<void>;
}

async function freshPlace(): Promise<Place> {
  demoCount += 1;
  const dataFolder = mkdtempSync(join(tmpdir(), 'packthread-demo-'));
  const server = process.env['TEST_DATABASE_URL'] ?? '';
  const name = `packthread_demo_${process.pid}_${demoCount}`;
  if (server === '') return placeOf(dataFolder, null, null);
  return placeOf(dataFolder, await freshDatabase(server, name), name);
}

function placeOf(dataFolder: string, address: string | null, name: string | null): Place {
  return {
    config: configOf(dataFolder, address),
    remove: async () => {
      rmSync(dataFolder, { recursive: true, force: true });
      const server = process.env['TEST_DATABASE_URL'] ?? '';
      if (name !== null) await atServer(server, `DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
    },
  };
}

function configOf(dataFolder: string, database: string | null): Config {
  const settings = { DATA_FOLDER: dataFolder, LOG_LEVEL: 'silent', REQUESTS_PER_MINUTE: '1000000' };
  return readConfig(database === null ? settings : { ...settings, DATABASE_URL: database });
}

async function freshDatabase(server: string, name: string): Promise<string> {
  await atServer(server, `CREATE DATABASE "${name}" LC_COLLATE 'C' LC_CTYPE 'C' TEMPLATE template0`);
  // A test's database is thrown away: nothing of it has to be on disk.
  await atServer(server, `ALTER DATABASE "${name}" SET synchronous_commit = off`);
  return addressOf(server, name);
}

function addressOf(server: string, name: string): string {
  const address = new URL(server);
  address.pathname = `/${name}`;
  return address.toString();
}

async function atServer(server: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
