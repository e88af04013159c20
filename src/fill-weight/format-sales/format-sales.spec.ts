import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import { filledPacks, keepPacks } from '../../../test/support/kept-packs.js';
import { pageText } from '../../../test/support/page-text.js';
import { textOf } from '../../../test/support/read-pdf.js';
import { shifted } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { saleOfFormat } from './format-sales.js';

const startedAt = '2026-03-12T06:00:00.000Z';
const hour = 3_600_000;

describe('where a format is sold, and what a kilogram is worth', () => {
  let house: TestHouse;
  let from: ReadFrom;
  let plant: Plant;
  let manager: SignedInPerson;
  let officer: SignedInPerson;
  let runId: string;

  beforeAll(async () => {
    house = await openHouse();
    from = house.app.get<ReadFrom>(READER, { strict: false });
    house.clock.set(startedAt);
    plant = await aPlant(house);
    manager = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['plant-manager'] }));
    officer = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    const { weigherId } = await aPackWeigher(house, plant);
    ({ runId } = await aRun(house, plant, { startedAt }));
    const filled = {
      packCount: 1200,
      firstAt: startedAt,
      everyMilliseconds: 3000,
      heads: 1,
      deviationMilligrams: 3000,
    };
    await keepPacks(
      house,
      { runId, weigherId, nominalMilligrams: 2_000_000 },
      filledPacks({ ...filled, meanOf: () => 2_005_000 }),
    );
    house.clock.set(shifted(startedAt, hour));
  });
  afterAll(() => house.close());

  const set = (form: object) => manager.post('/api/format-sales', { formatId: plant.formatId, ...form });
  const at = (instant: string) => saleOfFormat(from, plant.formatId, instant);
  const page = async (): Promise<string> => pageText((await officer.get(`/runs/${runId}/weights`)).text);
  const report = async (): Promise<string> => {
    const { paperId } = (await officer.post(`/api/runs/${runId}/weights/report`)).body as { paperId: string };
    return textOf((await officer.get(`/papers/${paperId}/file`).responseType('blob')).body as Buffer).replaceAll(
      /\s+/g,
      ' ',
    );
  };

  it('is not made up where nobody said it: the European Union stands first, and no money', async () => {
    const said = await page();
    expect(said).toContain('Nobody said where this format is sold; the European Union is shown.');
    expect(said).not.toContain('Giveaway of all packs in money');
    const paper = await report();
    expect(paper).toContain('Sold in: not recorded');
    expect(paper).toMatch(/Handbook 133/);
  });

  it.each([
    [{ markets: [] }, 409, 'sold-nowhere'],
    [{ markets: ['eu', 'eu'] }, 409, 'market-twice'],
    [{ markets: ['mars'] }, 422, 'bad-form'],
    [{ markets: ['eu'], pricePerKilogram: '-1' }, 422, 'bad-form'],
    [{ markets: ['eu'], pricePerKilogram: '1', currency: 'EURO' }, 422, 'bad-form'],
    [{ markets: ['eu'], pricePerKilogram: '1', currency: '€' }, 422, 'bad-form'],
    [{ markets: ['eu'], currency: 'EUR' }, 409, 'currency-without-price'],
  ])('is refused plainly: %j', async (form, status, code) => {
    const answer = await set(form);
    expect([answer.status, (answer.body as { type: string }).type]).toEqual([status, `problem:${code}`]);
    expect(await at(house.clock.now())).toBeNull();
  });

  it('is said by who sets the plant up; the first may reach back, and is what page and report go by', async () => {
    const form = { formatId: plant.formatId, markets: ['uk', 'us'], pricePerKilogram: '0.5', validFrom: startedAt };
    expect((await officer.post('/api/format-sales', form)).status).toBe(403);
    expect((await set(form)).status).toBe(201);
    expect(await at(startedAt)).toEqual({
      ...{ markets: ['uk', 'us'], pricePerKilogram: '0.5', currency: null, validFrom: startedAt },
    });
    expect(await at(shifted(startedAt, -1))).toBeNull();
    const said = await page();
    expect(said).toContain('Sold in: United Kingdom, United States.');
    expect(said.indexOf('United Kingdom: the 1 200 packs')).toBeGreaterThan(0);
    expect(said.indexOf('United States: the 1 200 packs')).toBeGreaterThan(said.indexOf('United Kingdom: the'));
    expect(said).not.toContain('European Union: the 1 200 packs');
    // 1200 packs, each about 5 g over: 6 kg at 0.5 is 3.
    expect(said).toMatch(/Giveaway of all packs in money 3 /);
    expect(said).toContain('At 0.5 a kilogram, as set up for this format since');
    const chosen = pageText((await officer.get(`/runs/${runId}/weights?market=de`)).text);
    expect(chosen).toContain('Germany: the 1 200 packs');
    expect(chosen).not.toContain('United Kingdom: the 1 200 packs');
    const paper = await report();
    expect(paper).toContain('Sold in: United Kingdom, United States');
    expect(paper).toContain('United Kingdom: the 1 200 packs that were weighed');
    expect(paper).toContain('United States: the 1 200 packs that were weighed');
    expect(paper).not.toContain('Directive 76/211/EEC, Annex');
    const json = (await officer.get(`/api/runs/${runId}/weights`)).body as { sale: unknown };
    expect(json.sale).toMatchObject({ markets: ['uk', 'us'], pricePerKilogram: '0.5' });
  });

  it('has its price in a currency, which stands beside every amount; where nobody said it amounts have none', async () => {
    const own = await aPlant(house, { siteCode: 'MONEY' });
    const boss = await signedIn(house, await aPerson(house, own.siteId, { roles: ['plant-manager'] }));
    const { weigherId } = await aPackWeigher(house, own, { code: 'M1' });
    const begun = house.clock.now();
    const run = await aRun(house, own, { startedAt: begun });
    const filled = { packCount: 1200, firstAt: begun, everyMilliseconds: 3000, heads: 1, deviationMilligrams: 3000 };
    await keepPacks(
      house,
      { runId: run.runId, weigherId, nominalMilligrams: 2_000_000 },
      filledPacks({ ...filled, meanOf: () => 2_005_000 }),
    );
    const sold = { formatId: own.formatId, markets: ['eu'], pricePerKilogram: '0.5', validFrom: begun };
    expect((await boss.post('/api/format-sales', { ...sold, currency: 'eur' })).status).toBe(201);
    const said = pageText((await boss.get(`/runs/${run.runId}/weights`)).text);
    expect(said).toMatch(/Giveaway of all packs in money 3 EUR /);
    expect(said).toContain('At 0.5 EUR a kilogram, as set up for this format since');
    expect(pageText((await boss.get('/set-up/sales')).text)).toContain('0.5 EUR');
    // Nobody said it here.
    expect(await page()).toMatch(/Giveaway of all packs in money 3 Per pack/);
    const [entry] = await from.sql<{ after: string }>`
      SELECT "after" FROM "journal_entry" WHERE "action" = 'set-format-sale' AND "site_id" = ${own.siteId}`;
    expect(JSON.parse(entry?.after ?? '{}')).toMatchObject({ pricePerKilogram: '0.5', currency: 'EUR' });
  });

  it('begins anew with a later one, never in the past; one that has not begun is taken back', async () => {
    const before = house.clock.now();
    expect((await set({ markets: ['eu'], validFrom: shifted(before, -1) })).body).toMatchObject({
      type: 'problem:valid-from-in-the-past',
    });
    expect((await set({ markets: ['de'], validFrom: shifted(before, 9 * hour) })).status).toBe(201);
    expect((await set({ markets: ['eu', 'us'], pricePerKilogram: '0.6' })).status).toBe(201);
    expect(await at(shifted(before, -1))).toMatchObject({ markets: ['uk', 'us'], pricePerKilogram: '0.5' });
    expect(await at(shifted(before, 99 * hour))).toMatchObject({ markets: ['eu', 'us'], pricePerKilogram: '0.6' });
    // The run began before: what is said of it stays.
    expect(await page()).toContain('Sold in: United Kingdom, United States.');
  });

  it('is set on its page, and reached from the set-up', async () => {
    house.clock.pass(60);
    const sent = await manager.send('/set-up/sales', {
      ...{ formatId: plant.formatId, markets: 'ca', pricePerKilogram: '', validFrom: '' },
    });
    expect([sent.status, sent.headers['location']]).toEqual([303, '/set-up/sales']);
    const seen = pageText((await officer.get('/set-up/sales')).text);
    expect(seen).toMatch(/White sugar 2 kg Canada –/);
    expect(seen).toContain('nobody said');
    expect((await officer.get('/set-up/sales')).text).not.toContain('id="sale-form"');
    expect((await manager.get('/set-up')).text).toContain('href="/set-up/sales"');
    const refused = await manager.send('/set-up/sales', { formatId: plant.formatId, pricePerKilogram: '0.5' });
    expect(refused.status).toBeGreaterThanOrEqual(409);
    expect(refused.text).toContain('value="0.5"');
    const other = await aPlant(house, { siteCode: 'OTHER' });
    expect((await set({ formatId: other.formatId, markets: ['eu'] })).status).toBe(404);
  });
});
