import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aProvenEmpty, aReleasedBag, aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { hiddenFields, pageText } from '../../../test/support/page-text.js';
import { threePallets } from '../../../test/support/three-pallets.js';
import { FitFilm } from '../../packing/fit-film.js';
import { countsOf } from '../../packing/packing-runs.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { PlaceHold } from '../../tracing/place-hold.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let lead: SignedInPerson;

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
});
afterEach(async () => {
  await house.close();
});

type Page = Awaited<ReturnType<SignedInPerson['send']>>;

const textOf = ({ text }: Page): string => pageText(text);
const hiddenIn = ({ text }: Page): Record<string, string> => hiddenFields(text);

const corrections = async (): Promise<number> => {
  const rows = await reader.sql`SELECT "id" FROM "journal_entry" WHERE "action" LIKE 'correct-%'`;
  return rows.length;
};

describe('the page that corrects a tip', () => {
  it('shows what it changes, with the hold that lets go, and records only when that is confirmed', async () => {
    const { firstBag, firstTip } = await threePallets(house, plant);
    const hold = await house.get(PlaceHold).execute(asking(plant.actor), {
      ...{ kind: 'bulk-bag', id: firstBag, reason: 'glass' },
    });
    const path = `/tips/${firstTip}/correct`;
    expect(textOf(await lead.get(path))).toContain('was recorded as opened at');
    const shown = await lead.send(path, { why: 'did-not-occur', reason: 'never opened' });
    expect(shown.status).toBe(200);
    const text = textOf(shown);
    expect(text).toContain('lots: 1; pallets: 3; deliveries already gone: 1; deliveries still here: 1.');
    expect(text).toContain(`Hold ${hold.number} no longer reaches 3:`);
    expect(await corrections()).toBe(0);
    const done = await lead.send(path, hiddenIn(shown));
    expect([done.status, done.headers['location']]).toEqual([303, expect.stringContaining('/hopper-periods/')]);
    expect(await corrections()).toBe(1);
  });

  it('says where something was recorded meanwhile, shows it anew, and takes that', async () => {
    const { firstBag, firstTip } = await threePallets(house, plant);
    const path = `/tips/${firstTip}/correct`;
    const shown = await lead.send(path, { why: 'did-not-occur', reason: 'never opened' });
    await house.get(PlaceHold).execute(asking(plant.actor), { kind: 'bulk-bag', id: firstBag, reason: 'glass' });
    const stale = await lead.send(path, hiddenIn(shown));
    expect(textOf(stale)).toContain('Something was recorded since you looked');
    expect(textOf(stale)).toContain('no longer reaches 3:');
    expect(await corrections()).toBe(0);
    expect((await lead.send(path, hiddenIn(stale))).status).toBe(303);
    expect(await corrections()).toBe(1);
  });

  it('shows the form again, with what was entered, where the correction is refused', async () => {
    const { firstTip } = await threePallets(house, plant);
    const again = await lead.send(`/tips/${firstTip}/correct`, { why: 'incorrect-data', reason: 'looked again' });
    expect(again.status).toBe(409);
    expect(textOf(again)).toContain('another bag or another time');
    expect(again.text).toContain('value="looked again"');
  });

  it('records at once what changes nothing that was packed', async () => {
    const { tip } = await aTippedBag(house, plant);
    const done = await lead.send(`/tips/${tip.id}/correct`, { why: 'did-not-occur', reason: 'never opened' });
    expect(done.status).toBe(303);
    expect(await corrections()).toBe(1);
  });
});

describe('the other pages of corrections', () => {
  it('list a run’s counts, and correct one by what that changes', async () => {
    const { runId } = await threePallets(house, plant, async () => {
      await aTippedBag(house, plant, { netGrams: 1_000_000 });
    });
    const count = (await countsOf(reader, [runId])).find(({ packCount }) => packCount === 100);
    const list = await lead.get(`/runs/${runId}/counts`);
    expect(list.text).toContain(`/counts/${count?.id}/correct`);
    const path = `/counts/${count?.id}/correct`;
    const shown = await lead.send(path, { why: 'incorrect-data', packCount: '50', reason: 'misread' });
    expect(textOf(shown)).toContain('lots: 1; pallets: ');
    expect((await lead.send(path, hiddenIn(shown))).headers['location']).toBe(`/runs/${runId}/counts`);
    expect((await countsOf(reader, [runId])).map(({ packCount }) => packCount)).toContain(50);
  });

  it('say of an empty that is not the last what to do instead', async () => {
    const emptied = async () => {
      await aTippedBag(house, plant, { netGrams: 1_000_000 });
      house.clock.pass(5);
      return (await aProvenEmpty(house, plant, { happened: true })).endedPeriodId;
    };
    const [earlier, last] = [await emptied(), await emptied()];
    const page = await lead.get(`/hopper-periods/${earlier}/correct-empty`);
    expect(page.status).toBe(200);
    expect(textOf(page)).toContain('Only the last empty of a hopper can be corrected');
    expect(page.text).not.toContain('name="provenAt"');
    expect(page.text).toContain(`href="/hoppers/${plant.hopperId}"`);
    expect((await lead.get(`/hopper-periods/${last}/correct-empty`)).text).toContain('name="provenAt"');
  });

  it('correct a film and a proven empty likewise, and a late tip is looked at from its own page', async () => {
    let [useId, period] = ['', ''];
    const { startedAt } = await threePallets(house, plant, async () => {
      const [run] = await reader.sql<{ id: string }>`SELECT "id" FROM "packing_run"`;
      const film = { film: 'F-1', kind: 'film', name: 'roll', supplierCode: 'S-1', packCount: 100 } as const;
      useId = (await house.get(FitFilm).execute(asking(plant.actor), run?.id ?? '', film)).id;
      period = (await aProvenEmpty(house, plant, { happened: true })).endedPeriodId;
      await aTippedBag(house, plant, { netGrams: 1_000_000 });
    });
    expect((await lead.get(`/hoppers/${plant.hopperId}`)).text).toContain(`/hopper-periods/${period}/correct-empty`);
    const withdrawn = { why: 'did-not-occur', reason: 'another line' };
    for (const path of [`/film-uses/${useId}/correct`, `/hopper-periods/${period}/correct-empty`]) {
      expect((await lead.get(path)).status).toBe(200);
      const shown = await lead.send(path, withdrawn);
      expect(textOf(shown)).toContain('Nothing is recorded yet.');
      expect((await lead.send(path, hiddenIn(shown))).status).toBe(303);
    }
    expect(await corrections()).toBe(2);
    const bag = await aReleasedBag(house, plant);
    const late = `/line/${plant.lineIds[0]}/late/look`;
    const fields = { bag: bag.number, openedAt: startedAt, isOff: 'true', happened: 'true', reason: 'forgotten' };
    const shown = await lead.send(late, fields);
    expect(textOf(shown)).toContain('deliveries already gone: 1');
    expect((await lead.send(late, hiddenIn(shown))).status).toBe(303);
    const tipped = await reader.sql`SELECT "id" FROM "tip" WHERE "bag_id" = ${bag.id} AND "voided_by" IS NULL`;
    expect(tipped).toHaveLength(1);
  });

  it('undoes one’s own last entry at the line with what that changes in view', async () => {
    const { runId } = await threePallets(house, plant);
    house.clock.pass(5);
    expect((await lead.post(`/api/runs/${runId}/counts`, { packCount: 320 })).status).toBe(201);
    const path = `/line/${plant.lineIds[0]}/undo`;
    const shown = await lead.get(path);
    expect(textOf(shown)).toContain('If it did not happen');
    expect(textOf(shown)).toContain('lots: 1; pallets: 0');
    const fields = { ...hiddenIn(shown), happened: 'no' };
    expect((await lead.send(path, fields)).status).toBe(303);
    expect(await corrections()).toBe(1);
  });
});
