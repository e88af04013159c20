import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { RemoveSugar } from '../../src/packing/remove-sugar.js';
import { millisecondsBetween } from '../../src/platform/clock.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleLeft } from '../support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag } from '../support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson, type TestPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { textOf } from '../support/read-pdf.js';
import { pageText } from '../support/page-text.js';

interface Recall {
  readonly number: string;
  readonly figures: {
    readonly packs: Readonly<Record<string, number>> & { readonly verdict: string };
    readonly milligrams: {
      readonly produced: number;
      readonly inStore: number;
      readonly dispatched: number;
      readonly usedUp: number;
      readonly unaccounted: number;
      readonly verdict: string;
    };
    readonly customers: readonly { readonly customerId: string; readonly packCount: number }[];
  };
}

describe('the drill: a stranger traces a pack from its printed code', () => {
  let house: TestHouse;
  let plant: Plant;
  let stranger: TestPerson;
  let person: SignedInPerson;
  let lotId: string;
  let bagNumber: string;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
    bagNumber = (await aTippedBag(house, plant)).number;
    const run = await aPackedRun(house, plant, { packCount: 400 });
    lotId = run.lotId;
    const reject = {
      kind: 'reject',
      lineId: plant.lineIds[0],
      packCount: 3,
      removalReason: 'seal',
      fate: 'waste',
    } as const;
    await house.get(RemoveSugar).execute(asking(plant.actor), reject);
    const pallets = [];
    for (let place = 0; place < 4; place += 1) {
      pallets.push(await aPallet(house, plant, { run: run.runId, placeId: plant.placeIds.store }));
    }
    const delivery = await aDelivery(house, plant);
    for (const { sscc } of pallets.slice(0, 3)) await palletLoaded(house, plant, delivery, sscc);
    await deliveryClosed(house, plant, delivery, { blindCount: 3 });
    await vehicleLeft(house, plant, delivery);
    stranger = await aPerson(house, plant.siteId, { roles: ['quality-officer'], name: 'New Here' });
    person = await signedIn(house, stranger);
  });
  afterAll(() => house.close());

  it('comes from the code alone to a signed report whose kilograms add up, within the hour', async () => {
    const begunAt = house.clock.now();
    const page = await person.get('/thread?code=L6071A1');
    expect(page.status).toBe(200);
    expect(pageText(page.text)).toContain(bagNumber);
    const found = await person.get('/api/thread?code=L6071A1');
    const { thread } = found.body as {
      readonly thread: { readonly subject: { readonly kind: string; readonly id: string } };
    };
    expect(thread.subject).toMatchObject({ kind: 'lot', id: lotId });
    house.clock.pass(5);
    const opened = await person.post('/api/recalls', {
      ...{ kind: 'exercise', hazard: 'safety', reason: 'a pack was shown at the gate' },
      scopes: [{ scopeKind: thread.subject.kind, scopeId: thread.subject.id }],
    });
    expect(opened.status).toBe(201);
    const { id } = opened.body as { readonly id: string };
    const { figures, number } = (await person.get(`/api/recalls/${id}`)).body as Recall;
    const { produced, inStore, dispatched, usedUp, unaccounted, verdict } = figures.milligrams;
    expect(inStore + dispatched + usedUp + unaccounted).toBe(produced);
    expect([verdict, figures.packs.verdict, unaccounted]).toEqual(['adds-up', 'adds-up', 0]);
    expect(figures.packs).toMatchObject({ produced: 403, inStore: 100, dispatched: 300, rejects: 3, unaccounted: 0 });
    expect(figures.customers).toMatchObject([{ customerId: plant.customerId, packCount: 300 }]);
    for (const mark of ['customers-listed', 'clock-stopped']) {
      house.clock.pass(10);
      expect((await person.post(`/api/recalls/${id}/marks`, { mark })).status).toBe(201);
    }
    const early = await person.post(`/api/recalls/${id}/signing`, { password: 'not mine' });
    expect(early.status).not.toBe(201);
    const signed = await person.post(`/api/recalls/${id}/signing`, { password: stranger.password });
    expect(signed.status).toBe(201);
    expect(millisecondsBetween(begunAt, house.clock.now())).toBeLessThanOrEqual(3_600_000);
    await saysTheSame(number, produced, signed.body as { readonly paperId?: string });
  });

  /** The paper is what anybody else will see. */
  async function saysTheSame(
    number: string,
    producedMilligrams: number,
    { paperId }: { readonly paperId?: string },
  ): Promise<void> {
    const paper = await person.get(`/papers/${paperId}/file`).buffer(true);
    expect(paper.status).toBe(200);
    const text = textOf(paper.body as Uint8Array).replaceAll(/[\s\u2009\u202f]+/g, ' ');
    const kilograms = String(Math.round(producedMilligrams / 1_000_000));
    for (const part of [number, 'L6071A1', bagNumber, kilograms]) expect(text).toContain(part);
  }
});
