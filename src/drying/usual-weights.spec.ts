import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, aDryerRun, readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { openPointsOf } from '../open-points/open-points.js';
import { AddBagType } from '../plant/add-bag-type.js';
import { SetUsualNet } from '../plant/set-usual-net.js';
import { CloseBag } from './close-bag.js';
import { StartBag } from './start-bag.js';
import { bandAround, confirmationOf, usualNet } from './usual-weights.js';

const type = {
  code: 'FOURLOOP',
  name: 'Four loops',
  usualTareGrams: 2_000,
  leastTareGrams: 1_800,
  mostTareGrams: 2_200,
  safeLoadGrams: 1_250_000,
};

describe('what is usual', () => {
  it('is four deviations either side of the mean, never closer than two kilograms', () => {
    expect(bandAround([1_000_000, 1_000_000])).toEqual({
      leastGrams: 998_000,
      mostGrams: 1_002_000,
      source: 'last-bags',
    });
    // The deviation of 990 and 1010 kg is 14.142 kg.
    expect(bandAround([990_000, 1_010_000])).toMatchObject({ leastGrams: 943_431, mostGrams: 1_056_569 });
  });
});

describe('a bag whose weights a person types', () => {
  let house: TestHouse;
  let plant: Plant;
  let bagTypeId: string;
  let bag: { id: string; number: string };

  beforeEach(async () => {
    house = await openHouse();
    plant = await aPlant(house);
    bagTypeId = (await house.get(AddBagType).execute(asking(plant.actor), type)).id;
    bag = await hung();
  });
  afterEach(async () => {
    await house.close();
  });

  async function hung(): Promise<{ id: string; number: string }> {
    const run = await aDryerRun(house, plant);
    return house.get(StartBag).execute(asking(plant.actor), { run: run.number, bagTypeId });
  }

  function close(grossGrams: number, wishes: { tareGrams?: number; confirmed?: string } = {}) {
    const { tareGrams = 2_000, confirmed = null } = wishes;
    const weights = { grossGrams, tareGrams, isPresetTare: true, scaleId: plant.scaleId };
    return house.get(CloseBag).execute(asking(plant.actor), { bag: bag.number, ...weights, isTyped: true, confirmed });
  }

  const points = () =>
    openPointsOf(readerOf(house), plant.siteId, { state: 'open', role: null, before: null, limit: 50 });

  async function gradeBand(): Promise<void> {
    const band = { gradeId: plant.gradeId, leastNetGrams: 980_000, mostNetGrams: 1_020_000 };
    await house.get(SetUsualNet).execute(asking(plant.actor), band);
  }

  it('is closed without a question where nobody knows what is usual', async () => {
    expect(await close(702_000)).toMatchObject({ netGrams: 700_000 });
  });

  it('is asked about once more outside the usual band of its grade, and not at the ends of it', async () => {
    await gradeBand();
    await expect(close(981_999)).rejects.toMatchObject({
      code: 'net-not-usual',
      facts: { bag: bag.number, kilograms: '979.999', least: '980', most: '1\u202f020', confirmed: '981999/2000' },
    });
    await expect(close(1_022_001)).rejects.toMatchObject({ code: 'net-not-usual' });
    expect(await close(982_000)).toMatchObject({ netGrams: 980_000 });
    bag = await hung();
    expect(await close(1_022_000)).toMatchObject({ netGrams: 1_020_000 });
    expect(await points()).toEqual([]);
  });

  it('is recorded once somebody looked at these very weights again, and quality hears of it', async () => {
    await gradeBand();
    const confirmed = confirmationOf({ grossGrams: 902_000, tareGrams: 2_000 });
    await expect(close(802_000, { confirmed })).rejects.toMatchObject({ code: 'net-not-usual' });
    expect(await close(902_000, { confirmed })).toMatchObject({ netGrams: 900_000 });
    expect((await points()).map((point) => [point.cause, point.role])).toEqual([
      ['net-not-usual-kept', 'quality-officer'],
    ]);
  });

  it('is asked about its tare outside the band of its type, and not at the ends of it', async () => {
    await expect(close(1_002_201, { tareGrams: 2_201 })).rejects.toMatchObject({
      code: 'tare-not-usual',
      facts: { kilograms: '2.201', least: '1.8', most: '2.2' },
    });
    await expect(close(1_001_799, { tareGrams: 1_799 })).rejects.toMatchObject({ code: 'tare-not-usual' });
    expect(await close(1_002_200, { tareGrams: 2_200 })).toMatchObject({ netGrams: 1_000_000 });
    bag = await hung();
    const confirmed = confirmationOf({ grossGrams: 1_001_799, tareGrams: 1_799 });
    expect(await close(1_001_799, { tareGrams: 1_799, confirmed })).toMatchObject({ netGrams: 1_000_000 });
    expect((await points()).map((point) => point.cause)).toEqual(['tare-not-usual-kept']);
  });

  it('is measured by the last bags of its grade and scale as soon as there are ten', async () => {
    await gradeBand();
    for (let place = 0; place < 9; place += 1) await aBag(house, plant, { netGrams: 1_000_000 });
    expect(await usualNet(readerOf(house), plant.gradeId, plant.scaleId)).toMatchObject({ source: 'grade' });
    await aBag(house, plant, { netGrams: 1_000_000 });
    expect(await usualNet(readerOf(house), plant.gradeId, plant.scaleId)).toEqual({
      leastGrams: 998_000,
      mostGrams: 1_002_000,
      source: 'last-bags',
    });
    expect(await usualNet(readerOf(house), plant.gradeId, plant.staleScaleId)).toMatchObject({ source: 'grade' });
    await expect(close(1_004_001)).rejects.toMatchObject({ code: 'net-not-usual' });
    expect(await close(1_004_000)).toMatchObject({ netGrams: 1_002_000 });
  });

  it('is never lifted above its safe load, however often it is confirmed', async () => {
    await gradeBand();
    const confirmed = confirmationOf({ grossGrams: 1_250_001, tareGrams: 2_000 });
    await expect(close(1_250_001, { confirmed })).rejects.toMatchObject({ code: 'over-safe-load' });
  });

  it('is not hung up without a type or a safe load', async () => {
    const run = await aDryerRun(house, plant);
    const start = house.get(StartBag).execute(asking(plant.actor), { run: run.number });
    await expect(start).rejects.toMatchObject({ code: 'safe-load-missing' });
  });
});
