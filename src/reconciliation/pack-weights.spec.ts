import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher, packsWeighed, type TestWeigher } from '../../test/support/a-pack-weigher.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun, packsCounted } from '../../test/support/a-run.js';
import { openHouse, type TestHouse } from '../../test/support/house.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { packWeightsOf, type PackWeight } from './pack-weights.js';

let house: TestHouse;
let plant: Plant;
let weigher: TestWeigher;
let runId: string;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  weigher = await aPackWeigher(house, plant);
  const run = await aRun(house, plant);
  ({ runId } = run);
  house.clock.pass(60);
  const fromAt = new Date(Date.parse(house.clock.now()) - 50 * 60_000).toISOString();
  const netGrams = Array.from({ length: 1200 }, () => 2002);
  await packsWeighed(house, weigher, { run: run.number, fromAt, netGrams });
});
afterAll(() => house.close());

async function weightWhen(packCount: number): Promise<PackWeight | undefined> {
  await packsCounted(house, plant, runId, packCount);
  const reader = house.app.get<ReadFrom>(READER, { strict: false });
  return (await packWeightsOf(reader, [runId], new Map())).get(runId);
}

describe('what an account takes packs to hold that were weighed one by one', () => {
  it('is off by what the weigher is off by, the same for all of them', async () => {
    const weight = await weightWhen(1200);
    expect(weight).toMatchObject({ basis: 'measured', meanMilligrams: 2_002_000, meanStandardMilligrams: 0 });
    expect(weight?.scale?.scaleId).toBe(weigher.weigherId);
    expect(weight?.scale?.standardMilligrams).toBeCloseTo(500 / Math.sqrt(3), 6);
  });

  it('is hardly less sure where a handful was not weighed, and not as unsure as if none had been', async () => {
    const weight = await weightWhen(1212);
    // 12 of 1212 may hold 1990 g to 2020 g; 12 of the 60 of a minute widen the limits to 1999.2 g to 2006.0 g.
    expect(weight?.meanStandardMilligrams).toBeGreaterThan(0);
    expect(weight?.meanStandardMilligrams).toBeLessThan(50);
    expect(weight?.scale?.scaleId).toBe(weigher.weigherId);
  });
});
