import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { sha256 } from '../src/platform/canonical-text.js';
import { readTruth } from '../src/demo/truth.js';
import { clockAfter } from '../src/demo/demo-clock.js';
import type { Databases } from '../src/platform/database/databases.js';
import { buildHouse, openGround } from '../src/start-house.js';
import { copyOfDemo, type Place } from './support/a-demo.js';
import { demoPerson } from './support/a-served-demo.js';
import { settingsOf, signInAs, type ServerSession } from './support/first-sign-in.js';
import { mainFile, startServer, type RunningServer } from './support/server.js';

/** What is asked of the house as modules, and of the one file that `npm start` starts, over the same demo. */
interface Answers {
  readonly description: string;
  /** Status, kind and hash of each kind of paper, and of one that is marked as a copy. */
  readonly papers: readonly string[];
  /** Without the moment at which it was read. */
  readonly thread: string;
  /** Addresses of style sheet and scripts: they hold the hash of what lies beside the modules. */
  readonly assets: readonly string[];
  /** What is said of an address that is none. */
  readonly refusal: string;
  /** What a form put together from others answers, as it is sent by hand: all is well with it but the hold. */
  readonly mixedForm: string;
}

let place: Place;
let server: RunningServer | null = null;
let asModules: Answers;
let asOneFile: Answers;

beforeAll(async () => {
  place = await copyOfDemo({ days: 2, seed: 1, size: 'usual' });
  const truth = readTruth(place.config.dataFolder);
  if (truth === null) throw new Error('the demo has no truth');
  const databases = await openGround(place.config);
  const house = await buildHouse(place.config, databases, { clock: clockAfter(truth.endsAt) });
  await house.listen(0, '127.0.0.1');
  asModules = await answersOf(await house.getUrl());
  await house.close();
  await forgetFiles(databases);
  await databases.close();
  server = await startServer(settingsOf(place.config));
  asOneFile = await answersOf(server.address);
}, 300_000);

afterAll(async () => {
  await server?.kill();
  await place.remove();
});

/** What was drawn is drawn anew by whoever is asked next. */
async function forgetFiles({ writer, kind }: Databases): Promise<void> {
  const forget = 'DELETE FROM "paper_file"';
  if (kind === 'postgres') {
    await writer.query(`SET session_replication_role = replica; ${forget}; SET session_replication_role = DEFAULT`);
    return;
  }
  const guard = 'paper_file_no_delete';
  const rows = await writer.sql<{ sql: string }[]>`SELECT "sql" FROM "sqlite_master" WHERE "name" = ${guard}`;
  const [again] = rows.map(({ sql }) => sql);
  for (const statement of [`DROP TRIGGER "${guard}"`, forget, again ?? '']) await writer.query(statement);
}

async function answersOf(address: string): Promise<Answers> {
  const officer = demoPerson('agnes');
  const session = await signInAs(address, officer);
  const ask = (path: string): Promise<Response> => fetch(address + path, { headers: { Cookie: session.cookie } });
  const items = async <Row>(path: string): Promise<readonly Row[]> =>
    ((await (await ask(path)).json()) as { items: readonly Row[] }).items;
  const known = await items<{ id: string; kind: string }>('/api/papers?limit=200');
  const oneOfEach = [...new Map(known.map(({ id, kind }) => [kind, id]))];
  const papers: string[] = [];
  for (const [kind, id] of oneOfEach) {
    const answer = await ask(`/papers/${id}/file`);
    const bytes = Buffer.from(await answer.arrayBuffer());
    papers.push(`${answer.status} ${kind} ${bytes.subarray(0, 5).toString()} ${sha256(bytes)}`);
  }
  const [first] = oneOfEach;
  papers.push(`copy: ${(await ask(`/papers/${first?.[1] ?? ''}/copy`)).status}`);
  const runs = await items<{ number: string; closedAt: string | null }>('/api/runs');
  const closed = runs.find(({ closedAt }) => closedAt !== null);
  const thread = await (await ask(`/api/thread?code=${closed?.number ?? ''}`)).text();
  const page = await (await ask('/thread')).text();
  return {
    description: await (await ask('/api/openapi.json')).text(),
    papers,
    thread: thread.replace(/"readAt":"[^"]*"/, '"readAt":""'),
    assets: [...new Set(page.match(/\/assets\/[\w./-]+/g))],
    refusal: await (await ask('/api/nothing')).text(),
    mixedForm: await narrowed(address, session, officer.password),
  };
}

async function narrowed(address: string, session: ServerSession, password: string): Promise<string> {
  const written = { fromAt: '2026-03-12T07:41:03Z', untilAt: '2026-03-12T07:51:03Z', run: '', assessment: '' };
  const form = { hold: 'H-2026-009999', reason: ' The sieve was whole ', password, ...written };
  const answer = await session.post(address, '/api/hold-narrowings', form);
  return `${answer.status} ${await answer.text()}`;
}

describe('the one file that npm start starts', () => {
  it('describes its routes in the words of the modules', () => {
    expect(asModules.description.length).toBeGreaterThan(100_000);
    expect(asOneFile.description).toBe(asModules.description);
  });

  it('draws the papers of the house to the byte, in the server and in the thread beside it', () => {
    expect(asModules.papers.map((paper) => paper.split(' ').slice(0, 3).join(' ')).sort()).toEqual([
      '200 delivery-note %PDF-',
      '200 pallet-label %PDF-',
      '200 paper-form %PDF-',
      '200 recall-report %PDF-',
      'copy: 200',
    ]);
    expect(asOneFile.papers).toEqual(asModules.papers);
  });

  it('follows a run as the modules do', () => {
    expect(JSON.parse(asModules.thread)).toMatchObject({ thread: { subject: { kind: 'packing-run' } } });
    expect(asOneFile.thread).toBe(asModules.thread);
  });

  it('reads a form that is put together from others', () => {
    expect(asModules.mixedForm).toMatch(/^404 .*H-2026-009999/);
    expect(asOneFile.mixedForm).toBe(asModules.mixedForm);
  });

  it('is as strict as the modules are', () => {
    expect(readFileSync(mainFile, 'utf8').startsWith('"use strict";')).toBe(true);
  });

  it('finds style sheet, scripts and sentences where they lie', () => {
    expect(asModules.assets).toHaveLength(4);
    expect(asOneFile.assets).toEqual(asModules.assets);
    expect(asModules.refusal).toContain('There is no such page here.');
    expect(asOneFile.refusal).toBe(asModules.refusal);
  });
});
