import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { TipBag } from '../../hopper/tip-bag.js';
import { StartRun } from '../../hopper/start-run.js';
import { ChangeCode } from '../../packing/change-code.js';
import { CloseRun } from '../../packing/close-run.js';
import { FitFilm } from '../../packing/fit-film.js';
import { EnrolDevice } from '../../people/enrol-device.js';
import { GiveBadge } from '../../people/give-badge.js';
import { openPointsOf } from '../../open-points/open-points.js';
import { SetPaperLanguage } from '../../plant/set-paper-language.js';
import { readerOf } from '../../../test/support/a-bag.js';
import {
  aPerson,
  cookieFrom,
  signedIn,
  withSession,
  type SignedInPerson,
  type TestPerson,
} from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { packsCounted } from '../../../test/support/a-run.js';
import { aProvenEmpty, aReleasedBag, aStartedRun, aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';

let house: TestHouse;
let plant: Plant;
let lead: TestPerson;
let other: TestPerson;
let at: SignedInPerson;
let line: string;

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  lead = await aPerson(house, plant.siteId, { name: 'A. Lead' });
  other = await aPerson(house, plant.siteId, { name: 'B. Next' });
  at = await signedIn(house, lead);
  line = `/line/${plant.lineIds[0]}`;
});

afterEach(() => house.close());

const textOf = (html: string): string => html.replaceAll(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');

async function causes(): Promise<readonly string[]> {
  const points = await openPointsOf(readerOf(house), plant.siteId, { state: 'open', limit: 50 });
  return points.map(({ cause }) => cause);
}

async function aRunningLine(): Promise<string> {
  await aTippedBag(house, plant);
  const run = await aStartedRun(house, plant);
  house.clock.pass(90);
  await packsCounted(house, plant, run.id, 200);
  return run.number;
}

async function refusal(path: string, fields: Record<string, string>): Promise<string> {
  const answer = await at.send(path, fields);
  expect(answer.status).toBe(409);
  return textOf(answer.text);
}

describe('the handover of a line', () => {
  it('is signed by both on the same tablet, the incoming lead by badge, and the first session goes on', async () => {
    await aRunningLine();
    const admin = asking(plant.actor);
    const { token } = await house.get(EnrolDevice).execute(admin, { code: 'tablet-1', kind: 'shared-tablet' });
    const { badge } = await house.get(GiveBadge).execute(asking(plant.actor), lead.personId);
    const { badge: next } = await house.get(GiveBadge).execute(asking(plant.actor), other.personId);
    const device = `packthread-device=${token ?? ''}`;
    const begun = await request(house.app.getHttpServer())
      .post('/api/sessions')
      .set('Cookie', device)
      .send({ proof: 'badge', badge });
    const { csrfToken } = begun.body as { csrfToken: string };
    const tablet = withSession(house, `${cookieFrom(begun.headers, 'packthread-session')}; ${device}`, csrfToken);
    const page = textOf((await tablet.get(`${line}/handover`)).text);
    for (const head of ['In the hopper', 'Not finished', 'Not allowed', 'Does it add up?', 'Due next']) {
      expect(page).toContain(head);
    }
    const own = await tablet.send(`${line}/handover`, { loosePackCount: '12', badge: badge ?? '' });
    expect([own.status, textOf(own.text)]).toEqual([409, expect.stringContaining('must be somebody else')]);
    const wrong = await tablet.send(`${line}/handover`, { loosePackCount: '12', badge: 'A'.repeat(26) });
    expect([wrong.status, textOf(wrong.text)]).toEqual([409, expect.stringContaining('proves nobody')]);
    const signed = await tablet.send(`${line}/handover`, { loosePackCount: '12', badge: next ?? '' });
    expect(signed.status).toBe(303);
    const paper = textOf((await tablet.get(String(signed.headers['location']))).text);
    for (const part of ['A. Lead', 'B. Next', '200 packs', '12 packs lie loose']) expect(paper).toContain(part);
    expect(await causes()).not.toContain('handover-not-confirmed');
    const again = await tablet.send(`${line}/handover`, { loosePackCount: '12', badge: next ?? '' });
    expect(textOf(again.text)).toContain('was handed over at');
  });

  it('asks for the loose packs while a run is open', async () => {
    await aRunningLine();
    const answer = await at.send(`${line}/handover`, { alone: 'true' });
    expect([answer.status, textOf(answer.text)]).toEqual([422, expect.stringContaining('This is missing')]);
  });

  it('signed alone stays open until somebody else opens the line, who may not agree', async () => {
    await aRunningLine();
    const signed = await at.send(`${line}/handover`, { alone: 'true', loosePackCount: '0' });
    expect(signed.status).toBe(303);
    const path = String(signed.headers['location']);
    expect((await at.get(path)).text).not.toContain('for=paper');
    await house.get(SetPaperLanguage).forSite(asking(plant.actor), { paperLanguage: 'es' });
    expect((await at.get(path)).text).toContain(`href="${path}?for=paper"`);
    expect(textOf((await at.get(`${path}?for=paper`)).text)).toContain('En la tolva');
    expect(await causes()).toContain('handover-not-confirmed');
    expect(await refusal(path, {})).toContain('You handed line 1 over yourself');
    const incoming = await signedIn(house, other);
    expect(textOf((await incoming.get(line)).text)).toContain('A. Lead handed this line over alone');
    const answered = await incoming.send(path, { disagreement: 'The reject bin is full' });
    expect(answered.status).toBe(303);
    expect(await causes()).toEqual(expect.arrayContaining(['handover-not-agreed']));
    expect(await causes()).not.toContain('handover-not-confirmed');
    const twice = await incoming.send(path, {});
    expect([twice.status, textOf(twice.text)]).toEqual([409, expect.stringContaining('taken over already')]);
  });
});

describe('undoing one’s own last entry', () => {
  async function aTipAtTheLine(): Promise<string> {
    const bag = await aReleasedBag(house, plant);
    expect((await at.send(`${line}/tips`, { bag: bag.number, isOff: 'true' })).status).toBe(303);
    return bag.number;
  }

  async function shown(): Promise<string> {
    const { text } = await at.get(`${line}/undo`);
    return /name="sequence" value="(\d+)"/.exec(text)?.[1] ?? '';
  }

  it('asks whether sugar went in: if it did, the entry stays', async () => {
    const bag = await aTipAtTheLine();
    expect(textOf((await at.get(`${line}/undo`)).text)).toContain('Did sugar go in?');
    expect((await at.send(`${line}/undo`, { sequence: await shown(), happened: 'yes' })).status).toBe(303);
    expect(textOf((await at.get(`${line}?scan=${bag}`)).text)).toContain('TIPPED ALREADY');
  });

  it('voids it as did not occur where no sugar went in, and the bag is full again', async () => {
    const bag = await aTipAtTheLine();
    expect((await at.send(`${line}/undo`, { sequence: await shown(), happened: 'no' })).status).toBe(303);
    expect(textOf((await at.get(`${line}?scan=${bag}`)).text)).toContain('TIP WHOLE');
    expect(textOf((await at.get(`${line}/undo`)).text)).toContain('was a correction itself');
  });

  it('is refused after ten minutes, and where another entry came since', async () => {
    await aTipAtTheLine();
    const sequence = await shown();
    await aTipAtTheLine();
    expect(await refusal(`${line}/undo`, { sequence, happened: 'no' })).toContain('Another entry came meanwhile');
    house.clock.pass(11);
    expect(textOf((await at.get(`${line}/undo`)).text)).toContain('within the last 10 minutes');
  });

  it('undoes a stop, a removal and a count by their own corrections', async () => {
    const run = await aRunningLine();
    const acts: readonly (readonly [string, Record<string, string>])[] = [
      [`${line}/stops`, { run, stopReason: 'jam' }],
      [`${line}/removals`, { kind: 'reject', packCount: '3', removalReason: 'seal', fate: 'waste' }],
      [`${line}/count`, { packCount: '260' }],
    ];
    for (const [path, fields] of acts) {
      house.clock.pass(1);
      expect((await at.send(path, fields)).status).toBe(303);
      expect((await at.send(`${line}/undo`, { sequence: await shown(), happened: 'no' })).status).toBe(303);
    }
    const rows = await readerOf(house).sql<{ voids: number | string }>`
      SELECT (SELECT COUNT(*) FROM "line_stop" WHERE "voided_by" IS NOT NULL)
        + (SELECT COUNT(*) FROM "removal" WHERE "voided_by" IS NOT NULL)
        + (SELECT COUNT(*) FROM "pack_count" WHERE "voided_by" IS NOT NULL) AS "voids"`;
    expect(Number(rows[0]?.voids)).toBe(3);
  });

  it('says what to do about an entry that has no such way back', async () => {
    await aTipAtTheLine();
    expect((await at.send(`${line}/level/seen`, { how: 'probe', lowerGrams: '900', upperGrams: '1100' })).status).toBe(
      303,
    );
    expect(textOf((await at.get(`${line}/undo`)).text)).toContain('on the page of the thing itself');
  });
});

describe('the ladder of a changeover', () => {
  async function opened(): Promise<string> {
    await aRunningLine();
    expect((await at.send(`${line}/changeover`, { formatId: plant.otherFormatId })).status).toBe(303);
    const { text } = await at.get(`${line}/changeover`);
    return /changeover\/([\w-]{36})\/rungs/.exec(text)?.[1] ?? '';
  }

  it('takes the five rungs in their order, each with its proof, and holds the next run back until the fourth', async () => {
    const id = await opened();
    const rungs = `${line}/changeover/${id}/rungs`;
    expect(await refusal(`${line}/changeover`, { formatId: plant.otherFormatId })).toContain('being changed over');
    expect(await refusal(rungs, { rung: 'hopper-empty' })).toContain('No rung can be skipped');
    expect(await refusal(rungs, { rung: 'last-pack-out' })).toContain('is open still');
    const run = (await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "packing_run"`)[0]?.id ?? '';
    await house.get(CloseRun).execute(asking(plant.actor), run, { packCount: 490, loosePackCount: 0 });
    expect((await at.send(rungs, { rung: 'last-pack-out' })).status).toBe(303);
    const start = { lineId: plant.lineIds[0], formatId: plant.otherFormatId };
    await expect(house.get(StartRun).execute(asking(plant.actor), start)).rejects.toMatchObject({
      code: 'changeover-not-finished',
      facts: { next: 'hopper-empty', place: 2 },
    });
    expect(await refusal(rungs, { rung: 'hopper-empty' })).toContain('was not proven empty');
    house.clock.pass(5);
    await aProvenEmpty(house, plant, { happened: true });
    expect((await at.send(rungs, { rung: 'hopper-empty' })).status).toBe(303);
    expect(await refusal(rungs, { rung: 'reject-bin-closed', bin: 'RB-2026-000099' })).toContain(
      'There is no closed bin',
    );
    expect((await at.send(rungs, { rung: 'reject-bin-closed' })).status).toBe(422);
    expect((await at.send(rungs, { rung: 'reject-bin-closed', note: 'was empty' })).status).toBe(303);
    expect((await at.send(rungs, { rung: 'film-back' })).status).toBe(422);
    expect((await at.send(rungs, { rung: 'film-back', count: '2' })).status).toBe(303);
    const proof = { code: other.code, password: other.password };
    expect(await refusal(rungs, { rung: 'code-checked', ...proof })).toContain('No run of Brown sugar');
    const begun = await house.get(StartRun).execute(asking(plant.actor), start);
    expect(await refusal(rungs, { rung: 'code-checked', ...proof })).toContain('No film was recorded');
    const film = { film: 'F-1', kind: 'film', supplierCode: 'FS', packCount: 0 } as const;
    await house.get(FitFilm).execute(asking(plant.actor), begun.id, film);
    expect(await refusal(rungs, { rung: 'code-checked', ...proof })).toContain('No code was recorded');
    await house.get(ChangeCode).execute(asking(plant.actor), begun.id, { code: 'L6071A1', packCount: 0 });
    expect(await refusal(rungs, { rung: 'code-checked' })).toContain('The second person shows');
    expect((await at.send(rungs, { rung: 'code-checked', ...proof })).status).toBe(303);
    expect(textOf((await at.get(`${line}/changeover`)).text)).toContain('What comes next?');
  });

  it('is not begun where nothing was packed, nor to the same format; and may be dropped with a reason', async () => {
    expect(await refusal(`${line}/changeover`, { formatId: plant.formatId })).toContain('has packed nothing yet');
    const id = await opened();
    const dropped = await at.send(`${line}/changeover/${id}/drop`, { reason: 'the plan was changed' });
    expect(dropped.status).toBe(303);
    expect(await refusal(`${line}/changeover`, { formatId: plant.formatId })).toContain(
      'packs White sugar 2 kg already',
    );
  });
});

describe('a tip said to be in already', () => {
  it('is refused by its own name where nobody was refused before', async () => {
    const bag = await aReleasedBag(house, plant);
    const form = { bag: bag.number, hopperId: plant.hopperId, alreadyIn: true, isOff: true };
    await expect(house.get(TipBag).execute(asking(plant.actor), form)).rejects.toMatchObject({
      code: 'no-refusal-met',
    });
  });
});
