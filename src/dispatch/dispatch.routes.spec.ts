import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPackedRun, aTippedBag } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { usualCheckPoints } from './check-vehicle.js';

describe('pallets and deliveries by their addresses', () => {
  let house: TestHouse;
  let plant: Plant;
  let clerk: SignedInPerson;
  let loader: SignedInPerson;
  let auditor: SignedInPerson;
  let quality: SignedInPerson;
  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house, { packsPerPallet: 100 });
    const signIn = async (...roles: Parameters<Plant['actorWith']>) =>
      signedIn(house, await aPerson(house, plant.siteId, { roles }));
    clerk = await signIn('dispatch-clerk');
    loader = await signIn('loader');
    auditor = await signIn('auditor');
    quality = await signIn('quality-officer');
  });
  afterAll(async () => {
    await house.close();
  });

  const made = async (by: SignedInPerson, path: string, form: object): Promise<Record<string, unknown>> => {
    const answer = await by.post(path, form);
    const body: unknown = answer.body;
    expect([path, answer.status, answer.status === 201 ? null : body]).toEqual([path, 201, null]);
    return body as Record<string, unknown>;
  };

  it('goes the whole way from packs to the note, each step by the one whose it is', async () => {
    await aTippedBag(house, plant);
    const run = await aPackedRun(house, plant, { packCount: 200 });
    const pallet = await made(loader, '/api/pallets', { run: run.number });
    await made(loader, `/api/pallets/${String(pallet['id'])}/moves`, { placeId: plant.placeIds.store });
    const other = await made(loader, '/api/pallets', { run: run.number, packCount: 60 });
    const delivery = await made(clerk, '/api/deliveries', {
      customerId: plant.customerId,
      orderNumber: '4500123',
      plannedOn: '2026-03-12',
      lines: [{ formatId: plant.formatId, orderedCount: 200 }],
    });
    const at = `/api/deliveries/${String(delivery['id'])}`;
    const answers = usualCheckPoints.map(({ code }) => ({ point: code, isFine: true }));
    await made(loader, `${at}/vehicle-checks`, { registration: 'AQ 123 D', haulierCode: 'H-01', answers });
    await made(loader, `${at}/loadings`, { pallet: pallet['sscc'] });
    await made(loader, `${at}/loadings`, { pallet: other['sscc'] });
    await made(loader, `${at}/unloadings`, { pallet: other['sscc'], reason: 'goes with the next' });
    const again = await loader.post(`${at}/loadings`, { pallet: pallet['sscc'] });
    expect([again.status, again.body]).toMatchObject([409, { type: expect.stringContaining('already-loaded') }]);
    const closing = { seal: 'S1', shortCode: 'other', shortReason: 'part pallet stays' };
    expect((await loader.post(`${at}/close`, closing)).status).toBe(403);
    expect((await clerk.post(`${at}/close`, closing)).body).toMatchObject({
      type: expect.stringContaining('blind-count-missing'),
    });
    expect(await made(loader, `${at}/blind-counts`, { unitCount: 1 })).toMatchObject({ agrees: true });
    const note = await made(clerk, `${at}/close`, closing);
    const view = await auditor.get(at);
    expect(view.body).toMatchObject({
      status: 'closed',
      noteNumber: note['noteNumber'],
      lines: [{ orderedCount: 200, loadedCount: 100, leftCount: 100 }],
      units: [{ kind: 'pallet', lots: ['L6071A1'], packCount: 100 }],
    });
    const papers = await auditor.get('/api/papers');
    expect(papers.body).toMatchObject({ items: [{ number: note['noteNumber'], isVoid: false }, {}, {}], next: null });
    const file = await auditor.get(`/papers/${String(note['paperId'])}/file`);
    expect(file.status).toBe(200);
    await made(clerk, `${at}/void-notes`, { correction: 'incorrect-data', reason: 'seal misread', seal: 'S2' });
    expect((await loader.post(`${at}/departure`, {})).status).toBe(403);
    await made(clerk, `${at}/departure`, {});
    const back = await made(clerk, `${at}/returns`, {
      why: 'refused-by-customer',
      placeId: plant.placeIds.store,
      units: [{ pallet: pallet['sscc'], creditedCount: 100 }],
    });
    const [unit] = back['unitIds'] as string[];
    const decision = { fate: 'restock', reason: 'whole, dry, never opened' };
    expect((await clerk.post(`/api/returned-units/${unit!}/decision`, decision)).status).toBe(403);
    expect((await auditor.get('/api/returns')).body).toMatchObject({ items: [{ id: unit, name: pallet['sscc'] }] });
    await made(quality, `/api/returned-units/${unit!}/decision`, decision);
    expect((await auditor.get('/api/returns')).body).toEqual({ items: [] });
  });

  it('shows the pages to anyone who may read', async () => {
    for (const page of ['/pallets', '/deliveries', '/papers']) {
      const { status, text } = await auditor.get(page);
      expect([page, status]).toEqual([page, 200]);
      const single = /href="(\/(?:pallets|deliveries)\/[0-9a-f-]{36})"/.exec(text)?.[1];
      if (single !== undefined) expect([single, (await auditor.get(single)).status]).toEqual([single, 200]);
    }
  });

  it('refuses what is no form and what is not there', async () => {
    const nobody = '00000000-0000-7000-8000-00000000dead';
    expect((await loader.post('/api/pallets', { packCount: 'many' })).status).toBe(422);
    expect((await loader.post(`/api/deliveries/${nobody}/loadings`, {})).status).toBe(422);
    expect((await loader.post(`/api/deliveries/${nobody}/loadings`, { pallet: 'x' })).status).toBe(404);
    expect((await auditor.get(`/api/pallets/${nobody}`)).status).toBe(404);
    expect((await auditor.get('/deliveries/none')).status).toBe(400);
    expect((await auditor.post('/api/pallets', { run: 'PR-2026-000001' })).status).toBe(403);
  });

  it('splits, restacks, merges, relabels, labels, takes apart and corrects', async () => {
    const run = await aPackedRun(house, plant, { packCount: 400, lineId: plant.lineIds[1] });
    const { id } = (await made(loader, '/api/pallets', { run: run.number })) as { id: string };
    const parts = [{ shares: [{ packCount: 30 }] }, { shares: [{ packCount: 70 }] }];
    const split = await made(loader, `/api/pallets/${id}/splits`, { parts, reason: 'halves' });
    const [one, two] = split['pallets'] as { id: string; sscc: string }[];
    const stacked = await made(loader, `/api/pallets/${one!.id}/restackings`, { reason: 'broken board' });
    const merged = await made(loader, '/api/pallets/merges', {
      pallets: [{ pallet: stacked['sscc'] }, { pallet: two!.sscc }],
      reason: 'whole again',
    });
    const relabelled = await made(loader, `/api/pallets/${String(merged['id'])}/relabellings`, { reason: 'torn off' });
    const last = `/api/pallets/${String(relabelled['id'])}`;
    await made(loader, `${last}/labels`, {});
    await made(loader, `${last}/end`, { reason: 'new cartons' });
    const next = await made(loader, '/api/pallets', { run: run.number });
    await made(clerk, `/api/pallets/${String(next['id'])}/corrections`, { reason: 'twice' });
    const order = {
      orderNumber: '4500125',
      plannedOn: '2026-03-13',
      lines: [{ gradeId: plant.gradeId, orderedCount: 2 }],
    };
    const changed = await made(clerk, '/api/deliveries', { ...order, customerId: plant.customerId });
    await made(clerk, `/api/deliveries/${String(changed['id'])}/changes`, {
      ...order,
      orderNumber: '4500126',
      reason: 'typo',
    });
    const cancelled = await made(clerk, '/api/deliveries', {
      customerId: plant.customerId,
      orderNumber: '4500124',
      plannedOn: '2026-03-12',
      lines: [{ gradeId: plant.gradeId, orderedCount: 1 }],
    });
    await made(clerk, `/api/deliveries/${String(cancelled['id'])}/cancellation`, { reason: 'withdrawn' });
    expect((await auditor.get('/api/deliveries?limit=1')).body).toMatchObject({ next: cancelled['id'] });
    expect((await auditor.get('/api/pallets?limit=2')).body).toMatchObject({ items: [{}, {}] });
  });
});
