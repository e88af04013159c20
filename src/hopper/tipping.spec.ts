import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, aDryerRun, readerOf, type BagWishes } from '../../test/support/a-bag.js';
import { aPerson } from '../../test/support/a-person.js';
import { aPlant, moistureMethod, type Plant } from '../../test/support/a-plant.js';
import { aReleasedBag, aStartedRun, aTip, decided } from '../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { placeHold } from '../disposition/place-hold.js';
import { bagOf } from '../drying/bulk-bags.js';
import { rebuildBagStates } from '../drying/rebuild-bag-states.js';
import { changeBagState } from '../drying/change-bag-state.js';
import { StartBag } from '../drying/start-bag.js';
import { ReportResult } from '../laboratory/report-result.js';
import { TakeSample } from '../laboratory/take-sample.js';
import { Hopper } from '../plant/hopper.entity.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { SystemIds } from '../platform/ids.js';
import { shifted } from '../platform/clock.js';
import { bagChangesOfTips } from './bag-changes.js';
import { CorrectTip } from './correct-tip.js';
import { EndTip } from './end-tip.js';
import { readHopperPeriod } from './hopper-periods.js';
import { SettleCandidate } from './settle-candidate.js';
import { TipBag } from './tip-bag.js';
import { TipOneOfSeveral } from './tip-one-of-several.js';
import { candidatesOfTip, tipOf, tipsOfBag } from './tips.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let colleagueId: string;

const ids = new SystemIds();
const refused = (code: string) => expect.objectContaining({ name: 'Refusal', code });
const unknown = (kind: string) => expect.objectContaining({ name: 'NotFound', kind });

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
  colleagueId = (await aPerson(house, plant.siteId)).personId;
});
afterAll(async () => {
  await house.close();
});

async function openCauses(subjectId: string): Promise<string[]> {
  const rows = await reader.sql<{ cause: string }>`
    SELECT "cause" FROM "open_point_state" WHERE "subject_id" = ${subjectId} ORDER BY "cause"`;
  return rows.map((row) => row.cause);
}

async function journalCount(): Promise<number> {
  const [row] = await reader.sql<{ count: number | string }>`SELECT COUNT(*) AS "count" FROM "journal_entry"`;
  return Number(row?.count);
}

const held = async (bagId: string) => {
  await house.get(UnitOfWork).run(async (tx) => {
    const now = house.clock.now();
    await placeHold(
      tx,
      { recordedAt: now },
      {
        ...{ nextId: () => ids.next(), siteId: plant.siteId, scope: { kind: 'bulk-bag', id: bagId } },
        ...{ reason: 'torn liner', placedAt: now },
      },
    );
  });
};

describe('tipping a bag', () => {
  it('takes a released bag, lets it hang until it is off, and then it is empty', async () => {
    const bag = await aReleasedBag(house, plant);
    const tip = await aTip(house, plant, bag.number.toLowerCase(), { isOff: false });
    expect(tip).toMatchObject({ bagId: bag.id, netGrams: 1_000_000, offAt: null, broken: [] });
    expect(await bagOf(reader, bag.id)).toMatchObject({ status: 'hanging', placeId: plant.hopperId });
    const off = await house.get(EndTip).execute(asking(plant.actor), tip.id, {});
    expect(off).toMatchObject({ restGrams: 0, pouredGrams: 1_000_000 });
    expect(await bagOf(reader, bag.id)).toMatchObject({ status: 'empty', remainingGrams: 0 });
  });

  it('refuses a bag that was tipped already, and says when', async () => {
    const bag = await aReleasedBag(house, plant);
    await aTip(house, plant, bag.id);
    const again = aTip(house, plant, bag.id);
    await expect(again).rejects.toMatchObject({ code: 'bag-already-tipped', facts: { at: house.clock.now() } });
    await expect(aTip(house, plant, bag.id, { happened: true })).rejects.toEqual(refused('bag-already-tipped'));
  });

  it('lets one of two win that tip the same bag at once', async () => {
    const bag = await aReleasedBag(house, plant);
    const settled = await Promise.allSettled([aTip(house, plant, bag.id), aTip(house, plant, bag.id)]);
    const lost = settled.flatMap((end) => (end.status === 'rejected' ? [end.reason as unknown] : []));
    expect(lost).toEqual([refused('bag-already-tipped')]);
    expect(await tipsOfBag(reader, bag.id)).toHaveLength(1);
  });

  it('takes the same request sent twice at once as one tip with one answer', async () => {
    const bag = await aReleasedBag(house, plant);
    const asked = asking(plant.actor, 'tip-sent-twice');
    const form = { bag: bag.id, hopperId: plant.hopperId, isOff: true };
    const [one, other] = await Promise.all([1, 2].map(() => house.get(TipBag).execute(asked, { ...form })));
    expect(one).toEqual(other);
    expect(await tipsOfBag(reader, bag.id)).toHaveLength(1);
  });

  it('refuses a bag that is being filled, one that left, and one that nobody knows', async () => {
    const run = await aDryerRun(house, plant);
    const filling = await house
      .get(StartBag)
      .execute(asking(plant.actor), { run: run.number, safeLoadGrams: 1_250_000 });
    await expect(aTip(house, plant, filling.id)).rejects.toEqual(refused('bag-not-closed'));
    const gone = await aReleasedBag(house, plant);
    const to = { status: 'loaded', remainingGrams: 1_000_000, placeId: null, at: house.clock.now() } as const;
    await house.get(UnitOfWork).run((tx) => changeBagState(tx, gone.id, { status: ['full'] }, to));
    await expect(aTip(house, plant, gone.id)).rejects.toEqual(refused('bag-loaded'));
    await expect(aTip(house, plant, ids.next())).rejects.toEqual(unknown('bulk-bag'));
    await expect(aTip(house, plant, gone.id, { hopperId: ids.next() })).rejects.toEqual(unknown('hopper'));
  });

  it('refuses a bag off before it was opened, and a time before the hopper had records', async () => {
    const bag = await aReleasedBag(house, plant);
    const form = { bag: bag.id, hopperId: plant.hopperId, reason: 'test' };
    const tipBag = house.get(TipBag);
    const offAt = shifted(house.clock.now(), -60_000);
    await expect(tipBag.execute(asking(plant.actor), { ...form, offAt })).rejects.toEqual(refused('off-before-open'));
    const hopperId = ids.next();
    await house.get(UnitOfWork).run(async (tx) => {
      const flow = { capacityGrams: 4_000_000, flowModel: 'first-in-first-out', likelyPermille: 1 };
      await tx.insert(Hopper, { id: hopperId, siteId: plant.siteId, code: 'H9', name: 'Hopper 9', ...flow });
    });
    await aTip(house, plant, bag.id, { hopperId });
    const next = { bag: (await aReleasedBag(house, plant)).id, hopperId, openedAt: offAt };
    await expect(tipBag.execute(asking(plant.actor), next)).rejects.toEqual(refused('before-first-period'));
  });

  it('shows stop, and records with a point what has happened: rejected, on hold, waiting', async () => {
    const rejected = await aBag(house, plant);
    await decided(house, plant, rejected.id, 'rejected');
    const onHold = await aReleasedBag(house, plant);
    await held(onHold.id);
    const waiting = await aBag(house, plant);
    const cases = [
      { bag: rejected, code: 'bag-rejected' },
      { bag: onHold, code: 'bag-on-hold' },
      { bag: waiting, code: 'bag-waiting' },
    ];
    for (const { bag, code } of cases) {
      const before = await journalCount();
      await expect(aTip(house, plant, bag.id)).rejects.toEqual(refused(code));
      expect(await journalCount()).toBe(before);
      const tip = await aTip(house, plant, bag.id, { happened: true });
      expect(tip.broken).toEqual([code]);
      expect(await openCauses(bag.id)).toContain(`happened-${code}`);
      expect(await tipOf(reader, plant.siteId, tip.id)).toMatchObject({ hasHappened: true });
    }
  });
});

describe('tipping at risk', () => {
  it('takes bags that wait up to the limit of the house, and no bag with a bad result', async () => {
    const wishes: BagWishes = { gradeId: plant.riskGradeId };
    // One tipped as happened above waits still, so two more are within the three.
    for (let place = 0; place < 2; place += 1) {
      const tip = await aTip(house, plant, (await aBag(house, plant, wishes)).id);
      expect(tip.broken).toEqual([]);
    }
    const fourth = await aBag(house, plant, wishes);
    await expect(aTip(house, plant, fourth.id)).rejects.toMatchObject({
      code: 'too-much-at-risk',
      facts: { bagCount: 3, mostWaitingBagCount: 3 },
    });
    const tip = await aTip(house, plant, fourth.id, { happened: true });
    expect(tip.broken).toEqual(['too-much-at-risk']);
  });

  it('takes no bag of which a result is bad already', async () => {
    const bag = await aBag(house, plant, { gradeId: plant.riskGradeId });
    const taken = await house.get(TakeSample).execute(asking(plant.actor), { standsFor: 'bag', bag: bag.id });
    const figure = { property: 'moisture-percent', method: moistureMethod, amount: '0.11' };
    await house.get(ReportResult).execute(asking(plant.actor), { sample: taken.number, ...figure });
    await expect(aTip(house, plant, bag.id)).rejects.toMatchObject({
      code: 'bag-has-bad-result',
      facts: { property: 'moisture-percent' },
    });
  });
});

describe('a bag that is not emptied', () => {
  it('is weighed back, has that weight as the only truth about its rest, and is tipped again later', async () => {
    const bag = await aReleasedBag(house, plant, { netGrams: 998_000 });
    const tip = await aTip(house, plant, bag.id, { isOff: false });
    house.clock.pass(5);
    const rest = { grossGrams: 301_800, tareGrams: 1_800, isPresetTare: true, scaleId: plant.scaleId };
    const half = { ...rest, grossGrams: 999_999_9 };
    await expect(house.get(EndTip).execute(asking(plant.actor), tip.id, half)).rejects.toMatchObject({
      code: 'over-safe-load',
    });
    const tooMuch = { ...rest, grossGrams: 1_010_000 };
    const endTip = house.get(EndTip);
    await expect(endTip.execute(asking(plant.actor), tip.id, tooMuch)).rejects.toEqual(refused('rest-above-content'));
    await expect(endTip.execute(asking(plant.actor), tip.id, { grossGrams: 1000 })).rejects.toMatchObject({
      name: 'BadForm',
    });
    const offAt = shifted(tip.openedAt, -60_000);
    await expect(endTip.execute(asking(plant.actor), tip.id, { offAt })).rejects.toEqual(refused('off-before-open'));
    const off = await endTip.execute(asking(plant.actor), tip.id, { ...rest, placeId: plant.placeIds.store });
    expect(off).toMatchObject({ restGrams: 300_000, pouredGrams: 698_000 });
    await expect(endTip.execute(asking(plant.actor), tip.id, rest)).rejects.toEqual(refused('tip-is-off'));
    expect(await bagOf(reader, bag.id)).toMatchObject({ status: 'opened', remainingGrams: 300_000 });
    house.clock.pass(5);
    const second = await aTip(house, plant, bag.id);
    expect(second.netGrams).toBe(300_000);
    const { additions } = await readHopperPeriod(reader, tip.periodId);
    const masses = [tip.id, second.id].map((id) => additions.find((addition) => addition.id === id)?.mass);
    // The scale errs by 1 kg: one reading for each weighing, because the tare is preset.
    expect(masses).toEqual([
      { lowerGrams: 696_000, grams: 698_000, upperGrams: 700_000 },
      { lowerGrams: 299_000, grams: 300_000, upperGrams: 301_000 },
    ]);
  });
});

describe('a grade that does not go here', () => {
  it('stops the line, unless it has happened', async () => {
    const run = await aStartedRun(house, plant, { happened: true });
    const bag = await aReleasedBag(house, plant, { gradeId: plant.otherGradeId });
    await expect(aTip(house, plant, bag.id)).rejects.toMatchObject({
      code: 'grade-not-taken',
      facts: { run: run.number },
    });
    expect((await aTip(house, plant, bag.id, { happened: true })).broken).toEqual(['grade-not-taken']);
  });
});

describe('a record of a tip that is wrong', () => {
  it('a tip that did not occur gives the bag back, and can be corrected once', async () => {
    const bag = await aReleasedBag(house, plant, { placeId: plant.placeIds.store });
    const tip = await aTip(house, plant, bag.id);
    const form = { why: 'did-not-occur', reason: 'scanned while walking past' } as const;
    const answer = await house.get(CorrectTip).execute(asking(plant.actor), tip.id, form);
    expect(answer).toEqual({ correctedId: tip.id, id: null, bagId: null, openedAt: null });
    const back = { status: 'full', remainingGrams: 1_000_000, placeId: plant.placeIds.store };
    expect(await bagOf(reader, bag.id)).toMatchObject(back);
    expect(await tipsOfBag(reader, bag.id)).toEqual([]);
    await expect(house.get(CorrectTip).execute(asking(plant.actor), tip.id, form)).rejects.toEqual(
      refused('already-corrected'),
    );
  });

  it('a wrong scan moves the tip to the right bag, with its rest, and both bags are what they were', async () => {
    const wrong = await aReleasedBag(house, plant, { netGrams: 1_010_000 });
    const right = await aReleasedBag(house, plant, { netGrams: 990_000 });
    const tip = await aTip(house, plant, wrong.id, { isOff: false });
    const rest = { grossGrams: 201_800, tareGrams: 1_800, isPresetTare: true, scaleId: plant.scaleId };
    await house.get(EndTip).execute(asking(plant.actor), tip.id, rest);
    const form = { why: 'incorrect-data', bag: right.number, reason: 'the neighbour’s label' } as const;
    const answer = await house.get(CorrectTip).execute(asking(plant.actor), tip.id, form);
    expect(answer.bagId).toBe(right.id);
    expect(await bagOf(reader, wrong.id)).toMatchObject({ status: 'full', remainingGrams: 1_010_000 });
    expect(await bagOf(reader, right.id)).toMatchObject({ status: 'opened', remainingGrams: 200_000 });
    expect(await tipsOfBag(reader, right.id)).toMatchObject([{ id: answer.id, netGrams: 990_000, restGrams: 200_000 }]);
    await expect(
      house.get(CorrectTip).execute(asking(plant.actor), answer.id ?? '', { ...form, bag: null }),
    ).rejects.toEqual(refused('nothing-to-correct'));
  });

  it('a wrong time is corrected and stays known as stated later', async () => {
    const bag = await aReleasedBag(house, plant);
    const tip = await aTip(house, plant, bag.id);
    house.clock.pass(30);
    const openedAt = shifted(tip.openedAt, -20 * 60_000);
    const form = { why: 'incorrect-data', openedAt, reason: 'the scan was late' } as const;
    const { id } = await house.get(CorrectTip).execute(asking(plant.actor), tip.id, form);
    expect(await tipOf(reader, plant.siteId, id ?? '')).toMatchObject({ openedAt, isLate: true, offAt: tip.offAt });
    expect(await bagOf(reader, bag.id)).toMatchObject({ status: 'empty' });
    const early = { ...form, offAt: shifted(openedAt, -60_000) };
    await expect(house.get(CorrectTip).execute(asking(plant.actor), id ?? '', early)).rejects.toEqual(
      refused('off-before-open'),
    );
  });

  it('is refused where the bag went on since, and a bag that hangs has no end to correct', async () => {
    const bag = await aReleasedBag(house, plant);
    const tip = await aTip(house, plant, bag.id, { isOff: false });
    const offAt = house.clock.now();
    const form = { why: 'incorrect-data', offAt, reason: 'test' } as const;
    const correct = house.get(CorrectTip);
    await expect(correct.execute(asking(plant.actor), tip.id, form)).rejects.toEqual(refused('tip-hangs'));
    const rest = { grossGrams: 201_800, tareGrams: 1_800, isPresetTare: true, scaleId: plant.scaleId };
    await house.get(EndTip).execute(asking(plant.actor), tip.id, rest);
    await aTip(house, plant, bag.id);
    const gone = { why: 'did-not-occur', reason: 'test' } as const;
    await expect(correct.execute(asking(plant.actor), tip.id, gone)).rejects.toEqual(refused('bag-went-on'));
  });
});

describe('a bag whose number nobody can read', () => {
  const oneOf = (bags: readonly string[], secondPersonId = colleagueId) =>
    house.get(TipOneOfSeveral).execute(asking(plant.actor), {
      candidates: bags.map((bag) => ({ bag })),
      hopperId: plant.hopperId,
      secondPersonId,
      isOff: true,
    });

  it('is one of several until somebody finds out: the bags stay as they are, and quality is asked', async () => {
    const one = await aReleasedBag(house, plant, { netGrams: 980_000 });
    const other = await aReleasedBag(house, plant, { netGrams: 1_020_000 });
    const tip = await oneOf([one.number, other.number]);
    expect(tip.netGrams).toBe(1_000_000);
    expect(await bagOf(reader, one.id)).toMatchObject({ status: 'full' });
    expect(await openCauses(tip.id)).toEqual(['tip-of-unread-bag']);
    const { additions } = await readHopperPeriod(reader, tip.periodId);
    // It may have been the lighter or the heavier, each within its scale's error.
    expect(additions.find(({ id }) => id === tip.id)).toMatchObject({
      bagIds: [one.id, other.id],
      mass: { lowerGrams: 979_000, grams: 1_000_000, upperGrams: 1_021_000 },
    });
    const third = await aReleasedBag(house, plant);
    const settle = house.get(SettleCandidate);
    const form = { bag: third.id, reason: 'its label lay beside the hoist' };
    await expect(settle.execute(asking(plant.actor), tip.id, form)).rejects.toEqual(refused('not-a-candidate'));
    const settled = await settle.execute(asking(plant.actor), tip.id, { ...form, bag: other.id });
    expect(await candidatesOfTip(reader, tip.id)).toEqual([]);
    expect(await tipsOfBag(reader, other.id)).toMatchObject([{ id: settled.id, netGrams: 1_020_000 }]);
    expect(await bagOf(reader, other.id)).toMatchObject({ status: 'empty' });
    expect(await openCauses(tip.id)).toEqual([]);
    await expect(settle.execute(asking(plant.actor), settled.id, form)).rejects.toEqual(
      refused('tip-has-no-candidates'),
    );
  });

  it('needs two different bags and a second person who is somebody else', async () => {
    const one = await aReleasedBag(house, plant);
    const other = await aReleasedBag(house, plant);
    await expect(oneOf([one.number, one.id])).rejects.toEqual(refused('candidates-same'));
    const both = [one.id, other.id];
    await expect(oneOf(both, plant.actor.personId ?? '')).rejects.toEqual(refused('second-person-same'));
    await expect(oneOf(both, ids.next())).rejects.toEqual(unknown('person'));
    const tip = await house.get(TipOneOfSeveral).execute(asking(plant.actor), {
      candidates: both.map((bag) => ({ bag })),
      ...{ hopperId: plant.hopperId, secondPersonId: colleagueId },
    });
    const rest = { grossGrams: 201_800, tareGrams: 1_800, scaleId: plant.scaleId };
    await expect(house.get(EndTip).execute(asking(plant.actor), tip.id, rest)).rejects.toEqual(
      refused('rest-of-unknown-bag'),
    );
    const form = { why: 'incorrect-data', bag: one.id, reason: 'test' } as const;
    await expect(house.get(CorrectTip).execute(asking(plant.actor), tip.id, form)).rejects.toEqual(
      refused('tip-has-no-bag'),
    );
  });
});

describe('the states of bags', () => {
  it('can be rebuilt from the facts: after all of these tips and corrections they are what the rows say', async () => {
    const rebuilt = await rebuildBagStates(reader, plant.siteId, await bagChangesOfTips(reader, plant.siteId));
    const tipped = await reader.sql<{ bagId: string }>`SELECT DISTINCT "bag_id" AS "bagId" FROM "tip"`;
    const bagIds = tipped.flatMap(({ bagId }: { bagId: string | null }) => bagId ?? []);
    expect(bagIds.length).toBeGreaterThan(15);
    for (const bagId of bagIds) {
      const { number, status, remainingGrams } = await bagOf(reader, bagId);
      expect({ number, ...rebuilt.get(bagId) }).toMatchObject({ number, status, remainingGrams });
    }
  });
});
