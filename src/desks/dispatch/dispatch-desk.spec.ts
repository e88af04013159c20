import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../../test/support/a-bag.js';
import { aDelivery, palletLoaded } from '../../../test/support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag } from '../../../test/support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { pageCount, textOf as textOfPdf } from '../../../test/support/read-pdf.js';
import { deliveryOf, loadedUnitsOf } from '../../dispatch/deliveries.js';
import { CloseRun } from '../../packing/close-run.js';
import type { PalletAnswer } from '../../pallets/add-pallet.js';
import { PlaceHold } from '../../tracing/place-hold.js';

let house: TestHouse;
let plant: Plant;
let clerk: SignedInPerson;
let loader: SignedInPerson;
let quality: SignedInPerson;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  const signIn = async (...roles: Parameters<Plant['actorWith']>) =>
    signedIn(house, await aPerson(house, plant.siteId, { roles }));
  clerk = await signIn('dispatch-clerk');
  loader = await signIn('loader');
  quality = await signIn('quality-officer');
});
afterAll(async () => {
  await house.close();
});

const textOf = (html: string): string =>
  html
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll('\u202f', ' ')
    .replaceAll(/\s+/g, ' ');

async function pallets(palletCount: number): Promise<readonly PalletAnswer[]> {
  await aTippedBag(house, plant);
  const run = await aPackedRun(house, plant, { packCount: palletCount * 100 });
  const built: PalletAnswer[] = [];
  for (let place = 0; place < palletCount; place += 1) {
    built.push(await aPallet(house, plant, { run: run.runId, placeId: plant.placeIds.store }));
  }
  const ended = { packCount: palletCount * 100, loosePackCount: 0 };
  await house.get(CloseRun).execute(asking(plant.actor), run.runId, ended);
  house.clock.pass(1);
  return built;
}

const held = (palletId: string) =>
  house.get(PlaceHold).execute(asking(plant.actor), { kind: 'pallet', id: palletId, reason: 'a corner is wet' });

async function shown(by: SignedInPerson, path: string): Promise<string> {
  const answer = await by.get(path);
  expect([path, answer.status]).toEqual([path, 200]);
  expect(answer.text).not.toMatch(/ style=|\{\w+\}/);
  return textOf(answer.text);
}

describe('a delivery from its plan to the gate, by its pages', () => {
  it('goes through every page in turn, and Enter alone prints nothing', async () => {
    const [first, second] = await pallets(2);
    const wrong = await clerk.send('/dispatch/new', { orderNumber: '77001', plannedOn: '2026-03-12', count1: '200' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('77001');
    const planned = await clerk.send('/dispatch/new', {
      customerId: plant.customerId,
      orderNumber: '77001',
      plannedOn: '2026-03-12',
      leavesAt: '2026-03-12T14:45',
      goods1: plant.formatId,
      count1: '200',
    });
    expect(planned.status).toBe(303);
    const at = String(planned.headers['location']);
    expect(await shown(clerk, '/dispatch')).toContain('Check the vehicle. Nothing goes on before.');
    const early = await clerk.send(`${at}/scans`, { scan: first!.sscc });
    expect([early.status, textOf(early.text)]).toEqual([409, expect.stringContaining('Nobody has checked')]);
    const check = { registration: 'AQ 123 D', haulierCode: 'H-01' };
    expect((await clerk.send(`${at}/check`, check)).status).toBe(303);
    expect(await shown(clerk, at)).toContain('failed its check');
    const fine = ['clean', 'dry', 'no-smell', 'no-pests', 'sound'];
    expect((await clerk.send(`${at}/check`, { ...check, fine } as never)).status).toBe(303);
    const on = await clerk.send(`${at}/scans`, { scan: `(00)${first!.sscc}` });
    expect([on.status, on.headers['location']]).toEqual([303, `${at}?unit=${first!.id}`]);
    const yes = await shown(clerk, `${at}?unit=${first!.id}`);
    for (const words of [`YES ${first!.sscc.slice(-4)}`, 'Place 1', 'Load: 100 left.', 'locked'])
      expect(yes).toContain(words);
    expect((await clerk.send(`${at}/scans`, { scan: first!.sscc })).status).toBe(303);
    await clerk.send(`${at}/scans`, { scan: second!.sscc });
    expect(await shown(clerk, at)).toContain('All is on. Walk round and count.');
    const count = await shown(clerk, `${at}/count`);
    expect(count).not.toMatch(/\b2 (?:units|scanned)/);
    await clerk.send(`${at}/count`, { unitCount: '3' });
    expect(await shown(clerk, `${at}/count`)).toContain('3 is not what was scanned. Walk round once more.');
    expect((await clerk.send(`${at}/close`, { step: 'print', seal: 'S1' })).status).toBe(409);
    expect((await clerk.send(`${at}/count`, { unitCount: '2' })).headers['location']).toBe(at);
    const looked = await clerk.send(`${at}/close`, { step: 'look', seal: 'S1' });
    expect(textOf(looked.text)).toContain('Nothing is printed yet');
    expect(await deliveryOf(readerOf(house), at.split('/')[2]!)).toMatchObject({ status: 'loading' });
    expect((await clerk.send(`${at}/close`, { step: 'print', seal: 'S1' })).status).toBe(303);
    expect(await shown(clerk, at)).toContain('Papers are printed. Say when the vehicle leaves.');
    expect((await clerk.send(`${at}/leave`, {})).status).toBe(303);
    expect(await shown(clerk, at)).toContain('left');
    const back = { why: 'refused-by-customer', placeId: plant.placeIds.store, whole: second!.id, isCredited: 'on' };
    expect((await clerk.send(`${at}/return`, back)).status).toBe(303);
    expect(await shown(clerk, `${at}/return`)).toContain('100 back, 100 credited');
    const unit = /name="unit" value="([0-9a-f-]{36})"/.exec((await quality.get(`${at}/return`)).text)?.[1] ?? '';
    const fate = { unit, fate: 'destroy', reason: 'torn' };
    expect((await clerk.send(`${at}/return/decision`, fate)).status).toBe(403);
    expect((await quality.send(`${at}/return/decision`, fate)).status).toBe(303);
    expect(await shown(clerk, `${at}/return`)).toContain('destroyed: torn');
  });

  it('says no with the reason and where to put it back, keeps the refusal, and shows the same page when read again', async () => {
    const [pallet] = await pallets(1);
    const at = `/dispatch/${await aDelivery(house, plant)}`;
    const { number } = await held(pallet!.id);
    const no = await clerk.send(`${at}/scans`, { scan: pallet!.sscc });
    const text = textOf(no.text);
    expect(no.status).toBe(409);
    for (const words of [`NO ${pallet!.sscc.slice(-4)}`, number, 'Put it back to', 'Refused on this delivery: 1']) {
      expect(text).toContain(words);
    }
    await clerk.send(`${at}/scans`, { scan: pallet!.sscc });
    expect(await shown(clerk, `${at}/scans`)).toContain('Refused on this delivery: 1');
    const strange = await clerk.send(`${at}/scans`, { scan: 'L6071A1' });
    expect(textOf(strange.text)).toContain('is no pallet and no bag');
  });

  it('locks printing when a loaded pallet is put on hold, names it, and opens again once it is off', async () => {
    const on = await pallets(3);
    const id = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 300 }] });
    for (const { sscc } of on) await palletLoaded(house, plant, id, sscc);
    await clerk.send(`/dispatch/${id}/count`, { unitCount: '3' });
    expect((await clerk.get(`/dispatch/${id}`)).text).toContain(`/dispatch/${id}/close`);
    for (const pallet of on) await held(pallet.id);
    const page = await clerk.get(`/dispatch/${id}`);
    expect(page.text).not.toContain(`/dispatch/${id}/close`);
    for (const pallet of on) expect(textOf(page.text)).toContain(pallet.sscc.slice(-4));
    expect((await clerk.get(`/dispatch/${id}/close`)).text).not.toContain('value="print"');
    const off = { unit: on[0]!.id, reason: 'on hold', placeId: plant.placeIds.store };
    expect((await clerk.send(`/dispatch/${id}/unload`, off)).status).toBe(303);
    expect((await loadedUnitsOf(readerOf(house), id)).palletIds).toHaveLength(2);
    const gone = await clerk.send(`/dispatch/${id}/unload`, off);
    expect(gone.status).toBe(409);
  });

  it('answers a page of two dozen pallets within a tenth of a second on a quiet machine', async () => {
    const on = await pallets(24);
    const id = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 2400 }] });
    for (const { sscc } of on) await palletLoaded(house, plant, id, sscc);
    await clerk.get(`/dispatch/${id}`);
    const before = performance.now();
    await clerk.get(`/dispatch/${id}`);
    // Four times as much here: the machine of the tests is never quiet.
    expect(performance.now() - before).toBeLessThan(400);
  });

  it('shows what is in store and may go, and gives papers out again as copies', async () => {
    expect(await shown(clerk, '/dispatch/stock')).toContain('pallets may go');
    const [pallet] = await pallets(1);
    const id = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 100 }] });
    await palletLoaded(house, plant, id, pallet!.sscc);
    await clerk.send(`/dispatch/${id}/count`, { unitCount: '1' });
    await clerk.send(`/dispatch/${id}/close`, { step: 'print', seal: 'S2' });
    const copy = /\/papers\/[0-9a-f-]{36}\/copy/.exec((await clerk.get(`/dispatch/${id}`)).text)?.[0] ?? '';
    const pdf = (await clerk.get(copy).buffer(true).responseType('blob')).body as Buffer;
    expect(pageCount(pdf)).toBeGreaterThan(0);
    expect(textOfPdf(pdf)).toContain('COPY');
    expect((await clerk.send(`/dispatch/${id}/void`, {})).status).toBe(422);
  });
});

describe('the loader', () => {
  it('scans, is told yes or no, takes off, counts, and can close nothing', async () => {
    const [pallet] = await pallets(1);
    const unchecked = await aDelivery(house, plant, { failedPoints: null });
    const id = await aDelivery(house, plant);
    const list = await loader.get('/dock');
    expect(list.text).toContain(`/dock/${unchecked}/check`);
    expect(list.text).toContain(`href="/dock/${id}"`);
    const on = await loader.send(`/dock/${id}/scans`, { scan: pallet!.sscc });
    expect(on.headers['location']).toBe(`/dock/${id}?unit=${pallet!.id}`);
    expect(await shown(loader, `/dock/${id}?unit=${pallet!.id}`)).toContain('Place 1');
    expect(await shown(loader, `/dock/${id}`)).not.toMatch(/close and print/i);
    for (const path of ['close', 'leave', 'void']) {
      expect([path, (await loader.get(`/dispatch/${id}/${path}`)).status]).toEqual([path, 403]);
    }
    expect((await loader.send(`/dispatch/${id}/close`, { step: 'print', seal: 'S1' })).status).toBe(403);
    expect((await loader.send(`/dock/${id}/count`, { unitCount: '1' })).status).toBe(303);
    const off = { unit: pallet!.id, reason: 'wrong vehicle', placeId: plant.placeIds.store };
    expect((await loader.send(`/dock/${id}/unload`, off)).headers['location']).toBe(`/dock/${id}`);
  });
});
