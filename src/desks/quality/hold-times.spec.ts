import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { openHouse, type TestHouse } from '../../../test/support/house.js';
import { NotFound } from '../../platform/refusal.js';
import { siteOf } from '../../plant/plant-facts.js';
import type { HoldNewQuery } from './hold-new.form.js';
import { pathOfTimes } from './hold-times.js';

let house: TestHouse;
let plant: Plant;

beforeAll(async () => {
  house = await openHouse();
  house.clock.set('2026-03-12T11:30:00.000Z');
  plant = await aPlant(house);
});
afterAll(() => house.close());

async function pathOf(query: HoldNewQuery): Promise<string | null> {
  const { timeZone } = await siteOf(readerOf(house), plant.siteId);
  return pathOfTimes(readerOf(house), { siteId: plant.siteId, timeZone }, query);
}

describe('a hold that is asked for by time', () => {
  it('leads to the shift of that day, and to the minutes of a run by the plant’s clock', async () => {
    const place = `dryer-shift:${plant.dryerId}`;
    expect(await pathOf({ place, on: '2026-03-12', shift: 'M', next: '/bags' })).toBe(
      `/quality/holds/new?kind=dryer-shift&id=${plant.dryerId}&next=%2Fbags` +
        '&fromAt=2026-03-12T05:00:00.000Z&untilAt=2026-03-12T13:00:00.000Z',
    );
    const { runId, number: run } = await aRun(house, plant);
    expect(await pathOf({ run, from: '2026-03-12T12:30', until: '2026-03-12T12:45' })).toBe(
      `/quality/holds/new?kind=packing-run&id=${runId}` +
        '&fromAt=2026-03-12T11:30:00.000Z&untilAt=2026-03-12T11:45:00.000Z',
    );
    expect(await pathOf({})).toBeNull();
  });

  it('is refused where there is no such shift, day, place or run', async () => {
    const place = `packing-shift:${plant.lineIds[0]}`;
    const refused = (code: string): unknown => expect.objectContaining({ code });
    await expect(pathOf({ place, on: '2026-03-12', shift: 'X' })).rejects.toEqual(refused('hold-no-such-shift'));
    await expect(pathOf({ place, on: 'today', shift: 'M' })).rejects.toEqual(refused('field-not-local-time'));
    await expect(pathOf({ place: 'lot:1', on: '2026-03-12', shift: 'M' })).rejects.toBeInstanceOf(NotFound);
    await expect(pathOf({ run: 'PR-1', from: '', until: '' })).rejects.toBeInstanceOf(NotFound);
  });
});
