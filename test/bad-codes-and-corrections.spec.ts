import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { countsOf, removalsOfRun } from '../src/packing/packing-runs.js';
import { FitFilm } from '../src/packing/fit-film.js';
import { RemoveSugar } from '../src/packing/remove-sugar.js';
import { weighingsOf } from '../src/drying/bag-weighings.js';
import { readerOf } from './support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { aProvenEmpty, aTippedBag } from './support/a-tip.js';
import { asking, openHouse, type TestHouse } from './support/house.js';
import { hiddenFields, pageText } from './support/page-text.js';
import { threePallets, type ThreePallets } from './support/three-pallets.js';

/** Bad input that names real things: pages and JSON say clearly what is wrong, and the journal stays where it was. */
let house: TestHouse;
let plant: Plant;
let made: ThreePallets;
let person: SignedInPerson;
let before: unknown;
/** What may be corrected, by the last part of its page and its JSON route. */
let records: Readonly<Record<string, { readonly page: string; readonly json: string; readonly right: object }>>;

const head = () => readerOf(house).sql`SELECT "site_id", "sequence", "hash" FROM "journal_head"`;
const ok = { reason: 'looked again' };

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  let [periodId, filmUseId] = ['', ''];
  const actor = () => asking(plant.actor);
  made = await threePallets(house, plant, async () => {
    const [run] = await readerOf(house).sql<{ id: string }>`SELECT "id" FROM "packing_run"`;
    const film = { film: 'F-1', kind: 'film', name: 'roll', supplierCode: 'S-1', packCount: 100 } as const;
    filmUseId = (await house.get(FitFilm).execute(actor(), run?.id ?? '', film)).id;
    const swept = { kind: 'sweepings', lineId: plant.lineIds[0], netGrams: 30_000, scaleId: plant.scaleId } as const;
    await house.get(RemoveSugar).execute(actor(), { ...swept, removalReason: 'floor', fate: 'waste' });
    periodId = (await aProvenEmpty(house, plant, { happened: true })).endedPeriodId;
    await aTippedBag(house, plant, { netGrams: 1_000_000 });
  });
  const reader = readerOf(house);
  const [removal] = await removalsOfRun(reader, made.runId);
  const [weighing] = await weighingsOf(reader, made.firstBag);
  const count = (await countsOf(reader, [made.runId])).find(({ packCount }) => packCount === 200);
  const [code] = await reader.sql<{ id: string }>`SELECT "id" FROM "coder_change"`;
  const at = made.startedAt;
  records = {
    tip: {
      page: `/tips/${made.firstTip}/correct`,
      json: `/api/tips/${made.firstTip}/corrections`,
      right: { openedAt: at },
    },
    count: {
      page: `/counts/${count?.id}/correct`,
      json: `/api/counts/${count?.id}/correction`,
      right: { packCount: 201 },
    },
    film: {
      page: `/film-uses/${filmUseId}/correct`,
      json: `/api/film-uses/${filmUseId}/correction`,
      right: { packCount: 101 },
    },
    code: { page: `/codes/${code?.id}/correct`, json: `/api/codes/${code?.id}/correction`, right: { code: 'L6071A9' } },
    removal: {
      page: `/removals/${removal?.id}/correct`,
      json: `/api/removals/${removal?.id}/correction`,
      right: { packCount: 3 },
    },
    weighing: {
      page: `/bag-weighings/${weighing?.id}/correct`,
      json: `/api/bag-weighings/${weighing?.id}/correction`,
      right: { weighedAt: at },
    },
    empty: {
      page: `/hopper-periods/${periodId}/correct-empty`,
      json: `/api/hopper-periods/${periodId}/empty/correction`,
      right: { provenAt: at },
    },
  };
  person = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer', 'line-lead'] }));
});
afterAll(() => house.close());
beforeEach(async () => {
  before = await head();
});
afterEach(async () => {
  expect(await head()).toEqual(before);
});

const recordOf = (name: string) => records[name] ?? { page: '', json: '', right: {} };
const asFields = (form: object): Record<string, string> =>
  Object.fromEntries(Object.entries(form).map(([name, value]) => [name, String(value)]));

describe('a code', () => {
  it.each(['X999999', '095201230000009999', '?????', 'B9999999', 'L6071A1 25:99', 'L6071A1 9:75'])(
    'that nothing carries, or with a time that no clock shows, is said to be none: %s',
    async (code) => {
      const asked = encodeURIComponent(code);
      const json = await person.get(`/api/thread?code=${asked}`);
      expect([404, 422]).toContain(json.status);
      const page = await person.get(`/thread?code=${asked}`);
      expect(page.status).toBeLessThan(500);
      expect(pageText(page.text)).not.toContain('Where the sugar came from');
      expect(pageText((await person.get(`/quality/recalls/new?code=${asked}`)).text)).not.toContain(
        'Open it and start',
      );
      expect((await person.get(`/quality/holds/new?code=${asked}`)).status).toBeLessThan(500);
    },
  );

  it('of which a half is left is followed where one lot alone has it, and says that it fits by a part', async () => {
    const json = await person.get('/api/thread?code=L6071');
    expect(json).toMatchObject({
      ...{ status: 200, body: { fits: [{ code: 'fits-begins' }], thread: { subject: { name: 'L6071A1' } } } },
    });
    expect(pageText((await person.get('/thread?code=L6071')).text)).toContain('its code begins so');
  });
});

describe('a time', () => {
  const line = () => `packing-shift:${plant.lineIds[0]}`;

  it('that the plant’s clocks did not show, or of which the end comes first, places no hold and opens no recall', async () => {
    const hold = { kind: 'packing-shift', id: plant.lineIds[0], reason: 'test' };
    const turned = { fromAt: '2026-03-12T10:00:00.000Z', untilAt: '2026-03-12T09:00:00.000Z' };
    expect(await person.post('/api/holds', { ...hold, ...turned })).toMatchObject({
      ...{ status: 409, body: { type: 'problem:hold-times-not-usable' } },
    });
    expect((await person.post('/api/holds', { ...hold, fromAt: '2026-02-30T10:00:00.000Z' })).status).toBe(422);
    expect((await person.send('/quality/holds/new', { ...asFields(hold), ...turned })).status).toBe(409);
    const scope = { scopeKind: 'packing-shift', scopeId: plant.lineIds[0] };
    const recall = { kind: 'exercise', hazard: 'safety', reason: 'test' };
    expect(await person.post('/api/recalls', { ...recall, scopes: [{ ...scope, ...turned }] })).toMatchObject({
      ...{ status: 409, body: { type: 'problem:recall-time-not-usable' } },
    });
    const never = `/quality/recalls/new?look=yes&place=${line()}&fromAt=2026-03-29T02:30`;
    expect(pageText((await person.get(never)).text)).toContain('did not show this time');
  });

  it('that is still to come corrects nothing', async () => {
    const ahead = '2026-12-31T10:00:00.000Z';
    for (const [name, field] of [
      ['tip', 'openedAt'],
      ['code', 'changedAt'],
      ['removal', 'removedAt'],
      ['empty', 'provenAt'],
    ] as const) {
      const form = { why: 'incorrect-data', [field]: ahead, ...ok };
      const json = await person.post(recordOf(name).json, form);
      expect([409, 422]).toContain(json.status);
      const page = await person.send(recordOf(name).page, form);
      expect([409, 422]).toContain(page.status);
      expect(page.text).toContain('name="reason"');
    }
  });
});

describe('a recall', () => {
  it.each([
    ['nothing at all', []],
    ['a line that packed nothing', [{ scopeKind: 'packing-shift', line: 1 }]],
  ])('of %s is not opened', async (_, wanted) => {
    const scopes = wanted.map(({ scopeKind, line }) => ({
      ...{ scopeKind, scopeId: plant.lineIds[line as 1], fromAt: made.startedAt },
    }));
    const recall = { kind: 'exercise', hazard: 'safety', reason: 'test' };
    const json = await person.post('/api/recalls', { ...recall, scopes });
    expect([409, 422]).toContain(json.status);
    const keys = scopes.map(({ scopeKind, scopeId, fromAt }) => `${scopeKind}:${scopeId}:${fromAt}`).join('');
    const page = await person.send('/quality/recalls/new', { ...recall, ...(keys === '' ? {} : { scopes: keys }) });
    expect([409, 422]).toContain(page.status);
  });
});

describe('a correction', () => {
  const names = ['tip', 'count', 'film', 'code', 'removal', 'weighing', 'empty'];

  it.each(names)('that says both that it did not happen and what is right is refused by field: %s', async (name) => {
    const { page, json, right } = recordOf(name);
    const form = { why: 'did-not-occur', ...right, ...ok };
    const [field] = Object.keys(right);
    for (const path of [json, `${json}/preview`]) {
      const answer = await person.post(path, form);
      expect(answer).toMatchObject({ status: 422, body: { type: 'problem:bad-form' } });
      expect(JSON.stringify(answer.body)).toContain(field);
    }
    const again = await person.send(page, asFields(form));
    expect(again.status).toBe(422);
    expect(pageText(again.text)).toContain('only one can be');
  });

  it.each(names)('that says nothing, or no reason, is refused: %s', async (name) => {
    const { page, json } = recordOf(name);
    for (const form of [{ why: 'incorrect-data', ...ok }, { why: 'did-not-occur' }, { why: 'perhaps', ...ok }]) {
      expect([409, 422]).toContain((await person.post(json, form)).status);
      const again = await person.send(page, asFields(form));
      expect([409, 422]).toContain(again.status);
      expect(again.text).toContain('name="reason"');
    }
  });

  it.each(names)('of a record that nobody knows is answered as such: %s', async (name) => {
    const { page, json, right } = recordOf(name);
    const unknown = (path: string): string => path.replace(/[0-9a-f-]{36}/, '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10');
    const form = { why: 'incorrect-data', ...right, ...ok };
    expect((await person.post(unknown(json), form)).status).toBe(404);
    expect((await person.get(unknown(page))).status).toBe(404);
    expect((await person.send(unknown(page), asFields(form))).status).toBe(404);
  });
});

describe('a correction of what was corrected', () => {
  it.each(['removal', 'weighing', 'film', 'code', 'count', 'tip'])(
    'is one of the record in its place; the old one is refused on its page and by JSON: %s',
    async (name) => {
      const { page, json } = recordOf(name);
      const right = {
        ...{ removal: { netGrams: 25 }, weighing: { grossGrams: 999 }, film: { packCount: 101 } },
        ...{ code: { code: 'L6071A8' }, count: { packCount: 199 }, tip: { openedAt: made.betweenAt } },
      }[name];
      const form = asFields({ why: 'incorrect-data', ...right, ...ok });
      const shown = await person.send(page, form);
      const done = shown.status === 200 ? await person.send(page, hiddenFields(shown.text)) : shown;
      expect([name, done.status]).toEqual([name, 303]);
      before = await head();
      const again = await person.send(page, form);
      expect(again.status).toBe(409);
      expect(pageText(again.text)).toContain('was corrected already');
      expect((await person.get(page)).status).toBe(409);
      for (const path of [json, `${json}/preview`]) {
        expect(await person.post(path, { why: 'did-not-occur', ...ok })).toMatchObject({
          ...{ status: 409, body: { type: 'problem:already-corrected' } },
        });
      }
    },
  );
});
