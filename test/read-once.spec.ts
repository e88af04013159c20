import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { runOf } from '../src/packing/packing-runs.js';
import { clocksOfCoder } from '../src/plant/coder-clocks.js';
import { coderOfLine } from '../src/plant/plant-facts.js';
import { SetCoderClock } from '../src/plant/set-coder-clock.js';
import { unchanging, type ReadFrom } from '../src/platform/database/reading.js';
import { readerOf } from './support/a-bag.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { aStartedRun } from './support/a-tip.js';
import { asking, openHouse, type TestHouse } from './support/house.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
});

afterAll(async () => {
  await house.close();
});

/** A view of the house as a thread of heavy reads has one, and how many statements it has asked. */
function aView(): { readonly from: ReadFrom; readonly asked: () => number } {
  let count = 0;
  const from = unchanging({
    sql: (strings, ...values) => {
      count += 1;
      return reader.sql(strings, ...values);
    },
  });
  return { from, asked: () => count };
}

describe('what is read once in an unchanging view', () => {
  it('is each line’s own coder with its own clock, and each run itself', async () => {
    const [one, two] = plant.lineIds;
    const runs = [await aStartedRun(house, plant, { lineId: one }), await aStartedRun(house, plant, { lineId: two })];
    const { from, asked } = aView();
    for (const round of ['first', 'second']) {
      const coders = [await coderOfLine(from, one), await coderOfLine(from, two)];
      expect([round, ...coders.map((coder) => coder?.id)]).toEqual([round, ...plant.coderIds]);
      const clocks = await Promise.all(plant.coderIds.map((id) => clocksOfCoder(from, id)));
      expect(new Set(clocks.flat().map(({ id }) => id)).size).toBe(2);
      const found = await Promise.all(runs.map(({ id }) => runOf(from, id)));
      expect(found.map(({ lineId }) => lineId)).toEqual([one, two]);
    }
    expect(asked()).toBe(6);
  });

  it('is read anew where something may change in between', async () => {
    const [coderId] = plant.coderIds;
    const before = await clocksOfCoder(reader, coderId);
    house.clock.pass(1);
    const clock = { coderId, offsetSeconds: 120, uncertaintySeconds: 30, validFrom: house.clock.now() };
    await house.get(SetCoderClock).execute(asking(plant.actor), clock);
    expect(await clocksOfCoder(reader, coderId)).toHaveLength(before.length + 1);
  });
});
