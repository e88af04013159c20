import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import { CloseRun } from '../../src/packing/close-run.js';
import type { PalletAnswer } from '../../src/pallets/add-pallet.js';
import { aDelivery, deliveryClosed, palletLoaded, unitsCounted } from '../support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag } from '../support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { listenTo, type Listener } from '../support/listener.js';
import { pageText } from '../support/page-text.js';

describe('the drill: put a lot on hold while three of its pallets are on the open truck', () => {
  let house: TestHouse;
  let plant: Plant;
  let clerk: SignedInPerson;
  let officer: SignedInPerson;
  let listener: Listener | null = null;

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
    const signIn = async (...roles: Parameters<Plant['actorWith']>) =>
      signedIn(house, await aPerson(house, plant.siteId, { roles }));
    clerk = await signIn('dispatch-clerk');
    officer = await signIn('quality-officer');
    await house.app.listen(0, '127.0.0.1');
  });
  afterEach(async () => {
    listener?.stop();
    await listener?.over;
    listener = null;
  });
  afterAll(() => house.close());

  /** Three pallets of a lot on a vehicle that stands open, and a fourth of another lot. */
  async function loaded(code: string, otherCode: string) {
    await aTippedBag(house, plant);
    const run = await aPackedRun(house, plant, { packCount: 300, code });
    const three: PalletAnswer[] = [];
    for (let place = 0; place < 3; place += 1) three.push(await aPallet(house, plant, { run: run.runId }));
    const other = await aPackedRun(house, plant, { packCount: 100, code: otherCode, lineId: plant.lineIds[1] });
    const fourth = await aPallet(house, plant, { run: other.runId });
    const delivery = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 400 }] });
    for (const { runId, packCount } of [
      { runId: run.runId, packCount: 300 },
      { runId: other.runId, packCount: 100 },
    ]) {
      await house.get(CloseRun).execute(asking(plant.actor), runId, { packCount, loosePackCount: 0 });
    }
    house.clock.pass(1);
    for (const { sscc } of [...three, fourth]) await palletLoaded(house, plant, delivery, sscc);
    return { lotId: run.lotId, three, fourth, delivery };
  }

  const hold = (lotId: string) => officer.post('/api/holds', { kind: 'lot', id: lotId, reason: 'a stone was found' });

  it('changes the clerk’s screen within two seconds, locks printing, and names the three and only them', async () => {
    const { lotId, three, fourth, delivery } = await loaded('L6071A1', 'L6071A2');
    await unitsCounted(house, plant, delivery, 4);
    const before = await clerk.get(`/dispatch/${delivery}`);
    expect(before.text).toContain(`href="/dispatch/${delivery}/close"`);
    // The page's own live part listens to the journal; what it hears makes it ask for itself again.
    listener = await listenTo(await house.app.getUrl(), { Cookie: clerk.cookie });
    const begun = performance.now();
    expect((await hold(lotId)).status).toBe(201);
    const [event] = await listener.until(1, 2000);
    const after = await clerk.get(`/dispatch/${delivery}`);
    expect(performance.now() - begun).toBeLessThan(2000);
    expect(event?.action).toBe('place-hold');
    expect(after.text).not.toContain(`href="/dispatch/${delivery}/close"`);
    const alert = pageText(/role="alert"[\s\S]*?<\/(?:div|section|p)>/.exec(after.text)?.[0] ?? '');
    for (const { sscc } of three) expect(alert).toContain(sscc.slice(-4));
    expect(alert).not.toContain(fourth.sscc.slice(-4));
    const close = await clerk.send(`/dispatch/${delivery}/close`, { step: 'print', seal: 'S1' });
    expect(close.status).toBe(409);
  });

  it('keeps the vehicle at the gate where the papers were printed before, and the gate’s page names the three', async () => {
    const { lotId, three, delivery } = await loaded('L6071A3', 'L6071A4');
    await deliveryClosed(house, plant, delivery, { blindCount: 4 });
    expect((await hold(lotId)).status).toBe(201);
    const gate = pageText((await clerk.get(`/dispatch/${delivery}/leave`)).text);
    const leave = await clerk.send(`/dispatch/${delivery}/leave`, {});
    expect(leave.status).toBe(409);
    for (const { sscc } of three) expect(gate).toContain(sscc.slice(-4));
    for (const { sscc } of three) expect(pageText(leave.text)).toContain(sscc);
    const state = await clerk.get(`/api/deliveries/${delivery}`);
    expect(JSON.stringify(state.body)).not.toContain('"status":"left"');
  });
});
