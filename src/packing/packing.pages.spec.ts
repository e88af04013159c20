import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPackScale, aRun } from '../../test/support/a-run.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { symbolsOf, textOf } from '../../test/support/read-pdf.js';

interface Answer {
  readonly status: number;
  readonly text: string;
  readonly body: Record<string, never>;
}

describe('packing over the wire', () => {
  let house: TestHouse;
  let plant: Plant;
  let lead: SignedInPerson;
  let auditor: SignedInPerson;
  let runId: string;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
    auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    ({ runId } = await aRun(house, plant));
  });

  afterAll(() => house.close());

  const posted = async (path: string, body: object) => (await lead.post(path, body)) as unknown as Answer;
  const got = async (path: string) => (await auditor.get(path)) as unknown as Answer;

  it('takes a shift from the first code to the close, and shows it to anyone who may read', async () => {
    const scaleId = await aPackScale(house, plant);
    const code = await posted(`/api/runs/${runId}/codes`, { code: 'L60711M 07:01', packCount: 0 });
    expect(code.status).toBe(201);
    const film = { film: 'F-88123', kind: 'film', supplierCode: 'FS-02', packCount: 0 };
    expect((await posted(`/api/runs/${runId}/films`, film)).status).toBe(201);
    house.clock.pass(30);
    expect((await posted(`/api/runs/${runId}/counts`, { packCount: 1500 })).body).toMatchObject({ packCount: 1500 });
    const sample = { run: runId, scaleId, netDecigrams: [20_010, 20_030, 19_990, 20_010] };
    expect((await posted('/api/hand-samples', sample)).status).toBe(201);
    const stop = await posted('/api/stops', { run: runId, stopReason: 'jam' });
    house.clock.pass(12);
    expect((await posted(`/api/stops/${String(stop.body['id'])}/restart`, {})).body).toMatchObject({ minutes: 12 });
    const reject = { kind: 'reject', lineId: plant.lineIds[0], packCount: 3, removalReason: 'torn', fate: 'rework' };
    expect((await posted('/api/removals', reject)).status).toBe(201);
    house.clock.pass(60);
    const close = { packCount: 4000, loosePackCount: 40 };
    expect((await posted(`/api/runs/${runId}/close`, close)).body).toMatchObject({ packsWithoutCode: 0 });

    const page = await got(`/runs/${runId}`);
    expect(page.status).toBe(200);
    for (const text of ['L60711M', 'F-88123', 'Mean net, measured', '2001.0 g', 'lock its energy out', 'jam']) {
      expect(page.text).toContain(text);
    }
    expect(page.text).toContain('1 to 4\u202f000');
    expect(page.text).not.toMatch(/style=|undefined|run-[a-z]+-[a-z]+<|\{\w+\}/);
    expect((await got('/runs')).text).toContain('PR-2026-000001');
    const lotId = String(code.body['lotId']);
    const lotPage = await got(`/lots/${lotId}`);
    expect(lotPage.text).toContain('/thread?code=L60711M');
    expect(lotPage.text).toContain('PR-2026-000001');
    const asLead = async (path: string) => ((await lead.get(path)) as unknown as Answer).text;
    expect(await asLead(`/runs/${runId}`)).toContain(`/quality/holds/new?kind=packing-run&amp;id=${runId}`);
    expect(await asLead(`/lots/${lotId}`)).toContain(`/quality/holds/new?kind=lot&amp;id=${lotId}`);
  });

  it('answers what it knows under /api', async () => {
    expect((await got('/api/runs')).body).toMatchObject({ items: [{ number: 'PR-2026-000001' }], next: null });
    expect((await got('/api/runs?limit=1')).body).toMatchObject({ next: runId });
    expect((await got(`/api/runs?limit=1&before=${runId}`)).body).toMatchObject({ items: [] });
    expect((await got(`/api/runs/${runId}`)).body).toMatchObject({
      lots: [{ toCount: 4000 }],
      loose: [{ packCount: 40 }],
    });
    expect((await got(`/api/runs/${runId}/counts?limit=2`)).body['items']).toHaveLength(2);
    expect((await got(`/api/runs/${runId}/mean-net`)).body).toMatchObject({ basis: 'measured' });
    expect((await got(`/api/runs/${runId}/hand-samples`)).body['items']).toHaveLength(1);
    expect((await got('/api/stops?run=pr-2026-1')).body['items']).toHaveLength(1);
    expect((await got('/api/removals')).body['items']).toHaveLength(1);
    expect((await got('/api/lots?code=l60711')).body).toMatchObject({ items: [{ code: 'L60711M' }] });
    expect((await got('/api/lots')).body['items']).toHaveLength(1);
    const films = await got('/api/film-lots?code=f-88123');
    expect(films.body).toMatchObject({ items: [{ supplierCode: 'FS-02' }] });
    const { id } = (films.body['items'] as unknown as { id: string }[])[0]!;
    expect((await got(`/api/film-lots/${id}`)).body).toMatchObject({ ranges: [{ fromCount: 0, toCount: 4000 }] });
    expect((await got('/api/film-lots')).body['items']).toHaveLength(1);
  });

  it('refuses forms that could not be meant, what is unknown, and who may not', async () => {
    const statusOf = async (path: string, body: object) => (await posted(path, body)).status;
    expect(await statusOf(`/api/runs/${runId}/counts`, { packCount: -1 })).toBe(422);
    expect(await statusOf(`/api/runs/${runId}/counts`, { counts: [{ packCount: 1 }] })).toBe(422);
    expect(await statusOf(`/api/runs/${runId}/counts`, {})).toBe(422);
    expect(await statusOf(`/api/runs/${plant.siteId}/counts`, { packCount: 1 })).toBe(404);
    expect(await statusOf('/api/stops', { run: runId, stopReason: 'nap' })).toBe(422);
    expect(await statusOf(`/api/counts/${runId}/correction`, { why: 'did-not-occur', reason: 'x' })).toBe(404);
    expect(await statusOf(`/api/codes/${runId}/correction`, { why: 'did-not-occur', reason: 'x' })).toBe(404);
    expect(await statusOf(`/api/film-uses/${runId}/correction`, { why: 'did-not-occur', reason: 'x' })).toBe(404);
    expect(await statusOf(`/api/loose-counts/${runId}/correction`, { why: 'did-not-occur', reason: 'x' })).toBe(404);
    expect(await statusOf(`/api/removals/${runId}/correction`, { why: 'did-not-occur', reason: 'x' })).toBe(404);
    expect(await statusOf(`/api/runs/${runId}/close`, { packCount: 4000, loosePackCount: 0 })).toBe(409);
    for (const path of [`/api/lots/${runId}`, `/api/film-lots/${runId}`, `/lots/${runId}`, `/runs/${plant.siteId}`]) {
      expect((await got(path)).status).toBe(404);
    }
    expect((await auditor.post(`/api/runs/${runId}/counts`, { packCount: 4000 })).status).toBe(403);
  });

  it('prints a lot’s card that a reader finds GTIN and lot on; another copy says so and needs a reason', async () => {
    const lots = (await got('/api/lots')).body['items'] as unknown as { id: string }[];
    const path = `/api/lots/${lots[0]!.id}/labels`;
    const first = await posted(path, {});
    expect(first.body).toMatchObject({ copyNumber: 1 });
    expect((await posted(path, {})).body).toMatchObject({ type: 'problem:lot-label-printed-already' });
    const second = await posted(path, { reason: 'The first one tore' });
    const pdfOf = async (paperId: unknown) => {
      const answer = await lead.get(`/papers/${String(paperId)}/file`).buffer(true);
      return new Uint8Array(answer.body as Buffer);
    };
    const card = await pdfOf(first.body['paperId']);
    expect(await symbolsOf(card)).toEqual([{ prefix: ']d2', text: '010952012300010310' + '60711M' }]);
    expect(textOf(card)).toContain('L60711M');
    expect(textOf(card)).toContain('White sugar 2 kg');
    expect(textOf(card)).not.toContain('COPY');
    expect(textOf(await pdfOf(second.body['paperId']))).toContain('COPY 2');
    expect(await pdfOf(first.body['paperId'])).toEqual(card);
  });
});
