import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag } from '../../test/support/a-bag.js';
import { aCheckPlan, failed, passed } from '../../test/support/a-check-plan.js';
import { aPallet } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun, packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { CorrectLineCheck } from '../line-checks/correct-line-check.js';
import { lineCheckOf } from '../line-checks/line-checks.js';
import { ChangeCode } from '../packing/change-code.js';
import { CloseRun } from '../packing/close-run.js';
import { runOf } from '../packing/packing-runs.js';
import { CorrectCount } from '../packing/correct-count.js';
import { standingsOfPallets } from '../pallets/pallet-standing.js';
import { NotFound } from '../platform/refusal.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { PlaceHold } from './place-hold.js';
import { HoldSinceLastGood } from './hold-since-last-good.js';
import { suspectsOfCheck, type Suspects } from './suspects-of-check.js';

let house: TestHouse;
let plant: Plant;
let from: ReadFrom;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
});
afterAll(() => house.close());
beforeEach(async () => {
  // Half past twelve by the plant's clock, which is an hour ahead in March.
  house.clock.set('2026-03-12T11:30:00.000Z');
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `HS${siteCount}`, packsPerPallet: 480 });
});

const suspects = async (checkId: string): Promise<Suspects> =>
  suspectsOfCheck(from, await lineCheckOf(from, plant.siteId, checkId), house.clock.now());
const hold = (checkId: string, actor = plant.actor, key?: string) =>
  house.get(HoldSinceLastGood).execute(asking(actor, key), { check: checkId });
const ranges = (found: Suspects) => found.ranges.map(({ fromCount, toCount }) => [fromCount, toCount]);

/** A run that packs 960 packs an hour, half of them a pallet. */
async function aCodedRun(): Promise<string> {
  const { runId } = await aRun(house, plant, { packCount: 0 });
  await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L6071A1', packCount: 0 });
  return runId;
}

async function packedUntil(runId: string, minutes: number, packCount: number): Promise<void> {
  house.clock.pass(minutes);
  await packsCounted(house, plant, runId, packCount);
}

describe('a weigher that fails at half past two, last good at half past one', () => {
  it('makes exactly the packs and pallets of that hour suspect, and one act holds just these', async () => {
    const planId = await aCheckPlan(house, plant);
    const runId = await aCodedRun();
    await packedUntil(runId, 60, 960);
    const before = [await aPallet(house, plant, { run: runId }), await aPallet(house, plant, { run: runId })];
    const good = await passed(house, plant, planId);
    await packedUntil(runId, 60, 1920);
    const within = [await aPallet(house, plant, { run: runId, placeId: plant.placeIds.store })];
    within.push(await aPallet(house, plant, { run: runId, packCount: 400 }));
    const { id } = await failed(house, plant, planId);

    const found = await suspects(id);
    expect(found).toMatchObject({
      lastGood: { id: good.id, occurredAt: '2026-03-12T12:30:00.000Z' },
      untilAt: null,
      minutes: 60,
      packCount: 960,
      loosePackCount: 80,
      ranges: [{ runId, fromCount: 960, toCount: 1920, lots: [{ packCount: 960 }] }],
    });
    expect(found.pallets.map(({ sscc }) => sscc).sort()).toEqual(within.map(({ sscc }) => sscc).sort());
    expect(found.pallets.find(({ palletId }) => palletId === within[0]!.id)).toMatchObject({
      whereabouts: 'LANE-1',
      suspectPackCount: 480,
      isCertain: true,
    });

    const held = await hold(id, plant.actorWith('line-lead'));
    expect(held).toMatchObject({
      packCount: 960,
      holds: [
        { scopeId: runId, fromCount: null, fromAt: '2026-03-12T12:30:00.000Z', untilAt: '2026-03-12T13:30:00.000Z' },
      ],
    });
    expect(held.holds[0]?.reason).toMatch(/Weigher failed at .*14:30; last good check at .*13:30/);
    const standings = await standingsOfPallets(
      from,
      [...before, ...within].map((pallet) => pallet.id),
    );
    const onHold = [...standings].filter(([, standing]) => standing.state === 'on-hold').map(([palletId]) => palletId);
    expect(onHold.sort()).toEqual(within.map((pallet) => pallet.id).sort());
  });
});

describe('what a failed check makes suspect', () => {
  it('is everything since the plan came into force where no good check was before', async () => {
    const early = await aCodedRun();
    await packedUntil(early, 30, 400);
    const planId = await aCheckPlan(house, plant);
    await packedUntil(early, 30, 900);
    const { id } = await failed(house, plant, planId);
    expect(await suspects(id)).toMatchObject({ lastGood: null, packCount: 900 });
    expect(ranges(await suspects(id))).toEqual([[0, 900]]);
  });

  it('crosses from one run to the next', async () => {
    const planId = await aCheckPlan(house, plant);
    const first = await aCodedRun();
    await packedUntil(first, 30, 500);
    await passed(house, plant, planId);
    await packedUntil(first, 10, 700);
    await house.get(CloseRun).execute(asking(plant.actor), first, { packCount: 700, loosePackCount: 0 });
    house.clock.pass(10);
    const second = await aCodedRun();
    await packedUntil(second, 10, 150);
    const { id } = await failed(house, plant, planId);
    const found = await suspects(id);
    expect(found.ranges.map(({ runId }) => runId)).toEqual([first, second]);
    expect(ranges(found)).toEqual([
      [500, 700],
      [0, 150],
    ]);
    expect((await hold(id)).holds).toHaveLength(2);
  });

  it('begins at the count before the good check where nobody read the counter at it', async () => {
    const planId = await aCheckPlan(house, plant);
    const runId = await aCodedRun();
    await packedUntil(runId, 20, 300);
    house.clock.pass(10);
    await passed(house, plant, planId);
    await packedUntil(runId, 10, 600);
    const { id } = await failed(house, plant, planId);
    expect(ranges(await suspects(id))).toEqual([[300, 600]]);
  });

  it('goes with a count that is corrected', async () => {
    const planId = await aCheckPlan(house, plant);
    const runId = await aCodedRun();
    await packedUntil(runId, 30, 620);
    await passed(house, plant, planId);
    await packedUntil(runId, 30, 900);
    const { id } = await failed(house, plant, planId);
    const [wrong] = await from.sql<{ id: string }>`
      SELECT "id" FROM "pack_count" WHERE "run_id" = ${runId} AND "pack_count" = ${620}`;
    const correction = { why: 'incorrect-data' as const, reason: 'digits swapped', packCount: 602 };
    await house.get(CorrectCount).execute(asking(plant.actor), wrong!.id, correction);
    expect(ranges(await suspects(id))).toEqual([[602, 900]]);
  });

  it('reaches back past a good check that was not made, and ends at the next good one', async () => {
    const planId = await aCheckPlan(house, plant);
    const runId = await aCodedRun();
    await packedUntil(runId, 20, 200);
    await passed(house, plant, planId);
    await packedUntil(runId, 20, 400);
    const notMade = await passed(house, plant, planId);
    await packedUntil(runId, 20, 600);
    const { id } = await failed(house, plant, planId);
    expect(ranges(await suspects(id))).toEqual([[400, 600]]);
    const form = { why: 'did-not-occur' as const, reason: 'the other line' };
    await house.get(CorrectLineCheck).execute(asking(plant.actor), notMade.id, form);
    expect(ranges(await suspects(id))).toEqual([[200, 600]]);
    await packedUntil(runId, 20, 750);
    expect(ranges(await suspects(id))).toEqual([[200, 750]]);
    await passed(house, plant, planId);
    await packedUntil(runId, 20, 900);
    expect(ranges(await suspects(id))).toEqual([[200, 750]]);
  });

  it('is vouched for by no other thing: not by a second weigher, but by the same one under another plan', async () => {
    const planId = await aCheckPlan(house, plant);
    const second = await aCheckPlan(house, plant, { station: 'Second weigher' });
    const ofFormat = await aCheckPlan(house, plant, { formatId: plant.formatId });
    const runId = await aCodedRun();
    await packedUntil(runId, 20, 200);
    await passed(house, plant, second);
    await packedUntil(runId, 20, 400);
    const { id } = await failed(house, plant, planId);
    expect(ranges(await suspects(id))).toEqual([[0, 400]]);
    await packedUntil(runId, 20, 600);
    await passed(house, plant, ofFormat);
    expect(ranges(await suspects(id))).toEqual([[0, 600]]);
    await packedUntil(runId, 20, 800);
    const again = await failed(house, plant, planId);
    expect(ranges(await suspects(again.id))).toEqual([[600, 800]]);
  });
});

describe('the hold since the last good check', () => {
  async function aFailure(): Promise<{ runId: string; planId: string; checkId: string }> {
    const planId = await aCheckPlan(house, plant);
    const runId = await aCodedRun();
    await packedUntil(runId, 30, 500);
    const { id: checkId } = await failed(house, plant, planId);
    return { runId, planId, checkId };
  }

  it('is placed once: sent twice, by two people at once, and again later only for what came since', async () => {
    const { runId, checkId } = await aFailure();
    const key = `hold-${siteCount}-key`;
    expect(await hold(checkId, plant.actor, key)).toEqual(await hold(checkId, plant.actor, key));
    await expect(hold(checkId)).rejects.toMatchObject({ code: 'suspects-held-already' });
    await packedUntil(runId, 5, 560);
    const outcomes = await Promise.allSettled([hold(checkId), hold(checkId)]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    const { holds, notHeld } = await suspects(checkId);
    expect(holds.map(({ fromAt, untilAt }) => [fromAt?.slice(11, 16), untilAt?.slice(11, 16)])).toEqual([
      ['11:30', '12:00'],
      ['12:00', '12:05'],
    ]);
    expect(notHeld).toEqual([]);
  });

  it('moves with the counts of its time when one of them is corrected', async () => {
    const planId = await aCheckPlan(house, plant);
    const runId = await aCodedRun();
    await packedUntil(runId, 30, 620);
    await passed(house, plant, planId);
    await packedUntil(runId, 30, 900);
    const { id } = await failed(house, plant, planId);
    expect((await hold(id)).packCount).toBe(280);
    const [wrong] = await from.sql<{ id: string }>`
      SELECT "id" FROM "pack_count" WHERE "run_id" = ${runId} AND "pack_count" = ${620}`;
    const correction = { why: 'incorrect-data' as const, reason: 'digits swapped', packCount: 602 };
    await house.get(CorrectCount).execute(asking(plant.actor), wrong!.id, correction);
    // Eighteen more packs are suspect, and the hold has them already.
    expect(await suspects(id)).toMatchObject({ packCount: 298, notHeld: [] });
    await expect(hold(id)).rejects.toMatchObject({ code: 'suspects-held-already' });
  });

  it('keeps counts where two of one instant contradict each other', async () => {
    const planId = await aCheckPlan(house, plant);
    const runId = await aCodedRun();
    await packedUntil(runId, 30, 500);
    await packedUntil(runId, 0, 520);
    await passed(house, plant, planId);
    await packedUntil(runId, 30, 900);
    const { id } = await failed(house, plant, planId);
    expect((await hold(id)).holds).toMatchObject([{ fromCount: 500, toCount: 900, fromAt: null }]);
    expect((await suspects(id)).notHeld).toEqual([]);
  });

  it('takes from a hold on minutes or on a shift only what that covers', async () => {
    const { runId, checkId } = await aFailure();
    const minutes = { kind: 'packing-run', id: runId, fromAt: '2026-03-12T12:10:00.000Z' } as const;
    await packedUntil(runId, 10, 600);
    await packedUntil(runId, 10, 700);
    const asked = asking(plant.actor);
    const form = { ...minutes, untilAt: '2026-03-12T12:20:00.000Z', reason: 'a smell' };
    await house.get(PlaceHold).execute(asked, form);
    expect((await suspects(checkId)).notHeld).toEqual([{ runId, fromCount: 0, toCount: 600 }]);
    const { lineId } = await runOf(from, runId);
    const shift = {
      kind: 'packing-shift',
      id: lineId,
      fromAt: '2026-03-12T11:30:00.000Z',
      reason: 'no hairnets',
    } as const;
    await house.get(PlaceHold).execute(asking(plant.actor), shift);
    expect((await suspects(checkId)).notHeld).toEqual([]);
  });

  it('is refused where the check passed, was taken back, or nothing was packed', async () => {
    const planId = await aCheckPlan(house, plant);
    const early = await failed(house, plant, planId);
    await expect(hold(early.id)).rejects.toMatchObject({ code: 'nothing-packed-since' });
    const form = { why: 'did-not-occur' as const, reason: 'the other line' };
    await house.get(CorrectLineCheck).execute(asking(plant.actor), early.id, form);
    await expect(hold(early.id)).rejects.toMatchObject({ code: 'check-not-failed' });
    const good = await passed(house, plant, planId);
    await expect(hold(good.id)).rejects.toMatchObject({ code: 'check-not-failed' });
    const other = await aPlant(house, { siteCode: `OT${siteCount}` });
    await expect(hold(good.id, other.actor)).rejects.toThrow(NotFound);
  });

  it('is on the bag where a bag was torn', async () => {
    const planId = await aCheckPlan(house, plant, {
      kind: 'torn-bag',
      station: 'Tip',
      everyMinutes: null,
      testPieces: [],
    });
    const bag = await aBag(house, plant);
    const torn = { results: [{ code: 'all', passed: false }], bag: bag.number };
    const { id } = await failed(house, plant, planId, torn);
    expect((await hold(id)).holds).toMatchObject([{ scopeKind: 'bulk-bag', scopeId: bag.id, fromCount: null }]);
    await expect(hold(id)).rejects.toMatchObject({ code: 'suspects-held-already' });
  });
});
