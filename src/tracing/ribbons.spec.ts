import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aLotLoaded } from '../../test/support/a-loaded-lot.js';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aTippedBag } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { ChangeCode } from '../packing/change-code.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { readThread } from './read-thread.js';
import { ribbonsOfThread } from './ribbons.js';
import { subjectById } from './subject-by-id.js';
import type { Thread } from './thread.js';
import { gramPreciseText } from './thread-text.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let quality: SignedInPerson;
let lotId: string;
let code: string;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  const { run } = await aLotLoaded(house, plant, 1);
  await aTippedBag(house, plant);
  code = 'L6071A2';
  const change = { code, packCount: 500 };
  ({ lotId } = await house.get(ChangeCode).execute(asking(plant.actor), run.runId, change));
  house.clock.pass(60);
  await packsCounted(house, plant, run.runId, 1200);
  quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
});
afterAll(() => house.close());

describe('the ribbons of a thread', () => {
  it('lie where the packs are among all that left the hopper, and where the bags are among what was tipped', async () => {
    const thread = await readThread(from, plant.siteId, await subjectById(from, 'lot', lotId), house.clock.now());
    const [ribbons] = await ribbonsOfThread(from, plant.siteId, thread);
    const asked = ribbons?.windows.reduce((sum, { fromGrams, toGrams }) => sum + toGrams - fromGrams, 0) ?? 0;
    expect(Math.abs(asked - thread.subjectGrams.grams)).toBeLessThanOrEqual(ribbons?.windows.length ?? 0);
    expect(ribbons?.windows[0]?.fromGrams).toBeGreaterThan(490_000);
    expect(ribbons?.bags.map(({ bagId }) => bagId)).toEqual(thread.sources.map(({ bagId }) => bagId));
    const spans = ribbons?.bags.flatMap((bag) => bag.spans) ?? [];
    expect(spans.reduce((sum, { fromGrams, toGrams }) => sum + toGrams - fromGrams, 0)).toBe(ribbons?.inGrams);
  });

  it('are none of a bag, which is its own source', async () => {
    const thread = await readThread(from, plant.siteId, await subjectById(from, 'lot', lotId), house.clock.now());
    const bag = await subjectById(from, 'bulk-bag', thread.sources[0]?.bagId ?? '');
    expect(await ribbonsOfThread(from, plant.siteId, { subject: bag, sources: [] })).toEqual([]);
  });

  it('say on the page the same kilograms as the table beneath, and say them to who cannot see the picture', async () => {
    const { text } = await quality.get(`/thread?code=${code}`);
    const [, picture = '', beneath = ''] = /<svg[^>]*ribbon-picture[^>]*>(.*?)<\/svg>(.*)$/s.exec(text) ?? [];
    const answer = (await quality.get(`/api/thread?code=${code}`)).body as { thread: Thread };
    const { sources } = answer.thread;
    const shown = sources.filter(({ word }) => word !== 'possible');
    expect(shown.length).toBeGreaterThan(0);
    for (const { bagNumber, leastGrams, likelyGrams, mostGrams } of shown) {
      const amounts = [leastGrams, likelyGrams, mostGrams].map(gramPreciseText);
      const said = `least ${amounts[0]}, likely ${amounts[1]}, most ${amounts[2]} kg`;
      expect(picture.split(said)).toHaveLength(3);
      const row = beneath.split('<tr').find((one) => one.includes(`>${bagNumber}</a>`)) ?? '';
      for (const amount of amounts) expect(row).toContain(amount);
    }
    expect(picture).toMatch(/<title id="([^"]+)">.*<desc id=/s);
  });
});
