import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aProvenEmpty, aReleasedBag, aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { hiddenFields, pageText } from '../../../test/support/page-text.js';
import { threePallets } from '../../../test/support/three-pallets.js';
import { SetHoldClass } from '../../disposition/set-hold-class.js';
import { weighingsOf } from '../../drying/bag-weighings.js';
import { FitFilm } from '../../packing/fit-film.js';
import { countsOf, lotRanges, removalsOfRun } from '../../packing/packing-runs.js';
import { RemoveSugar } from '../../packing/remove-sugar.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { standingOfPallet } from '../../pallets/pallet-standing.js';
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

describe('the pages that correct what left the line, what a bag weighed and what was printed', () => {
  const removed = (netGrams: number) =>
    house.get(RemoveSugar).execute(asking(plant.actor), {
      ...{ kind: 'sweepings', lineId: plant.lineIds[0], netGrams, scaleId: plant.scaleId, fate: 'waste' },
      removalReason: 'floor',
    });
  const standing = async (palletId: string): Promise<readonly string[]> =>
    (await standingOfPallet(reader, palletId)).reasons.map(({ code }) => code);
  const correctPath = (page: Page, part: string): string =>
    new RegExp(`/${part}/[0-9a-f-]+/correct`).exec(page.text)?.[0] ?? 'none';

  it('shows the pallets that a hold then reaches where much less was swept up, and the hold reaches them', async () => {
    const { firstBag, runId, inStore } = await threePallets(house, plant, async () => {
      await removed(790_000);
      await aTippedBag(house, plant, { netGrams: 1_000_000 });
    });
    const hold = await house.get(PlaceHold).execute(asking(plant.actor), {
      ...{ kind: 'bulk-bag', id: firstBag, reason: 'grey bits' },
    });
    await house
      .get(SetHoldClass)
      .execute(asking(plant.actor), { hold: hold.id, hazard: 'quality', reason: 'no hazard' });
    const path = correctPath(await lead.get(`/runs/${runId}`), 'removals');
    expect(textOf(await lead.get(path))).toContain('sweepings, 790 kg. Why: floor. Goes to: waste.');
    const shown = await lead.send(path, { why: 'incorrect-data', netGrams: '79', reason: 'one digit too many' });
    expect(shown.status).toBe(200);
    expect(textOf(shown)).toMatch(/lots: 1; pallets: \d; deliveries already gone: \d; deliveries still here: \d\./);
    expect(textOf(shown)).toContain(`Hold ${hold.number} newly reaches 1:`);
    expect((await removalsOfRun(reader, runId)).map(({ grams }) => grams)).toEqual([790_000]);
    expect(await standing(inStore)).toEqual(['perhaps-held-by']);
    const done = await lead.send(path, hiddenIn(shown));
    expect([done.status, done.headers['location']]).toEqual([303, `/runs/${runId}`]);
    expect((await removalsOfRun(reader, runId)).map(({ grams }) => grams)).toEqual([79_000]);
    expect(await standing(inStore)).toContain('held-by');
  });

  it('takes a correction of a correction, and says of the first record that it was corrected already', async () => {
    const { runId } = await threePallets(house, plant, async () => {
      await removed(30_000);
    });
    const first = correctPath(await lead.get(`/runs/${runId}`), 'removals');
    const right = async (path: string, kilograms: string): Promise<Page> => {
      const shown = await lead.send(path, { why: 'incorrect-data', netGrams: kilograms, reason: 'read again' });
      return shown.status === 200 ? lead.send(path, hiddenIn(shown)) : shown;
    };
    expect((await right(first, '20')).status).toBe(303);
    const second = correctPath(await lead.get(`/runs/${runId}`), 'removals');
    expect((await right(second, '25,5')).status).toBe(303);
    expect((await removalsOfRun(reader, runId)).map(({ grams }) => grams)).toEqual([25_500]);
    const again = await right(first, '30');
    expect(again.status).toBe(409);
    expect(textOf(again)).toContain('This record was corrected already');
    const json = await lead.post(`/api${first.replace('/correct', '')}/correction`, {
      why: 'did-not-occur',
      reason: 'x',
    });
    expect(json).toMatchObject({ status: 409, body: { type: 'problem:already-corrected' } });
    expect(await corrections()).toBe(2);
  });

  it('corrects what a tipped bag weighed, from the page of the bag', async () => {
    const { firstBag } = await threePallets(house, plant, async () => {
      await aTippedBag(house, plant, { netGrams: 1_000_000 });
    });
    const path = correctPath(await lead.get(`/bags/${firstBag}`), 'bag-weighings');
    expect(textOf(await lead.get(path))).toMatch(/filled, at .* net 1 000 kg\./);
    const shown = await lead.send(path, { why: 'incorrect-data', grossGrams: '302', reason: 'digits swapped' });
    expect(textOf(shown)).toContain('lots: 1; pallets: 2; deliveries already gone: 0; deliveries still here: 1.');
    expect((await lead.send(path, hiddenIn(shown))).headers['location']).toBe(`/bags/${firstBag}`);
    const weighings = await weighingsOf(reader, firstBag);
    expect(weighings.map(({ isVoid, grossGrams }) => [isVoid, grossGrams === 302_000])).toEqual([
      [true, false],
      [false, true],
    ]);
    const never = await lead.send(correctPath(await lead.get(`/bags/${firstBag}`), 'bag-weighings'), {
      ...{ why: 'did-not-occur', reason: 'it hangs there' },
    });
    expect(never.status).toBe(409);
  });

  it('corrects the code that was printed from a pack on, with the lots and pallets that are then other ones', async () => {
    const { runId } = await threePallets(house, plant);
    const path = correctPath(await lead.get(`/runs/${runId}`), 'codes');
    expect(textOf(await lead.get(path))).toContain('Code L6071A1 is recorded on run');
    const shown = await lead.send(path, { why: 'incorrect-data', code: 'L6071A7', reason: 'read off another pack' });
    expect(textOf(shown)).toContain('lots: 2; pallets: 3; deliveries already gone: 1; deliveries still here: 1.');
    expect((await lead.send(path, hiddenIn(shown))).headers['location']).toBe(`/runs/${runId}`);
    expect((await lotRanges(reader, runId)).map(({ code }) => code)).toEqual(['L6071A7']);
  });

  it('refuses what says that it did not happen and what is right in its place, and keeps what was entered', async () => {
    const { runId } = await threePallets(house, plant, async () => {
      await removed(30_000);
    });
    const run = await lead.get(`/runs/${runId}`);
    for (const [part, field, value] of [
      ['removals', 'netGrams', '20'],
      ['codes', 'code', 'L6071A7'],
    ] as const) {
      const both = { why: 'did-not-occur', [field]: value, reason: 'looked again' };
      const again = await lead.send(correctPath(run, part), both);
      expect(again.status).toBe(422);
      expect(textOf(again)).toContain('only one can be');
      expect(again.text).toContain(`value="${value}"`);
    }
    expect(await corrections()).toBe(0);
  });
});
