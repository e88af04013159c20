import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPackWeigher, packsWeighed } from '../../test/support/a-pack-weigher.js';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { threePallets } from '../../test/support/three-pallets.js';
import { CorrectTare } from '../fill-weight/kept/correct-tare.js';
import type { Asked } from '../journal/entry-draft.js';
import { meanNetOf } from '../fill-weight/mean-nets.js';
import { sourcesOfRanges } from '../hopper/hopper-links.js';
import { CorrectionRipple } from './correction-ripple.js';
import type { Ripple } from './ripple.js';

let house: TestHouse;
let plant: Plant;

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
});
afterEach(() => house.close());

describe('a tare correction, previewed', () => {
  it('shows what changes in lots and pallets, records nothing, and is what every answer says afterwards', async () => {
    const { startedAt, firstBag, gone, runId, lotId } = await threePallets(house, plant);
    const reader = readerOf(house);
    const weigher = await aPackWeigher(house, plant);
    const netGrams = Array.from({ length: 300 }, () => 2000);
    const fromAt = new Date(Date.parse(startedAt) + 15 * 60_000).toISOString();
    await packsWeighed(house, weigher, { run: runId, fromAt, netGrams, everySeconds: 10 });
    const before = await meanNetOf(reader, runId);
    const person = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['administrator'] }));
    const range = { weigherId: weigher.weigherId, series: '1', fromSequence: 1, toSequence: 300 };
    const form = { runId, ...range, addedMilligrams: 10_000, reason: 'the empty was weighed wet' };
    const answer = await person.post('/api/tare-corrections/preview', form);
    expect(answer.status).toBe(200);
    const ripple = answer.body as Ripple;
    expect(await meanNetOf(reader, runId)).toEqual(before);
    expect(ripple.lots.map((lot) => lot.lotId)).toEqual([lotId]);
    expect(ripple.pallets.map(({ palletId }) => palletId)).toContain(gone);
    const { id } = await house.get(CorrectTare).execute({ ...asking(plant.actor), previewed: ripple.mark }, form);
    const [link] = (await sourcesOfRanges(reader, [{ runId, fromCount: 0, toCount: 100 }])).filter(
      ({ bagId }) => bagId === firstBag,
    );
    const promised = ripple.pallets
      .find(({ palletId }) => palletId === gone)
      ?.sources.find(({ bagId }) => bagId === firstBag);
    expect(link).toMatchObject({ ...promised?.after });
    expect(promised?.before).not.toEqual(promised?.after);
    const back = await person.post(`/api/tare-corrections/${id}/withdrawal/preview`, { reason: 'it was dry' });
    expect((back.body as Ripple).lots.map((lot) => lot.lotId)).toEqual([lotId]);
  });

  it('still holds while the weigher weighs on, and not once weights came late', async () => {
    const { runId } = await threePallets(house, plant);
    const weigher = await aPackWeigher(house, plant);
    const now = house.clock.now();
    const weigh = (minutesAgo: number, fromSequence: number) => {
      const fromAt = new Date(Date.parse(now) - minutesAgo * 60_000).toISOString();
      return packsWeighed(house, weigher, { run: runId, fromAt, fromSequence, netGrams: [2000, 2001, 2002] });
    };
    await weigh(1, 1);
    const form = {
      ...{ runId, weigherId: weigher.weigherId, series: '1', fromSequence: 1, toSequence: 3, addedMilligrams: 1000 },
      reason: 'wet',
    };
    const correct = (asked: Asked) => house.get(CorrectTare).execute(asked, form);
    const { mark } = await house.get(CorrectionRipple).of(asking(plant.actor), correct);
    await weigh(0, 4);
    await weigh(30, 7);
    await expect(correct({ ...asking(plant.actor), previewed: mark })).rejects.toMatchObject({
      code: 'preview-is-stale',
    });
    const again = await house.get(CorrectionRipple).of(asking(plant.actor), correct);
    await weigh(0, 10);
    await expect(correct({ ...asking(plant.actor), previewed: again.mark })).resolves.toMatchObject({ packCount: 3 });
  });
});
