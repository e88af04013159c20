import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPlant, moistureMethod, type Plant } from '../../test/support/a-plant.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { methodKey, recentRepeatability } from './recent-repeats.js';
import { Result } from './result.entity.js';
import { Sample } from './sample.entity.js';

let house: TestHouse;
let plant: Plant;
let other: Plant;
let madeCount = 0;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  other = await aPlant(house, { siteCode: 'OTHER' });
});
afterAll(async () => {
  await house.close();
});

const at = '2026-03-12T05:00:00.000Z';
const moisture = { property: 'moisture-percent', method: moistureMethod };

/** Ids in the order in which they are made, as those of the house are. */
function nextId(): string {
  madeCount += 1;
  return `00000000-0000-7000-8000-${String(madeCount).padStart(12, '0')}`;
}

/** Samples of a site, each with its results; those after the first repeat it. */
async function analysed(siteId: string, ...ofSamples: readonly (readonly string[])[]): Promise<void> {
  const common = { bagId: null, dryerId: null, fromAt: null, untilAt: null, takenAt: at, voidedBy: null };
  const samples = ofSamples.map(() => {
    const id = nextId();
    return { ...common, id, siteId, number: id, standsFor: 'hour' as const };
  });
  const results = ofSamples.flatMap((amounts, place) =>
    amounts.map((amount, retestNumber) => ({
      ...moisture,
      ...{ id: nextId(), sampleId: samples[place]?.id ?? '', amount, retestNumber, analysedAt: at, voidedBy: null },
    })),
  );
  await house.get(UnitOfWork).run(async (tx) => {
    await tx.insert(Sample, samples);
    await tx.insert(Result, results);
  });
}

const degreesOf = async (siteId: string): Promise<number | undefined> =>
  (await recentRepeatability(readerOf(house), siteId)).get(methodKey(moisture))?.degreesOfFreedom;

describe('what a laboratory repeated lately', () => {
  it('is of its own samples, of the last thousand results alone', async () => {
    const twice = Array.from({ length: 6 }, (_, place) => ['0.030', `0.03${place}`]);
    await analysed(plant.siteId, ...twice, ['0.031']);
    expect(await degreesOf(plant.siteId)).toBe(6);
    expect(await degreesOf(other.siteId)).toBeUndefined();

    // The repeat of the first sample is the thousandth from the end then, and no more after one more.
    await analysed(other.siteId, ...Array.from({ length: 1000 - 12 }, () => ['0.030']));
    expect(await degreesOf(plant.siteId)).toBe(6);
    await analysed(other.siteId, ['0.030']);
    expect(await degreesOf(plant.siteId)).toBe(5);
  });
});
