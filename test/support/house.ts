import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import pg from 'pg';
import type { Asked } from '../../src/journal/entry-draft.js';
import type { Actor, Role } from '../../src/platform/actor.js';
import { Clock, shifted, type Instant } from '../../src/platform/clock.js';
import { readConfig, type Config } from '../../src/platform/config.js';
import type { Databases } from '../../src/platform/database/databases.js';
import { SystemIds } from '../../src/platform/ids.js';
import { buildHouse, openGround } from '../../src/start-house.js';

/** A clock that stands still until it is moved. */
export class StillClock extends Clock {
  private at: Instant;

  constructor(at: Instant) {
    super();
    this.at = at;
  }

  now(): Instant {
    return this.at;
  }

  set(at: Instant): void {
    this.at = at;
  }

  pass(minutes: number): void {
    this.at = shifted(this.at, minutes * 60_000);
  }
}

/** The whole house on a fresh database of its own, without a listening port. */
export interface TestHouse {
  readonly app: NestFastifyApplication;
  readonly databases: Databases;
  readonly clock: StillClock;
  readonly config: Config;
  get<Kind>(kind: abstract new (...args: never[]) => Kind): Kind;
  close(): Promise<void>;
}

/** Where the suite runs: SQLite files, or PostgreSQL when TEST_DATABASE_URL names a server (its last part is replaced). */
const serverUrl = process.env['TEST_DATABASE_URL'] || null;

export async function openHouse(settings: Readonly<Record<string, string>> = {}): Promise<TestHouse> {
  const place = await freshPlace();
  const house = await openHouseAt(place, { settings });
  return {
    ...house,
    close: async () => {
      await house.close();
      await place.remove();
    },
  };
}

/** The house on a database that stays when the house is closed. */
export async function openHouseAt(
  place: Place,
  {
    settings = {},
    at = '2026-03-12T06:00:00.000Z',
  }: { readonly settings?: Readonly<Record<string, string>>; readonly at?: Instant },
): Promise<TestHouse> {
  const config = readConfig({
    LOG_LEVEL: 'silent',
    REQUESTS_PER_MINUTE: '1000000',
    DATA_FOLDER: place.dataFolder,
    ...(place.databaseUrl === null ? {} : { DATABASE_URL: place.databaseUrl }),
    ...settings,
  });
  const databases = await openGround(config);
  await hastenWrites(databases);
  const clock = new StillClock(at);
  const app = await buildHouse(config, databases, { clock, ids: new SystemIds() });
  return {
    app,
    databases,
    clock,
    config,
    get: (kind) => app.get(kind as never, { strict: false }),
    close: async () => {
      await app.close();
      await databases.close();
    },
  };
}

/** A test's database is thrown away: nothing of it has to be on disk. What lasts through a power cut, a server process shows. */
export async function hastenWrites({ kind, writer }: Databases): Promise<void> {
  if (kind === 'sqlite') await writer.query('PRAGMA synchronous = OFF');
}

/** Where a fresh, migrated database lies. */
export interface Place {
  readonly dataFolder: string;
  readonly databaseUrl: string | null;
  remove(): Promise<void>;
}

/** A fresh database of its own, migrated and empty. */
export function freshPlace(): Promise<Place> {
  return serverUrl === null ? freshFile() : freshDatabase(serverUrl);
}

/** An empty database without any table yet. */
export async function barePlace(): Promise<Place> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'packthread-bare-'));
  if (serverUrl === null) {
    return {
      dataFolder,
      databaseUrl: null,
      remove: async () => {
        rmSync(dataFolder, { recursive: true, force: true });
      },
    };
  }
  databaseCount += 1;
  const name = `packthread_bare_${process.pid}_${databaseCount}`;
  await atServer(serverUrl, `CREATE DATABASE "${name}" LC_COLLATE 'C' LC_CTYPE 'C' TEMPLATE template0`);
  return {
    dataFolder,
    databaseUrl: databaseAt(serverUrl, name),
    remove: async () => {
      await atServer(serverUrl, `DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

/** Migrates once in the process and copies the file: a fresh database costs milliseconds. */
let migratedFolder: Promise<string> | null = null;

async function freshFile(): Promise<Place> {
  migratedFolder ??= migrateOnce();
  const dataFolder = mkdtempSync(join(tmpdir(), 'packthread-test-'));
  cpSync(await migratedFolder, dataFolder, { recursive: true });
  return {
    dataFolder,
    databaseUrl: null,
    remove: async () => {
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

async function migrateOnce(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'packthread-migrated-'));
  const databases = await openGround(readConfig({ DATA_FOLDER: folder }));
  await databases.close();
  process.on('exit', () => {
    if (existsSync(folder)) rmSync(folder, { recursive: true, force: true });
  });
  return folder;
}

/** One migrated template database a process, copied for each house. */
let template: Promise<string> | null = null;
let databaseCount = 0;

async function freshDatabase(url: string): Promise<Place> {
  template ??= migrateTemplate(url);
  const from = await template;
  databaseCount += 1;
  const name = `packthread_test_${process.pid}_${databaseCount}`;
  await atServer(url, `CREATE DATABASE "${name}" TEMPLATE "${from}"`);
  const dataFolder = mkdtempSync(join(tmpdir(), 'packthread-test-'));
  mkdirSync(dataFolder, { recursive: true });
  return {
    dataFolder,
    databaseUrl: databaseAt(url, name),
    remove: async () => {
      await atServer(url, `DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

async function migrateTemplate(url: string): Promise<string> {
  const name = `packthread_template_${process.pid}`;
  await atServer(url, `DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
  await atServer(url, `CREATE DATABASE "${name}" LC_COLLATE 'C' LC_CTYPE 'C' TEMPLATE template0`);
  const databases = await openGround(readConfig({ DATABASE_URL: databaseAt(url, name) }));
  await databases.close();
  return name;
}

function databaseAt(url: string, name: string): string {
  const address = new URL(url);
  address.pathname = `/${name}`;
  return address.toString();
}

async function atServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: databaseAt(url, 'postgres') });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

let askedCount = 0;

/** Somebody asks for a change, each time with a new key unless one is given. */
export function asking(actor: Actor, key?: string): Asked {
  askedCount += 1;
  return { actor, route: 'TEST', key: key ?? `test-key-${askedCount}`, seen: null };
}

/** An actor of a site with these roles. */
export function anActor(siteId: string, ...roles: Role[]): Actor {
  return { siteId, personId: '00000000-0000-7000-8000-000000000001', deviceId: null, roles };
}
