import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aCheckPlan, failed, passed } from '../../test/support/a-check-plan.js';
import { aLotLoaded } from '../../test/support/a-loaded-lot.js';
import { aPackWeigher, packsWeighed } from '../../test/support/a-pack-weigher.js';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { weightsAround } from '../fill-weight/weights-around.js';
import { TakeSample } from '../laboratory/take-sample.js';
import { runOf } from '../packing/packing-runs.js';
import { StopLine } from '../packing/stop-line.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { shifted } from '../platform/clock.js';
import { say } from '../platform/sentences/sentences.js';
import { dossierOf, type Dossier } from './dossier.js';
import { axisText, amountsText } from './ribbon-words.js';
import type { Ribbons } from './ribbons.js';
import { readThread } from './read-thread.js';
import { subjectById } from './subject-by-id.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let quality: SignedInPerson;
let lot: Awaited<ReturnType<typeof aLotLoaded>>;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  const planId = await aCheckPlan(house, plant);
  lot = await aLotLoaded(house, plant, 1);
  await passed(house, plant, planId);
  house.clock.pass(10);
  await failed(house, plant, planId);
  await house.get(StopLine).execute(asking(plant.actor), { run: lot.run.runId, stopReason: 'jam', packCount: 500 });
  const takenAt = shifted(house.clock.now(), -20 * 60_000);
  await house.get(TakeSample).execute(asking(plant.actor), { standsFor: 'bag', bag: lot.bag.number, takenAt });
  house.clock.pass(120);
  await passed(house, plant, planId);
  quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
});
afterAll(() => house.close());

const thread = async () =>
  readThread(from, plant.siteId, await subjectById(from, 'lot', lot.run.lotId), house.clock.now());

describe('the dossier of packs', () => {
  it('has the stops and checks near their minutes, the failed ones among them, and none of two hours later', async () => {
    const dossier = await dossierOf(from, plant.siteId, await thread());
    expect(dossier?.near.map(({ kind, says, passed: isPassed }) => [kind, says, isPassed])).toEqual(
      expect.arrayContaining([
        ['check', 'Weigher', true],
        ['check', 'Weigher', false],
        ['stop', 'jam', null],
      ]),
    );
    expect(dossier?.near).toHaveLength(3);
  });

  it('has the weights in the minutes of the packs, around them and over the run, and the nearest ones', async () => {
    const { runId } = lot.run;
    const startedAt = (await runOf(from, runId)).startedAt;
    expect((await dossierOf(from, plant.siteId, await thread()))?.weights).toEqual([]);
    const weigher = await aPackWeigher(house, plant);
    // A pack every ten seconds for two hours, one of them short; the run and its packs are of the first minutes.
    const netGrams = Array.from({ length: 720 }, (_, place) => (place === 3 ? 1900 : 2000 + (place % 10) / 10));
    await packsWeighed(house, weigher, { run: runId, fromAt: startedAt, netGrams, everySeconds: 10 });
    const minutes = { fromAt: shifted(startedAt, 15 * 60_000), untilAt: shifted(startedAt, 16 * 60_000) };
    const [found] = await weightsAround(from, { runId, minutes, nearMilliseconds: 70 * 60_000 });
    expect(found?.packs).toMatchObject({ packCount: 7, beyondT1Count: 0, isWhole: true });
    const inside = netGrams.slice(90, 97);
    expect(found?.packs.meanMilligrams).toBe(Math.floor((1000 * inside.reduce((sum, net) => sum + net, 0)) / 7));
    // From the start to 86 minutes after it: 517 packs, whole hours by their sums.
    expect(found?.around).toMatchObject({ packCount: 517, smallestMilligrams: 1_900_000, beyondT1Count: 1 });
    expect(found?.run).toMatchObject({ packCount: 720, beyondT1Count: 1 });
    expect(found?.nearest).toHaveLength(12);
    expect(found?.nearest.every(({ at }) => at > shifted(startedAt, 14 * 60_000))).toBe(true);
    const { text } = await quality.get(`/thread?code=${lot.run.code}`);
    expect(text).toContain(say('dossier-weights', { run: lot.run.number, weigher: found?.weigherCode ?? '' }));
    expect(text).toContain(`/runs/${runId}/weights`);
  });

  it('has what was entered late of a bag that is in them', async () => {
    const dossier = await dossierOf(from, plant.siteId, await thread());
    expect(dossier?.changes.map(({ action }) => action)).toContain('take-sample');
  });

  it('counts sister packs on other pallets only', async () => {
    const { packed, sources, pallets } = await thread();
    const [own, ...others] = pallets;
    if (own === undefined) throw new Error('no pallet');
    const marked = [{ ...own, isSubject: true }, ...others.map((pallet) => ({ ...pallet, isSubject: false }))];
    const dossier = await dossierOf(from, plant.siteId, { packed, sources, pallets: marked });
    expect(dossier?.sisters.reduce((sum, { palletCount }) => sum + palletCount, 0)).toBe(4);
    expect(dossier?.sisters.reduce((sum, { packCount }) => sum + packCount, 0)).toBe(400);
  });

  it('is none of what was never packed', async () => {
    expect(await dossierOf(from, plant.siteId, { packed: [], sources: [], pallets: [] })).toBeNull();
  });

  it('and what the picture is drawn from come as JSON too, with the numbers of the page', async () => {
    const path = `/api/thread?code=${encodeURIComponent(lot.run.code)}`;
    const plain = JSON.parse((await quality.get(path)).text) as object;
    expect(Object.keys(plain)).toEqual(['thread', 'fits']);
    const { ribbons, dossier } = JSON.parse((await quality.get(`${path}&isDrawn=true`)).text) as {
      readonly ribbons: readonly Ribbons[];
      readonly dossier: Dossier;
    };
    expect(dossier).toEqual(await dossierOf(from, plant.siteId, await thread()));
    const page = (await quality.get(`/thread?code=${encodeURIComponent(lot.run.code)}`)).text;
    const countOf = (kind: string) => dossier.near.filter((event) => event.kind === kind).length;
    const failedCount = dossier.near.filter((event) => event.passed === false).length;
    const facts = { stops: countOf('stop'), checks: countOf('check'), failed: failedCount };
    expect(page).toContain(say('dossier-says', { ...facts, changes: dossier.changes.length }));
    expect(facts).toEqual({ stops: 1, checks: 2, failed: 1 });
    expect(ribbons).toHaveLength(1);
    const [picture] = ribbons;
    expect(picture?.bags.map(({ name }) => name)).toContain(lot.bag.number);
    const named = (picture?.bags ?? []).filter(({ word }) => word !== 'possible');
    for (const bag of named) expect(page).toContain(`${bag.name}: ${amountsText(bag)}.`);
    for (const { fromGrams, toGrams } of picture?.windows ?? []) {
      expect(page).toContain(say('ribbon-stretch', { from: axisText(fromGrams), to: axisText(toGrams) }));
    }
  });

  it('stands on the page of the thread, failed checks loud', async () => {
    const { text } = await quality.get(`/thread?code=${lot.run.code}`);
    expect(text).toContain('Around these packs');
    expect(text).toContain('1 of them failed');
    const row = text.split('<tr').find((one) => one.includes('FAILED')) ?? '';
    expect(row).toContain('loud');
    expect(row).toContain('/checks/');
  });
});
