import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aPlant, moistureMethod, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { CorrectBag } from '../drying/correct-bag.js';
import { ReportResult } from '../laboratory/report-result.js';
import { TakeSample } from '../laboratory/take-sample.js';
import { shifted } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { changesAbout, changesToLookAt, type ChangeLine } from './changes-to-look-at.js';
import { ReviewChanges } from './review-changes.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let fromAt: string;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
  house.clock.pass(60);
  fromAt = house.clock.now();
});
afterAll(async () => {
  await house.close();
});

const looked = (isReviewed = false): Promise<readonly ChangeLine[]> =>
  changesToLookAt(reader, plant.siteId, { fromAt, isReviewed });
const review = (entryIds: string[], note: string | null = null) =>
  house.get(ReviewChanges).execute(asking(plant.actor), { entryIds, note });

/** A result that was entered so many minutes after it was measured. */
async function aResult(lateMinutes: number): Promise<{ sampleId: string }> {
  const bag = await aBag(house, plant);
  const takenAt = shifted(house.clock.now(), -30 * 60_000);
  const sample = await house
    .get(TakeSample)
    .execute(asking(plant.actor), { standsFor: 'bag', bag: bag.number, takenAt });
  const analysedAt = shifted(house.clock.now(), -lateMinutes * 60_000);
  const result = { property: 'moisture-percent', method: moistureMethod, amount: '0.03', analysedAt };
  await house.get(ReportResult).execute(asking(plant.actor), { sample: sample.number, ...result });
  return { sampleId: sample.id };
}

describe('the list of late entries and corrections', () => {
  it('has what came more than a quarter of an hour late, and no more', async () => {
    await aResult(15);
    const { sampleId } = await aResult(16);
    const results = (await looked()).filter(({ action }) => action === 'report-result');
    expect(results.map(({ subjectId, lateMinutes }) => [subjectId, lateMinutes])).toEqual([[sampleId, 16]]);
  });

  it('has corrections, late or not, with what was there before', async () => {
    const bag = await aBag(house, plant);
    await house.get(CorrectBag).execute(asking(plant.actor), { bag: bag.number, reason: 'entered twice' });
    const [latest] = await looked();
    expect(latest).toMatchObject({ isCorrection: true, reason: 'entered twice', subjectId: bag.id, review: null });
    expect((await changesAbout(reader, plant.siteId, [bag.id])).map(({ sequence }) => sequence)).toContain(
      latest?.sequence,
    );
  });

  it('empties as quality looks at them, and keeps what was found', async () => {
    const before = await looked();
    const [one, ...rest] = before.map(({ entryId }) => entryId);
    expect(await review([one ?? ''], 'spoke with the analyst')).toEqual({ count: 1 });
    expect((await looked()).map(({ entryId }) => entryId)).toEqual(rest);
    const [seen] = await looked(true);
    expect(seen?.review).toMatchObject({ note: 'spoke with the analyst', personId: plant.actor.personId });
    await review(rest);
    expect(await looked()).toEqual([]);
  });

  it('takes one look at an entry, and only at what is there', async () => {
    const [seen] = await looked(true);
    await expect(review([seen?.entryId ?? ''])).rejects.toMatchObject({ code: 'change-looked-at-already' });
    await expect(review(['0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10'])).rejects.toMatchObject({ kind: 'journal-entry' });
  });

  it('says it of two officers who look at the same entry at once', async () => {
    const { sampleId } = await aResult(20);
    const line = (await looked()).find(({ subjectId }) => subjectId === sampleId);
    const both = await Promise.allSettled([review([line?.entryId ?? '']), review([line?.entryId ?? ''])]);
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
  });
});
