import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { sourcesOfRanges } from '../../src/hopper/hopper-links.js';
import { ChangeCode } from '../../src/packing/change-code.js';
import { readerOf } from '../support/a-bag.js';
import { aPallet } from '../support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { packsCounted } from '../support/a-run.js';
import { aReleasedBag, aStartedRun, aTippedBag, jobsDone } from '../support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';
import { hiddenFields, pageText } from '../support/page-text.js';

const capacityGrams = 4_000_000;
const warning = 'A tip may not be entered, or late';

describe('the drill: skip one tip and keep packing', () => {
  let house: TestHouse;
  let plant: Plant;
  let lead: SignedInPerson;
  let run: string;
  let skipped: { readonly id: string; readonly number: string; readonly at: string };
  let packs = 0;
  const pallets: string[] = [];

  beforeAll(async () => {
    house = await openHouse();
    plant = await aPlant(house, { packsPerPallet: 100, capacityGrams });
    lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
    await aTippedBag(house, plant, { netGrams: 1_000_000 });
    run = (await aStartedRun(house, plant)).id;
    await house.get(ChangeCode).execute(asking(plant.actor), run, { code: 'L6071A1', packCount: 0 });
  });
  afterAll(() => house.close());

  /** 100 packs of 2 kg in four minutes, on a pallet. */
  async function pack(): Promise<void> {
    house.clock.pass(4);
    packs += 100;
    await packsCounted(house, plant, run, packs);
    pallets.push((await aPallet(house, plant, { run })).id);
    await jobsDone(house);
  }

  const shiftPage = async (): Promise<string> => pageText((await lead.get(`/line/${plant.lineIds[0]}`)).text);

  it('warns no later than one hopper-full afterwards, and by how many kilograms', async () => {
    for (let place = 0; place < 3; place += 1) await pack();
    expect(await shiftPage()).not.toContain(warning);
    const bag = await aReleasedBag(house, plant, { netGrams: 1_000_000 });
    skipped = { ...bag, at: house.clock.now() };
    const packedBefore = packs;
    while (!(await shiftPage()).includes(warning) && packs < 5000) await pack();
    const packedGrams = (packs - packedBefore) * 2000;
    expect(packedGrams).toBeGreaterThan(0);
    expect(packedGrams).toBeLessThanOrEqual(capacityGrams);
    const missing = Number(/More left than went in: ([\d ]+)/.exec(await shiftPage())?.[1]?.replaceAll(' ', ''));
    // No more is claimed than packs × mean net lack of the one bag that went in.
    expect(missing).toBeGreaterThan(0);
    expect(missing).toBeLessThanOrEqual(packs * 2 - 1000);
  });

  it('lets a late tip clear it, shows first what it changes, and computes the pallets anew', async () => {
    const bagsOf = async (from: number, to: number): Promise<readonly string[]> => {
      const links = await sourcesOfRanges(readerOf(house), [{ runId: run, fromCount: from, toCount: to }]);
      return links.map(({ bagId }) => bagId);
    };
    expect(await bagsOf(0, packs)).not.toContain(skipped.id);
    const path = `/line/${plant.lineIds[0]}/late/look`;
    const shown = await lead.send(path, {
      ...{ bag: skipped.number, openedAt: skipped.at, isOff: 'true', reason: 'forgotten at the jam' },
    });
    const later = packs / 100 - 3;
    expect(Number(/pallets: (\d+)/.exec(pageText(shown.text))?.[1])).toBeGreaterThanOrEqual(later);
    expect((await lead.send(path, hiddenFields(shown.text))).status).toBe(303);
    await jobsDone(house);
    expect(await shiftPage()).not.toContain(warning);
    const links = await sourcesOfRanges(readerOf(house), [{ runId: run, fromCount: 0, toCount: packs }]);
    const link = links.find(({ bagId }) => bagId === skipped.id);
    // What was packed beyond the first bag can only have come from it: to the kilogram, within the limits of the weights.
    expect(link?.word).toBe('sure');
    expect(link?.leastGrams).toBeLessThanOrEqual(packs * 2000 - 990_000);
    expect(link?.mostGrams).toBeGreaterThanOrEqual(packs * 2000 - 1_010_000);
    expect(pallets.length * 100).toBe(packs);
    expect(await bagsOf(packs - 100, packs)).toContain(skipped.id);
  });
});
