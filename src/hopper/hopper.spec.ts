import { afterAll, afterEach, beforeEach, describe, expect, it, jest } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPerson } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import {
  aProvenEmpty,
  aReleasedBag,
  aStartedRun,
  aTip,
  aTippedBag,
  decided,
  jobsDone,
} from '../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { openPointsOf } from '../open-points/open-points.js';
import { CloseRun } from '../packing/close-run.js';
import { HopperLine } from '../plant/hopper-line.entity.js';
import { shifted } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { SystemIds } from '../platform/ids.js';
import { say } from '../platform/sentences/sentences.js';
import { CloseReworkBin } from './close-rework-bin.js';
import { CorrectTip } from './correct-tip.js';
import { contentOf } from './hopper-content.js';
import { levelOf } from './hopper-level.js';
import { currentPeriod } from './hopper-periods.js';
import { ProveEmpty } from './prove-empty.js';
import { RunDown } from './run-down.js';
import { SeeLevel } from './see-level.js';
import { TipReworkBin } from './tip-rework-bin.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

const ids = new SystemIds();
const refused = (code: string) => expect.objectContaining({ name: 'Refusal', code });
const unknown = (kind: string) => expect.objectContaining({ name: 'NotFound', kind });
const opened: TestHouse[] = [];

beforeEach(async () => {
  house = await openHouse();
  opened.push(house);
  plant = await aPlant(house);
  reader = readerOf(house);
});
afterEach(async () => {
  await opened.pop()?.close();
});
afterAll(async () => {
  for (const left of opened) await left.close();
});

const causes = async () =>
  (await openPointsOf(reader, plant.siteId, { state: 'open', limit: 50 })).map(({ cause }) => cause);

describe('starting a run', () => {
  it('opens the hopper’s first period and counts nothing yet', async () => {
    expect(await currentPeriod(reader, plant.hopperId)).toBeNull();
    const run = await aStartedRun(house, plant);
    expect(run).toMatchObject({ hopperId: plant.hopperId, broken: [] });
    expect(await currentPeriod(reader, plant.hopperId)).toMatchObject({ number: 1, previousPeriodId: null });
    await expect(aStartedRun(house, plant)).rejects.toEqual(refused('line-has-open-run'));
  });

  it('lets one of two win that start a run on the same line at once', async () => {
    const settled = await Promise.allSettled([aStartedRun(house, plant), aStartedRun(house, plant)]);
    const lost = settled.flatMap((end) => (end.status === 'rejected' ? [end.reason as unknown] : []));
    expect(lost).toEqual([refused('line-has-open-run')]);
  });

  it('is refused while the hopper may hold a grade that the format does not take, naming the bags', async () => {
    const { bag } = await aTippedBag(house, plant, { gradeId: plant.otherGradeId });
    await expect(aStartedRun(house, plant)).rejects.toMatchObject({
      code: 'hopper-holds-other-grade',
      facts: { bagCount: 1, bags: bag.number },
    });
    const run = await aStartedRun(house, plant, { happened: true });
    expect(run.broken).toEqual(['hopper-holds-other-grade']);
    expect(await causes()).toContain('happened-hopper-holds-other-grade');
  });

  it('is free again once the hopper was proven empty, but not while a residue of the other grade sticks', async () => {
    await aTippedBag(house, plant, { gradeId: plant.otherGradeId });
    const run = await aStartedRun(house, plant, { formatId: plant.otherFormatId });
    house.clock.pass(60);
    await packsCounted(house, plant, run.id, 990);
    await house.get(CloseRun).execute(asking(plant.actor), run.id, { packCount: 990, loosePackCount: 0 });
    await aProvenEmpty(house, plant, { residueGrams: 4_000 });
    house.clock.pass(1);
    await expect(aStartedRun(house, plant)).rejects.toEqual(refused('hopper-holds-other-grade'));
    await aProvenEmpty(house, plant, { residueGrams: 0 });
    house.clock.pass(1);
    expect((await aStartedRun(house, plant)).broken).toEqual([]);
  });

  it('needs a line that a hopper feeds, and known things', async () => {
    await house.get(UnitOfWork).run(async (tx) => {
      const [, lineId] = plant.lineIds;
      const link = { siteId: plant.siteId, lineId, hopperId: null, validFrom: house.clock.now() };
      await tx.insert(HopperLine, { id: ids.next(), ...link, voidedBy: null });
    });
    await expect(aStartedRun(house, plant, { lineId: plant.lineIds[1] })).rejects.toEqual(
      refused('line-has-no-hopper'),
    );
    await expect(aStartedRun(house, plant, { lineId: ids.next() })).rejects.toEqual(unknown('packing-line'));
    await expect(aStartedRun(house, plant, { formatId: ids.next() })).rejects.toEqual(unknown('pack-format'));
  });
});

describe('a level that was seen', () => {
  it('narrows what may be inside, and is questioned where it cannot be', async () => {
    await aTippedBag(house, plant);
    const see = { how: 'probe', lowerGrams: 990_000, upperGrams: 995_000 } as const;
    house.clock.pass(30);
    const seen = await house.get(SeeLevel).execute(asking(plant.actor), plant.hopperId, see);
    expect(seen).toMatchObject({ lowerGrams: 990_000 });
    const wrong = { ...see, lowerGrams: 996_000 };
    await expect(house.get(SeeLevel).execute(asking(plant.actor), plant.hopperId, wrong)).rejects.toEqual(
      refused('limits-out-of-order'),
    );
    // The bag is 1 000 kg within one reading of the scale: 999 to 1 001 kg.
    expect(await levelOf(reader, plant.hopperId)).toMatchObject({
      lowerGrams: 990_000,
      upperGrams: 995_000,
      findings: [{ kind: 'above-seen', byGrams: 4_000 }],
    });
    await jobsDone(house);
    expect(await causes()).toContain('hopper-level-impossible');
  });

  it('by running down is recorded also where the records say otherwise, and then asks who is wrong', async () => {
    await aTippedBag(house, plant);
    house.clock.pass(30);
    const run = { atMostGrams: 40_000 };
    const answer = await house.get(RunDown).execute(asking(plant.actor), plant.hopperId, run);
    expect(answer.isQuestioned).toBe(true);
    expect(await causes()).toContain('run-down-questioned');
  });
});

describe('proving a hopper empty', () => {
  const form = (wishes: object = {}) => ({
    ...{ isFlowStopped: true, how: 'hatch opened, lamp', residueGrams: 0, secondPersonId: ids.next() },
    ...wishes,
  });
  const prove = (wishes: object = {}) =>
    house.get(ProveEmpty).execute(asking(plant.actor), plant.hopperId, form(wishes));

  it('is refused without its proofs', async () => {
    const secondPersonId = (await aPerson(house, plant.siteId)).personId;
    await expect(prove({ isFlowStopped: false, secondPersonId })).rejects.toEqual(refused('flow-not-stopped'));
    await expect(prove({ secondPersonId: plant.actor.personId })).rejects.toEqual(refused('second-person-same'));
    await expect(prove()).rejects.toEqual(unknown('person'));
    const limits = { residueGrams: 5_000, residueUpperGrams: 4_000, secondPersonId };
    await expect(prove(limits)).rejects.toEqual(refused('limits-out-of-order'));
  });

  it('is refused while a bag hangs, before what was recorded later, and far from the level', async () => {
    const secondPersonId = (await aPerson(house, plant.siteId)).personId;
    const bag = await aReleasedBag(house, plant);
    await aTip(house, plant, bag.id, { isOff: false });
    await expect(prove({ secondPersonId })).rejects.toEqual(refused('bag-hangs'));
    const before = { provenAt: shifted(house.clock.now(), -60_000), secondPersonId };
    await expect(prove(before)).rejects.toEqual(refused('records-after-empty'));
    const tip = await house.get(CorrectTip).execute(asking(plant.actor), (await tipIds())[0] ?? '', {
      why: 'did-not-occur',
      reason: 'test',
    });
    expect(tip.id).toBeNull();
    await aTip(house, plant, bag.id);
    house.clock.pass(60);
    await expect(prove({ secondPersonId })).rejects.toMatchObject({
      code: 'empty-questioned',
      facts: { kilograms: '999 kg' },
    });
    const answer = await prove({ secondPersonId, happened: true });
    expect(answer).toMatchObject({ isThreadCut: true, doubtGrams: 999_000 });
    expect(await causes()).toContain('happened-empty-questioned');
  });

  it('ends the period and starts the next: 0 kg cuts the thread, a residue goes on', async () => {
    const { bag } = await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    house.clock.pass(60);
    const counts = [{ run: run.number, packCount: 497 }];
    const first = await aProvenEmpty(house, plant, { residueGrams: 6_000, counts });
    expect(first.isThreadCut).toBe(false);
    const second = await currentPeriod(reader, plant.hopperId);
    expect(second).toMatchObject({ number: 2, previousPeriodId: first.endedPeriodId, residueUpperGrams: 12_000 });
    const { bags } = await contentOf(reader, plant.hopperId);
    expect(bags).toEqual([
      { bagId: bag.id, leastGrams: 0, likelyGrams: 6_000, mostGrams: expect.any(Number), word: 'likely' },
    ]);
    house.clock.pass(1);
    const next = await aProvenEmpty(house, plant, { residueGrams: 0 });
    expect(next.isThreadCut).toBe(true);
    expect(await currentPeriod(reader, plant.hopperId)).toMatchObject({ number: 3, previousPeriodId: null });
    expect((await contentOf(reader, plant.hopperId)).bags).toEqual([]);
    await expect(aProvenEmpty(house, plant)).rejects.toEqual(refused('already-proven-empty'));
  });

  it('lets one of two win that prove it empty at once', async () => {
    await aStartedRun(house, plant);
    house.clock.pass(5);
    const settled = await Promise.allSettled([aProvenEmpty(house, plant), aProvenEmpty(house, plant)]);
    const lost = settled.flatMap((end) => (end.status === 'rejected' ? [end.reason as unknown] : []));
    expect(lost).toEqual([refused('already-proven-empty')]);
  });

  it('takes no count of a run that draws from elsewhere', async () => {
    const run = await aStartedRun(house, plant);
    house.clock.pass(5);
    await house.get(UnitOfWork).run(async (tx) => {
      const link = { siteId: plant.siteId, lineId: plant.lineIds[0], hopperId: null, validFrom: house.clock.now() };
      await tx.insert(HopperLine, { id: ids.next(), ...link, voidedBy: null });
    });
    const counts = [{ run: run.number, packCount: 0 }];
    await expect(aProvenEmpty(house, plant, { counts })).rejects.toEqual(refused('run-of-other-hopper'));
  });

  async function tipIds(): Promise<string[]> {
    const rows = await reader.sql<{ id: string }>`SELECT "id" FROM "tip" WHERE "voided_by" IS NULL`;
    return rows.map(({ id }) => id);
  }
});

describe('the level check', () => {
  it('raises a point where a tip is missing, and clears it when the tip comes late', async () => {
    await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    house.clock.pass(40);
    const missing = await aReleasedBag(house, plant);
    const openedAt = house.clock.now();
    house.clock.pass(40);
    await packsCounted(house, plant, run.id, 700);
    await jobsDone(house);
    expect(await causes()).toContain('hopper-level-impossible');
    const [point] = await openPointsOf(reader, plant.siteId, { state: 'open', limit: 1 });
    // 1 001 kg went in at most, 700 packs of at least 1.99 kg left.
    expect(point?.facts).toMatchObject({
      hopper: 'H1',
      kilograms: '392 kg',
      what: 'below-zero',
      first: 'tip-missing',
      mass: '392 kg',
    });
    expect(say(point?.cause ?? '', point?.facts)).toContain(
      'was 392 kg below zero. Best explanation: a tip of 392 kg or more',
    );
    await aTip(house, plant, missing.id, { openedAt });
    await jobsDone(house);
    expect(await causes()).not.toContain('hopper-level-impossible');
    expect(await levelOf(reader, plant.hopperId)).toMatchObject({ grams: 600_000, findings: [] });
  });

  it('looks closely at counts only when the level can be below zero', async () => {
    await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    await jobsDone(house);
    const closeLooks = jest.spyOn(house.get(HeavyReads), 'report');
    for (const packCount of [100, 300, 480]) {
      house.clock.pass(10);
      await packsCounted(house, plant, run.id, packCount);
      await jobsDone(house);
    }
    expect(closeLooks).not.toHaveBeenCalled();
    house.clock.pass(10);
    await packsCounted(house, plant, run.id, 510);
    await jobsDone(house);
    expect(closeLooks).toHaveBeenCalledTimes(1);
    expect(await causes()).toContain('hopper-level-impossible');
  });

  it('looks closely at a hopper that is too full once the bags must be in, and then only when something leaves it', async () => {
    const closeLooks = jest.spyOn(house.get(HeavyReads), 'report');
    const tipMore = async (minutes: number): Promise<string> => {
      const { id } = (await aTippedBag(house, plant, { happened: true })).tip;
      house.clock.pass(minutes);
      await jobsDone(house);
      return id;
    };
    const first = await tipMore(1);
    closeLooks.mockClear();
    for (let tips = 0; tips < 5; tips += 1) await tipMore(1);
    expect(closeLooks).not.toHaveBeenCalled();
    house.clock.pass(20);
    await tipMore(1);
    expect(closeLooks).toHaveBeenCalledTimes(1);
    expect(await causes()).toContain('hopper-level-impossible');
    await tipMore(20);
    expect(closeLooks).toHaveBeenCalledTimes(1);
    await house.get(CorrectTip).execute(asking(plant.actor), first, { why: 'did-not-occur', reason: 'test' });
    await jobsDone(house);
    expect(closeLooks).toHaveBeenCalledTimes(2);
    expect(await causes()).toContain('hopper-level-impossible');
  });
});

describe('rework', () => {
  const close = (run: string, wishes: object = {}) =>
    house.get(CloseReworkBin).execute(asking(plant.actor), {
      ...{ content: 'opened-packs', netGrams: 20_000, parents: [{ run, fromCount: 0, toCount: 10 }], ...wishes },
    } as never);

  it('takes opened packs and machine rejects, never metal rejects, sweepings, returns or the unknown', async () => {
    await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    house.clock.pass(10);
    await packsCounted(house, plant, run.id, 100);
    for (const content of ['metal-rejects', 'floor-sweepings', 'trade-returns', 'unknown-product']) {
      await expect(close(run.number, { content })).rejects.toEqual(refused('content-never-rework'));
    }
    const parents = [{ run: run.number, fromCount: 90, toCount: 101 }];
    await expect(close(run.number, { parents })).rejects.toEqual(refused('range-not-counted'));
    await expect(close(run.number, { netGrams: 22_000 })).rejects.toEqual(refused('bin-heavier-than-its-packs'));
    const bin = await close(run.number);
    expect(bin.number).toBe('RB-2026-000001');
    const tipBin = house.get(TipReworkBin);
    const form = { bin: 'rb 2026 1', hopperId: plant.hopperId };
    const early = { ...form, openedAt: shifted(house.clock.now(), -60_000) };
    await expect(tipBin.execute(asking(plant.actor), early)).rejects.toEqual(refused('bin-not-closed-then'));
    await expect(tipBin.execute(asking(plant.actor), { ...form, bin: 'RB-2026-000099' })).rejects.toEqual(
      unknown('rework-bin'),
    );
    const settled = await Promise.allSettled([1, 2].map(() => tipBin.execute(asking(plant.actor), form)));
    const lost = settled.flatMap((end) => (end.status === 'rejected' ? [end.reason as unknown] : []));
    expect(lost).toEqual([refused('bin-already-tipped')]);
  });

  it('stops a bin that may hold a bag which quality has rejected since', async () => {
    const { bag } = await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    house.clock.pass(30);
    await packsCounted(house, plant, run.id, 100);
    const bin = await close(run.number);
    house.clock.pass(1);
    await decided(house, plant, bag.id, 'rejected');
    const form = { bin: bin.number, hopperId: plant.hopperId };
    const tipBin = house.get(TipReworkBin);
    await expect(tipBin.execute(asking(plant.actor), form)).rejects.toEqual(refused('bag-rejected'));
    expect((await tipBin.execute(asking(plant.actor), { ...form, happened: true })).broken).toEqual(['bag-rejected']);
  });
});
