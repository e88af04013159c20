import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { sourcesOfRanges } from '../../src/hopper/hopper-links.js';
import { ChangeCode } from '../../src/packing/change-code.js';
import { shiftAt } from '../../src/plant/plant-facts.js';
import { millisecondsBetween } from '../../src/platform/clock.js';
import type { ReadFrom } from '../../src/platform/database/reading.js';
import { readerOf } from '../support/a-bag.js';
import { aPallet } from '../support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson } from '../support/a-person.js';
import { aPlant, type Plant } from '../support/a-plant.js';
import { packsCounted } from '../support/a-run.js';
import { aStartedRun, aTippedBag } from '../support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../support/house.js';

interface Choice {
  readonly meant: string;
  readonly subject: { readonly printedAt: string | null };
}
interface Followed {
  readonly thread: {
    readonly packed: readonly {
      readonly fromCount: number;
      readonly toCount: number;
      readonly packingShifts: readonly { readonly productionOn: string; readonly shiftCode: string }[];
    }[];
    readonly sources: readonly { readonly bagId: string; readonly word: string }[];
  };
}

/** In Berlin the night of 25 October 2026 begins at 20:00 UTC; 02:30 comes at 00:30 UTC and again at 01:30 UTC. */
const nightBegins = '2026-10-24T20:00:00.000Z';
const comings = ['2026-10-25T00:30:00.000Z', '2026-10-25T01:30:00.000Z'] as const;

describe('the drill: a night shift through the autumn clock change', () => {
  let house: TestHouse;
  let plant: Plant;
  let officer: SignedInPerson;
  let from: ReadFrom;
  let runId: string;
  const bags: string[] = [];

  beforeAll(async () => {
    house = await openHouse();
    from = readerOf(house);
    plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
    house.clock.set(nightBegins);
    officer = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
    bags.push((await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id);
    house.clock.pass(15);
    runId = (await aStartedRun(house, plant)).id;
    await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L62971N', packCount: 0 });
    // 100 packs of 2 kg every 15 minutes from 20:30 UTC on for 32 quarters: a bag every five of them.
    for (let quarter = 1; quarter <= 32; quarter += 1) {
      house.clock.pass(15);
      await packsCounted(house, plant, runId, quarter * 100);
      await aPallet(house, plant, { run: runId });
      if (quarter % 5 === 4) bags.push((await aTippedBag(house, plant, { netGrams: 1_000_000 })).bag.id);
    }
  }, 180_000);
  afterAll(() => house.close());

  it('is one shift of nine hours with one production date, on both sides of the change', async () => {
    const shifts = await Promise.all(
      [nightBegins, ...comings, '2026-10-25T04:59:59.000Z'].map((at) => shiftAt(from, plant.siteId, at)),
    );
    for (const shift of shifts) expect(shift).toMatchObject({ productionOn: '2026-10-24', shiftCode: 'N' });
    const [{ startsAt, endsAt }] = shifts as [(typeof shifts)[number]];
    expect(startsAt).toBe(nightBegins);
    expect(millisecondsBetween(startsAt, endsAt)).toBe(9 * 3_600_000);
    expect(await shiftAt(from, plant.siteId, endsAt)).toMatchObject({ productionOn: '2026-10-25', shiftCode: 'M' });
  });

  it('tells the two 02:30s apart, names both in the plant’s own time, and follows each to its own packs', async () => {
    const asked = await officer.get('/api/thread?code=L62971N&at=02:30');
    const { choices } = asked.body as { readonly choices: readonly Choice[] };
    expect(choices.map(({ subject }) => subject.printedAt)).toEqual([...comings, null]);
    const page = (await officer.get('/thread?code=L62971N%2002%3A30')).text;
    for (const offset of ['UTC+02:00', 'UTC+01:00']) expect(page).toContain(`2026-10-25 02:30 ${offset}`);
    const follow = async ({ meant }: Choice): Promise<Followed['thread']> => {
      const path = `/api/thread?code=L62971N&at=02:30&meant=${encodeURIComponent(meant)}`;
      return ((await officer.get(path)).body as Followed).thread;
    };
    const [first, second] = [await follow(choices[0] as Choice), await follow(choices[1] as Choice)];
    for (const { packed } of [first, second]) {
      expect(packed).toHaveLength(1);
      expect(packed[0]?.packingShifts).toMatchObject([{ productionOn: '2026-10-24', shiftCode: 'N' }]);
    }
    // Four quarters of an hour lie between them: 400 packs.
    expect((second.packed[0]?.fromCount ?? 0) - (first.packed[0]?.fromCount ?? 0)).toBe(400);
    expect(first.packed[0]?.toCount).toBeLessThanOrEqual(second.packed[0]?.fromCount ?? 0);
  });

  it('keeps the bags in the order in which they were tipped, through both hours', async () => {
    const likeliest: number[] = [];
    for (let packs = 0; packs < 3200; packs += 100) {
      const [link] = await sourcesOfRanges(from, [{ runId, fromCount: packs, toCount: packs + 100 }]);
      likeliest.push(bags.indexOf(link?.bagId ?? ''));
    }
    expect(likeliest).toEqual(likeliest.toSorted((one, other) => one - other));
    // 200 kg a quarter, a tonne a bag: five quarters each, the sixth and seventh bag after the clocks went back.
    expect(likeliest).toEqual(Array.from({ length: 32 }, (_, quarter) => Math.floor(quarter / 5)));
  });
});
