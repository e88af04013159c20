import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, readerOf, someResults } from '../../test/support/a-bag.js';
import { aPlant, moistureMethod, type Plant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { refuseUnusual, usualRangeOf } from './usual-range.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
const moisture = { property: 'moisture-percent', method: moistureMethod };

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
});
afterAll(async () => {
  await house.close();
});

describe('what is usual of a property', () => {
  it('is not known from eleven results, and is from twelve', async () => {
    for (let each = 0; each < 11; each += 1) {
      await someResults(house, plant, await aBag(house, plant), {
        moisturePercent: each % 2 === 0 ? '0.030' : '0.034',
      });
    }
    expect(await usualRangeOf(reader, plant.siteId, moisture)).toBeNull();
    await refuseUnusual(reader, plant.siteId, { ...moisture, amount: '34', isSure: false });
    await someResults(house, plant, await aBag(house, plant), { moisturePercent: '0.034' });
    const usual = await usualRangeOf(reader, plant.siteId, moisture);
    expect(usual?.least).toBeCloseTo(0.0236, 3);
    expect(usual?.most).toBeCloseTo(0.0404, 3);
  });

  it('asks again about a figure with its point in the wrong place, and takes it when somebody is sure', async () => {
    const ask = (amount: string, isSure: boolean) =>
      refuseUnusual(reader, plant.siteId, { ...moisture, amount, isSure });
    await expect(ask('0.32', false)).rejects.toMatchObject({ code: 'result-unusual' });
    await ask('0.32', true);
    await ask('0.035', false);
  });
});
