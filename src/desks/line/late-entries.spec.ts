import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../../test/support/a-bag.js';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aDevice, aQueue, signedInOn } from '../../../test/support/a-queue.js';
import { aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { hiddenFields, pageText } from '../../../test/support/page-text.js';
import { threePallets, type ThreePallets } from '../../../test/support/three-pallets.js';
import { SetHoldClass } from '../../disposition/set-hold-class.js';
import { CloseRun } from '../../packing/close-run.js';
import { countsOf, removalsOfRun } from '../../packing/packing-runs.js';
import { standingOfPallet } from '../../pallets/pallet-standing.js';
import { shifted } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { JobRunner } from '../../platform/jobs/job-runner.js';
import { localOfInstant } from '../../platform/web/local-time.js';
import { PlaceHold } from '../../tracing/place-hold.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let lead: SignedInPerson;

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  lead = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['line-lead'] }));
});
afterEach(async () => {
  await house.close();
});

type Page = Awaited<ReturnType<SignedInPerson['send']>>;
const textOf = ({ text }: Page): string => pageText(text);
const hiddenIn = ({ text }: Page): Record<string, string> => hiddenFields(text);
const at = (minutes: number, { startedAt }: ThreePallets): string =>
  localOfInstant(shifted(startedAt, minutes * 60_000), 'Europe/Berlin');
const page = (name: 'removals' | 'count'): string => `/line/${plant.lineIds[0]}/${name}`;
const removals = async (runId: string): Promise<readonly number[]> =>
  (await removalsOfRun(reader, runId)).map(({ grams }) => grams);
const counts = async (runId: string): Promise<readonly number[]> =>
  (await countsOf(reader, [runId])).map(({ packCount }) => packCount);
const sweepings = (netGrams: string) => ({
  ...{ kind: 'sweepings', netGrams, scaleId: plant.scaleId, removalReason: 'floor', fate: 'waste' },
});
const reachJobs = async (): Promise<number> =>
  (await reader.sql`SELECT "id" FROM "outbox_job" WHERE "kind" = 'look-at-reach'`).length;

/** A second bag is tipped after the first pallet, so that what left before it moves what is in the later ones. */
const overTwoBags = (): Promise<ThreePallets> =>
  threePallets(house, plant, async () => {
    await aTippedBag(house, plant, { netGrams: 1_000_000 });
  });

describe('what was taken away earlier, entered on the line’s page', () => {
  it('is recorded in one step where it was taken away just now', async () => {
    const { runId } = await overTwoBags();
    expect((await lead.send(page('removals'), sweepings('12'))).status).toBe(303);
    expect(await removals(runId)).toEqual([12_000]);
  });

  it('is recorded in one step within five minutes on an open run, as good as at once', async () => {
    const made = await overTwoBags();
    house.clock.pass(3);
    const done = await lead.send(page('removals'), { ...sweepings('12'), removedAt: at(131, made) });
    expect(done.status).toBe(303);
    expect(await removals(made.runId)).toEqual([12_000]);
  });

  it('shows what changes in the pallets packed since, and records it when that is confirmed', async () => {
    const made = await overTwoBags();
    const hold = await house.get(PlaceHold).execute(asking(plant.actor), {
      ...{ kind: 'bulk-bag', id: made.firstBag, reason: 'grey bits' },
    });
    const classed = { hold: hold.id, hazard: 'quality', reason: 'no hazard' } as const;
    await house.get(SetHoldClass).execute(asking(plant.actor), classed);
    await house.get(JobRunner).drain();
    const late = { ...sweepings('790'), removedAt: at(70, made), reason: 'the bin stood in the corner' };
    const shown = await lead.send(page('removals'), late);
    expect(shown.status).toBe(200);
    expect(textOf(shown)).toContain('Nothing is recorded yet.');
    expect(textOf(shown)).toMatch(/lots: 1; pallets: [12]; deliveries already gone: \d; deliveries still here: 1\./);
    expect(textOf(shown)).toContain(`Hold ${hold.number} no longer reaches`);
    expect(await removals(made.runId)).toEqual([]);
    const holdsOf = async () => (await standingOfPallet(reader, made.inStore)).reasons.map(({ code }) => code);
    expect(await holdsOf()).toContain('held-by');
    expect((await lead.send(page('removals'), hiddenIn(shown))).headers['location']).toBe(`/line/${plant.lineIds[0]}`);
    expect(await removals(made.runId)).toEqual([790_000]);
    expect(await holdsOf()).not.toContain('held-by');
  });

  it('leaves a look at what holds reach, where it comes late', async () => {
    const made = await overTwoBags();
    await house.get(JobRunner).drain();
    const before = await reachJobs();
    await lead.send(page('removals'), sweepings('1'));
    expect(await reachJobs()).toBe(before);
    const shown = await lead.send(page('removals'), { ...sweepings('2'), removedAt: at(70, made), reason: 'x' });
    await lead.send(page('removals'), hiddenIn(shown));
    expect(await removals(made.runId)).toHaveLength(2);
    expect(await reachJobs()).toBe(before + 1);
  });

  it('asks script to send it as a page, records nothing, and takes what waited on a device as it stands', async () => {
    const made = await overTwoBags();
    const late = { ...sweepings('790'), removedAt: at(70, made), reason: 'the bin stood in the corner' };
    const asked = await lead.send(page('removals'), late).set('Accept', 'application/json');
    expect([asked.status, JSON.parse(asked.text)]).toMatchObject([409, { type: 'problem:look-first' }]);
    expect(await removals(made.runId)).toEqual([]);
    const device = await aDevice(house, plant.siteId);
    const tomas = await aPerson(house, plant.siteId, { roles: ['line-lead'] });
    await signedInOn(house, tomas, device);
    const queue = await aQueue(house, tomas, device);
    const kept = await queue.send(page('removals'), late);
    expect(kept.status).toBe(200);
    expect(await removals(made.runId)).toEqual([790_000]);
  });
});

describe('a count of an earlier time, entered on the line’s page', () => {
  it('is recorded in one step where the counter was read just now', async () => {
    const { runId } = await overTwoBags();
    house.clock.pass(2);
    expect((await lead.send(page('count'), { packCount: '305' })).status).toBe(303);
    expect(await counts(runId)).toContain(305);
  });

  it('shows what it moves, on the run of then though that is closed, and records it when that is confirmed', async () => {
    const made = await overTwoBags();
    await house.get(CloseRun).execute(asking(plant.actor), made.runId, { packCount: 300, loosePackCount: 0 });
    house.clock.pass(20);
    expect(textOf(await lead.get(page('count')))).toContain('A count of a run that is closed is entered with its time');
    const late = { packCount: '190', countedAt: at(60, made), reason: 'written on the tally' };
    const shown = await lead.send(page('count'), late);
    expect(shown.status).toBe(200);
    expect(textOf(shown)).toMatch(/lots: 1; pallets: \d/);
    expect(await counts(made.runId)).not.toContain(190);
    expect((await lead.send(page('count'), hiddenIn(shown))).status).toBe(303);
    expect(await counts(made.runId)).toContain(190);
  });

  it('is refused where no run ran then, and where counts would go back', async () => {
    const made = await overTwoBags();
    const before = await lead.send(page('count'), { packCount: '10', countedAt: at(5, made), reason: 'x' });
    expect(before.status).toBe(409);
    const back = await lead.send(page('count'), { packCount: '250', countedAt: at(45, made), reason: 'x' });
    expect(back.status).toBe(409);
    expect(back.text).toContain('value="250"');
  });
});
