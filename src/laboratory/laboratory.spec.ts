import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, aDryerRun, readerOf } from '../../test/support/a-bag.js';
import { aPlant, colourMethod, moistureMethod, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { bagOf } from '../drying/bulk-bags.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { laboratoryStandingOf, resultsOfBags } from './bag-results.js';
import { CorrectResult } from './correct-result.js';
import { CorrectSample } from './correct-sample.js';
import { ReportResult } from './report-result.js';
import { coversBag } from './sample-cover.js';
import type { ReportResultForm, TakeSampleForm } from './sample.form.js';
import { bagsOfSample, findSample, resultsOfSamples, samplePage } from './samples.js';
import { TakeSample } from './take-sample.js';

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

const refused = (code: string) => expect.objectContaining({ name: 'Refusal', code });
const unknown = (kind: string) => expect.objectContaining({ name: 'NotFound', kind });
const take = (form: TakeSampleForm) => house.get(TakeSample).execute(asking(plant.actor), { reason: 'test', ...form });
const report = (sample: string, wishes: Partial<ReportResultForm> = {}) =>
  house.get(ReportResult).execute(asking(plant.actor), {
    sample,
    property: 'moisture-percent',
    method: moistureMethod,
    amount: '0.035',
    ...wishes,
  });
const standing = async (bagId: string) => laboratoryStandingOf(reader, await bagOf(reader, bagId), plant.gradeId);

describe('what a sample stands for', () => {
  it('is half-open: a bag filled exactly at the end of an hour belongs to the next', () => {
    const hour = { bagId: null, dryerId: 'd', fromAt: '2026-03-12T05:00:00.000Z', untilAt: '2026-03-12T06:00:00.000Z' };
    const bag = (filledAt: string | null, dryerId = 'd') => ({ id: 'b', dryerId, filledAt });
    expect(coversBag(hour, bag('2026-03-12T05:00:00.000Z'))).toBe(true);
    expect(coversBag(hour, bag('2026-03-12T05:59:59.999Z'))).toBe(true);
    expect(coversBag(hour, bag('2026-03-12T06:00:00.000Z'))).toBe(false);
    expect(coversBag(hour, bag('2026-03-12T04:59:59.999Z'))).toBe(false);
    expect(coversBag(hour, bag('2026-03-12T05:30:00.000Z', 'other'))).toBe(false);
    expect(coversBag(hour, bag(null))).toBe(false);
    const own = { bagId: 'b', dryerId: null, fromAt: null, untilAt: null };
    expect(coversBag(own, bag(null))).toBe(true);
    expect(coversBag({ ...own, bagId: 'c' }, bag(null))).toBe(false);
  });

  it('is read from the database as the rule says: hour, neighbouring hour, shift, and the bag itself', async () => {
    house.clock.set('2026-03-12T08:00:00.000Z');
    await aDryerRun(house, plant);
    house.clock.set('2026-03-12T09:00:00.000Z');
    const atNine = await aBag(house, plant);
    house.clock.set('2026-03-12T09:59:59.999Z');
    const beforeTen = await aBag(house, plant);
    house.clock.set('2026-03-12T10:00:00.000Z');
    const atTen = await aBag(house, plant);
    const hour = await take({ standsFor: 'hour', dryerId: plant.dryerId, fromAt: '2026-03-12T09:00:00.000Z' });
    const own = await take({ standsFor: 'bag', bag: atTen.number });
    // The early shift of 12 March in Berlin is 06:00 to 14:00 local, 05:00 to 13:00 UTC.
    const shift = await take({ standsFor: 'shift', dryerId: plant.dryerId, fromAt: '2026-03-12T09:30:00.000Z' });
    expect([shift.fromAt, shift.untilAt]).toEqual(['2026-03-12T05:00:00.000Z', '2026-03-12T13:00:00.000Z']);
    const ids = async (sampleId: string) =>
      (await bagsOfSample(reader, await findSample(reader, plant.siteId, sampleId))).map(({ id }) => id);
    expect(await ids(hour.id)).toEqual([atNine.id, beforeTen.id]);
    expect(await ids(own.number)).toEqual([atTen.id]);
    expect(await ids(shift.number.toLowerCase())).toEqual(expect.arrayContaining([atNine.id, beforeTen.id, atTen.id]));
    for (const sample of [hour, own, shift]) await report(sample.number);
    const results = await resultsOfBags(reader, [atNine.id, beforeTen.id, atTen.id]);
    const from = (bagId: string) =>
      results
        .get(bagId)
        ?.map(({ standsFor }) => standsFor)
        .sort();
    expect(from(atNine.id)).toEqual(['hour', 'shift']);
    expect(from(beforeTen.id)).toEqual(['hour', 'shift']);
    expect(from(atTen.id)).toEqual(['bag', 'shift']);
    const listed = await samplePage(reader, plant.siteId, { before: null, limit: 2 });
    expect(listed.map(({ number }) => number)).toEqual([shift.number, own.number]);
  });

  it.each([
    ['a bag without saying which', { standsFor: 'bag' } as const, 'bag'],
    ['an hour of no dryer', { standsFor: 'hour', fromAt: '2026-03-12T09:00:00.000Z' } as const, 'dryerId'],
  ])('cannot be %s', async (_, form, field) => {
    await expect(take(form)).rejects.toEqual(
      expect.objectContaining({ name: 'BadForm', problems: [{ field, code: 'field-missing', facts: {} }] }),
    );
  });

  it.each([
    ['a bag and a dryer', { standsFor: 'bag', dryerId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10' } as const, 'dryerId'],
    ['a bag and an hour', { standsFor: 'bag', fromAt: '2026-03-12T09:00:00.000Z' } as const, 'fromAt'],
    ['an hour and a bag', { standsFor: 'hour', bag: 'B0012344' } as const, 'bag'],
  ])('refuses a sample of %s, and drops neither in silence', async (_, form, field) => {
    await expect(take(form)).rejects.toEqual(
      expect.objectContaining({ name: 'BadForm', problems: [{ field, code: 'not-of-this-sample', facts: {} }] }),
    );
  });

  it('cannot be an hour without its beginning, one that is still to come, or what is not there', async () => {
    const hour = { standsFor: 'hour', dryerId: plant.dryerId } as const;
    await expect(take(hour)).rejects.toEqual(expect.objectContaining({ name: 'BadForm' }));
    const ahead = { ...hour, fromAt: '2026-03-12T18:00:00.000Z' };
    await expect(take(ahead)).rejects.toEqual(refused('sample-before-its-time'));
    await expect(take({ ...ahead, dryerId: plant.siteId })).rejects.toEqual(unknown('dryer'));
    await expect(take({ standsFor: 'bag', bag: 'B000000' })).rejects.toEqual(unknown('bulk-bag'));
  });
});

describe('a result', () => {
  // The next shift: the composite above stands for nothing of it.
  beforeAll(() => {
    house.clock.set('2026-03-12T14:00:00.000Z');
  });

  it('is judged by the grade, and kept as it was reported', async () => {
    const bag = await aBag(house, plant);
    const { number, id } = await take({ standsFor: 'bag', bag: bag.number });
    expect((await standing(bag.id)).verdict).toBe('incomplete');
    expect(await report(number, { amount: '0.060' })).toMatchObject({ verdict: 'within', isRetest: false });
    const colour = { property: 'colour-iu', method: colourMethod };
    expect(await report(number, { ...colour, amount: '45.1' })).toMatchObject({ verdict: 'outside' });
    expect(await report(number, { property: 'ash-percent', method: 'GS2/3-17', amount: '0.01' })).toMatchObject({
      verdict: 'not-asked-for',
    });
    const stored = (await resultsOfSamples(reader, [id])).get(id) ?? [];
    expect(stored.map(({ amount }) => amount)).toEqual(['0.060', '45.1', '0.01']);
    expect(await standing(bag.id)).toMatchObject({ verdict: 'outside', outside: ['colour-iu'], missing: [] });
  });

  it('names what is missing, also where it was measured by another method', async () => {
    const bag = await aBag(house, plant);
    const { number } = await take({ standsFor: 'bag', bag: bag.number });
    await report(number, { property: 'colour-iu', method: 'GS1/3-7', amount: '30' });
    expect(await standing(bag.id)).toMatchObject({
      verdict: 'incomplete',
      missing: ['moisture-percent', 'colour-iu'],
      outside: [],
    });
  });

  it('is a retest only where it says so, and then stands beside the first', async () => {
    const bag = await aBag(house, plant);
    const { number } = await take({ standsFor: 'bag', bag: bag.number });
    await expect(report(number, { isRetest: true })).rejects.toEqual(refused('no-result-to-retest'));
    await report(number, { amount: '0.07' });
    await expect(report(number, { amount: '0.05' })).rejects.toEqual(refused('result-already-there'));
    expect(await report(number, { amount: '0.05', isRetest: true })).toMatchObject({ isRetest: true });
    const { outside, results } = await standing(bag.id);
    expect(outside).toEqual(['moisture-percent']);
    expect(results.map(({ amount, isRetest }) => [amount, isRetest])).toEqual([
      ['0.07', false],
      ['0.05', true],
    ]);
  });

  it('of two firsts at once leaves one', async () => {
    const bag = await aBag(house, plant);
    const { number } = await take({ standsFor: 'bag', bag: bag.number });
    const settled = await Promise.allSettled([report(number), report(number)]);
    const lost = settled.flatMap((end) => (end.status === 'rejected' ? [end.reason as unknown] : []));
    expect(lost).toEqual([refused('result-already-there')]);
  });

  it.each([
    ['a moisture of 101 %', { amount: '101' }, 'result-out-of-range'],
    ['a moisture below nothing', { amount: '-0.01' }, 'result-out-of-range'],
    ['a colour below nothing', { property: 'colour-iu', method: colourMethod, amount: '-1' }, 'result-out-of-range'],
    ['a time before the sample', { analysedAt: '2026-03-12T05:00:00.000Z', reason: 'test' }, 'result-before-sample'],
  ])('cannot be %s', async (_, wrong, code) => {
    const bag = await aBag(house, plant);
    const { number } = await take({ standsFor: 'bag', bag: bag.number });
    await expect(report(number, wrong)).rejects.toEqual(refused(code));
  });

  it('belongs to a sample that is known', async () => {
    await expect(report('S-2026-999999')).rejects.toEqual(unknown('sample'));
  });

  it('that a device sends twice is kept once', async () => {
    const bag = await aBag(house, plant);
    const { number } = await take({ standsFor: 'bag', bag: bag.number });
    const form = { sample: number, property: 'moisture-percent', method: moistureMethod, amount: '0.03' };
    const send = () => house.get(ReportResult).execute(asking(plant.actor, 'analyser-1'), form);
    expect(await send()).toEqual(await send());
    expect((await standing(bag.id)).results).toHaveLength(1);
  });
});

describe('a wrong result', () => {
  const correct = (id: string, form: Partial<Parameters<CorrectResult['execute']>[2]>) =>
    house
      .get(CorrectResult)
      .execute(asking(plant.actor), id, { why: 'incorrect-data', reason: 'typed wrong', ...form });

  it('becomes void, and the right one stands in its place', async () => {
    const bag = await aBag(house, plant);
    const { number } = await take({ standsFor: 'bag', bag: bag.number });
    const first = await report(number, { amount: '0.35' });
    const right = await correct(first.id, { amount: '0.035' });
    expect((await standing(bag.id)).results.map(({ amount }) => amount)).toEqual(['0.035']);
    await expect(correct(first.id, { amount: '0.036' })).rejects.toEqual(refused('already-corrected'));
    await expect(correct(right.id!, {})).rejects.toEqual(refused('nothing-corrected'));
    await expect(correct(right.id!, { amount: '350' })).rejects.toEqual(refused('result-out-of-range'));
    await expect(correct(right.id!, { analysedAt: '2026-03-01T00:00:00.000Z' })).rejects.toEqual(
      refused('result-before-sample'),
    );
    const colour = await report(number, { property: 'colour-iu', method: colourMethod, amount: '30' });
    const same = { property: 'moisture-percent', method: moistureMethod };
    await expect(correct(colour.id, same)).rejects.toEqual(refused('result-already-there'));
    await correct(right.id!, { why: 'did-not-occur' });
    expect((await standing(bag.id)).missing).toEqual(['moisture-percent']);
    await expect(correct(plant.siteId, { amount: '1' })).rejects.toEqual(unknown('result'));
  });

  it('goes with a sample that was entered for the wrong thing', async () => {
    const bag = await aBag(house, plant);
    const { number } = await take({ standsFor: 'bag', bag: bag.number });
    await report(number);
    const withdraw = () =>
      house.get(CorrectSample).execute(asking(plant.actor), { sample: number, reason: 'wrong bag' });
    await withdraw();
    expect((await standing(bag.id)).results).toEqual([]);
    await expect(withdraw()).rejects.toEqual(unknown('sample'));
  });
});
