import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, aReleasedBag, readerOf, someResults } from '../../test/support/a-bag.js';
import { aPlant, colourMethod, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { bagOf } from '../drying/bulk-bags.js';
import { changeBagState } from '../drying/change-bag-state.js';
import { StartBag } from '../drying/start-bag.js';
import { RecordChange } from '../journal/record-change.js';
import { CorrectResult } from '../laboratory/correct-result.js';
import { CorrectSample } from '../laboratory/correct-sample.js';
import { ReportResult } from '../laboratory/report-result.js';
import { resultsOfSamples } from '../laboratory/samples.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { SystemIds } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { NotFound } from '../platform/refusal.js';
import { renderPage } from '../platform/web/render-page.js';
import type { Viewer } from '../platform/web/request.js';
import { SampleController } from '../laboratory/sample.controller.js';
import { AssignGrade } from './assign-grade.js';
import { BagController } from './bag.controller.js';
import { Decide } from './decide.js';
import { DecisionSubjects } from './decision-subjects.js';
import type { DecideForm } from './decision.form.js';
import { decisionsOf, gradeAssignmentsOf } from './decisions.js';
import { HoldController } from '../tracing/hold.controller.js';
import { findHold, holdPage } from './holds.js';
import { LiftHold } from './lift-hold.js';
import { placeHold, type HoldDraft } from './place-hold.js';
import { SetHoldClass } from './set-hold-class.js';
import { bagStandingOf, bagStandingsOf, decisionOn, openHolds } from './standings.js';
import { stateWord, worstState } from './worst-state.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
const ids = new SystemIds();

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

const decide = (subject: string, wishes: Partial<DecideForm> = {}) =>
  house
    .get(Decide)
    .execute(asking(plant.actor), { kind: 'bulk-bag', subject, verdict: 'released', reason: null, ...wishes });

async function standing(bagId: string) {
  return bagStandingOf(reader, await bagOf(reader, bagId));
}

async function openCauses(subjectId: string): Promise<string[]> {
  const rows = await reader.sql<{ cause: string }>`
    SELECT p."cause" FROM "open_point" p WHERE p."subject_id" = ${subjectId}
      AND NOT EXISTS (SELECT 1 FROM "open_point_end" e WHERE e."point_id" = p."id") ORDER BY p."cause"`;
  return rows.map((row) => row.cause);
}

/** What a later step would do. */
function empty(bagId: string): Promise<boolean> {
  const to = { status: 'empty', remainingGrams: 0, placeId: null, at: house.clock.now() } as const;
  return house.get(UnitOfWork).run((tx) => changeBagState(tx, bagId, { status: ['full'] }, to));
}

describe('a decision on a bag', () => {
  it('waits without one, and releases only what is complete and within', async () => {
    const bag = await aBag(house, plant);
    expect((await standing(bag.id)).decision).toEqual({ verdict: 'waiting', reason: null, decidedAt: null });
    const incomplete = decide(bag.number);
    await expect(incomplete).rejects.toEqual(refused('results-missing'));
    await expect(incomplete).rejects.toMatchObject({ facts: { missing: 'moisture-percent, colour-iu' } });
    await someResults(house, plant, bag);
    expect(await decide(bag.number)).toMatchObject({ verdict: 'released', subjectId: bag.id });
    expect((await standing(bag.id)).decision.verdict).toBe('released');
  });

  it('releases at the limit, and not beyond it', async () => {
    const atLimit = await aBag(house, plant);
    await someResults(house, plant, atLimit, { moisturePercent: '0.060', colourIu: '45' });
    await decide(atLimit.number);
    const beyond = await aBag(house, plant);
    await someResults(house, plant, beyond, { colourIu: '45.1' });
    const release = decide(beyond.number);
    await expect(release).rejects.toEqual(refused('results-outside'));
    await expect(release).rejects.toMatchObject({ facts: { outside: 'colour-iu' } });
  });

  it('is not cleared by a retest: a concession says why', async () => {
    const bag = await aBag(house, plant);
    const sample = await someResults(house, plant, bag, { colourIu: '46' });
    const retest = { property: 'colour-iu', method: colourMethod, amount: '40', isRetest: true };
    await house.get(ReportResult).execute(asking(plant.actor), { sample: sample.number, ...retest });
    await expect(decide(bag.number)).rejects.toEqual(refused('results-outside'));
    await expect(decide(bag.number, { verdict: 'concession' })).rejects.toEqual(refused('decision-needs-reason'));
    await decide(bag.number, { verdict: 'concession', reason: 'customer takes up to 50 IU' });
    expect((await standing(bag.id)).decision).toMatchObject({ verdict: 'concession' });
  });

  it('says why it rejects, why it takes a rejection back, and stands in order', async () => {
    const bag = await aReleasedBag(house, plant);
    await expect(decide(bag.number, { verdict: 'rejected' })).rejects.toEqual(refused('decision-needs-reason'));
    await expect(decide(bag.number, { verdict: 'waiting' })).rejects.toEqual(refused('decision-needs-reason'));
    house.clock.pass(5);
    await decide(bag.number, { verdict: 'rejected', reason: 'torn liner' });
    await expect(decide(bag.number)).rejects.toEqual(refused('decision-needs-reason'));
    const earlier = { decidedAt: new Date(Date.parse(house.clock.now()) - 60_000).toISOString(), reason: 'was whole' };
    await expect(decide(bag.number, earlier)).rejects.toEqual(refused('later-decision-stands'));
    await decide(bag.number, { reason: 'liner was whole' });
    const verdicts = (await decisionsOf(reader, 'bulk-bag', bag.id)).map(({ verdict }) => verdict);
    expect(verdicts).toEqual(['released', 'rejected', 'released']);
  });

  it('may come twice at once: both are kept, the later one stands', async () => {
    const bag = await aReleasedBag(house, plant);
    await Promise.all([
      decide(bag.number, { verdict: 'concession', reason: 'one' }),
      decide(bag.number, { verdict: 'rejected', reason: 'other' }),
    ]);
    const all = await decisionsOf(reader, 'bulk-bag', bag.id);
    expect(all).toHaveLength(3);
    expect(all[0]?.verdict).toBe((await standing(bag.id)).decision.verdict);
  });

  it('is not taken on a bag that is being filled, nor on what is not there', async () => {
    const { run } = await aRun();
    const { number } = await house.get(StartBag).execute(asking(plant.actor), { run, safeLoadGrams: 1_250_000 });
    const reject = { verdict: 'rejected', reason: 'dirty' } as const;
    await expect(decide(number, reject)).rejects.toEqual(refused('bag-not-closed'));
    await expect(decide('B0000000')).rejects.toEqual(unknown('bulk-bag'));
  });

  it('to reject a bag that was used makes quality look at where it went', async () => {
    const bag = await aReleasedBag(house, plant);
    await empty(bag.id);
    await decide(bag.number, { verdict: 'rejected', reason: 'metal found' });
    expect(await openCauses(bag.id)).toEqual(['rejected-bag-was-used']);
    await decide(bag.number, { verdict: 'waiting', reason: 'it was another bag' });
    expect(await openCauses(bag.id)).toEqual([]);
  });
});

async function aRun(): Promise<{ run: string }> {
  const bag = await aBag(house, plant);
  return { run: (await bagOf(reader, bag.id)).dryerRunId ?? '' };
}

describe('a decision on a lot or a pallet', () => {
  it('is taken by its finder, and releases nothing that is under a hold of its own', async () => {
    const palletId = ids.next();
    const subjects = new DecisionSubjects();
    subjects.add('pallet', async (_from, _siteId, text) => {
      if (text !== 'P1') throw new NotFound('pallet', text);
      return { id: palletId, label: 'P1' };
    });
    const command = new Decide(house.get(RecordChange), ids, subjects);
    const onPallet = (subject: string, wishes: Partial<DecideForm> = {}) =>
      command.execute(asking(plant.actor), { kind: 'pallet', subject, verdict: 'released', ...wishes });
    await expect(onPallet('P2')).rejects.toEqual(unknown('pallet'));
    const hold = await place({ scope: { kind: 'pallet', id: palletId } });
    await expect(onPallet('P1')).rejects.toEqual(refused('subject-on-hold'));
    await onPallet('P1', { verdict: 'rejected', reason: 'crushed' });
    await lift(hold.number);
    await onPallet('P1', { reason: 'restacked' });
    expect(await decisionOn(reader, 'pallet', palletId)).toMatchObject({ verdict: 'released' });
    await expect(onPallet('6071A', { kind: 'lot' })).rejects.toEqual(unknown('lot'));
    expect(() => {
      subjects.add('pallet', async () => ({ id: '', label: '' }));
    }).toThrow('two finders');
  });
});

describe('a grade that is assigned', () => {
  const assign = (bag: string, gradeId: string, wishes: object = {}) =>
    house.get(AssignGrade).execute(asking(plant.actor), { bag, gradeId, reason: 'colour', ...wishes });

  it('stands beside the one that the dryer meant, and the bag waits again', async () => {
    const bag = await aReleasedBag(house, plant);
    await expect(assign(bag.number, plant.gradeId)).rejects.toEqual(refused('grade-already-so'));
    await expect(assign(bag.number, plant.siteId)).rejects.toEqual(unknown('grade'));
    const early = { assignedAt: new Date(Date.parse(house.clock.now()) - 60_000).toISOString() };
    await expect(assign(bag.number, plant.otherGradeId, early)).rejects.toEqual(refused('later-decision-stands'));
    house.clock.pass(1);
    expect(await assign(bag.number, plant.otherGradeId)).toMatchObject({ verdict: 'waiting' });
    const { gradeId, decision } = await standing(bag.id);
    expect([gradeId, decision.verdict]).toEqual([plant.otherGradeId, 'waiting']);
    expect((await bagOf(reader, bag.id)).intendedGradeId).toBe(plant.gradeId);
    expect(await gradeAssignmentsOf(reader, bag.id)).toHaveLength(1);
    await assign(bag.number, plant.gradeId);
    expect((await standing(bag.id)).gradeId).toBe(plant.gradeId);
  });

  it('waits for the end of filling', async () => {
    const { run } = await aRun();
    const { number } = await house.get(StartBag).execute(asking(plant.actor), { run, safeLoadGrams: 1_250_000 });
    await expect(assign(number, plant.otherGradeId)).rejects.toEqual(refused('bag-not-closed'));
  });
});

const place = (wishes: Partial<HoldDraft> & Pick<HoldDraft, 'scope'>) =>
  house.get(UnitOfWork).run((tx) =>
    placeHold(
      tx,
      { recordedAt: house.clock.now() },
      {
        nextId: () => ids.next(),
        siteId: plant.siteId,
        reason: 'torn sieve',
        placedAt: house.clock.now(),
        ...wishes,
      },
    ),
  );
const lift = (hold: string) => house.get(LiftHold).execute(asking(plant.actor), { hold, reason: 'sieve was whole' });

describe('a hold', () => {
  it('stops a released bag, its own or its dryer run’s, until each is lifted', async () => {
    const bag = await aReleasedBag(house, plant);
    const runId = (await bagOf(reader, bag.id)).dryerRunId ?? '';
    const own = await place({ scope: { kind: 'bulk-bag', id: bag.id } });
    const ofRun = await place({ scope: { kind: 'dryer-run', id: runId } });
    expect(own.number).toMatch(/^H-2026-\d{6}$/);
    const before = await standing(bag.id);
    expect(before.holds.map(({ id }) => id).sort()).toEqual([own.id, ofRun.id].sort());
    expect(before).toMatchObject({ isOnHold: true, decision: { verdict: 'released' } });
    await lift(own.number);
    expect((await bagStandingsOf(reader, [bag.id])).get(bag.id)?.isOnHold).toBe(true);
    await lift(ofRun.id);
    expect((await standing(bag.id)).isOnHold).toBe(false);
  });

  it('is a safety hold until a quality officer sets its class, and quality is asked to', async () => {
    const scope = { kind: 'packing-run', id: ids.next() } as const;
    const hold = await place({ scope, fromCount: 100, toCount: 200 });
    expect(hold).toMatchObject({ hazard: 'safety', fromCount: 100, toCount: 200 });
    expect(await openCauses(hold.id)).toEqual(['hold-without-class']);
    const set = (hazard: 'safety' | 'quality') =>
      house.get(SetHoldClass).execute(asking(plant.actor), { hold: hold.number, hazard, reason: 'colour only' });
    await set('safety');
    await expect(set('safety')).rejects.toEqual(refused('hold-class-unchanged'));
    house.clock.pass(1);
    await set('quality');
    expect(await openHolds(reader, [scope])).toMatchObject([{ id: hold.id, hazard: 'quality' }]);
    expect(await openCauses(hold.id)).toEqual([]);
    await lift(hold.number);
    await expect(set('safety')).rejects.toEqual(refused('hold-already-lifted'));
    expect(await openHolds(reader, [scope])).toEqual([]);
  });

  it.each([
    ['a part of what has no counts', { kind: 'lot', id: 'x' } as const, 1, 2],
    ['a part without an end', { kind: 'packing-run', id: 'x' } as const, 1, null],
    ['a part of nothing', { kind: 'packing-run', id: 'x' } as const, 5, 5],
  ])('is not placed on %s', async (_, scope, fromCount, toCount) => {
    await expect(place({ scope, fromCount, toCount })).rejects.toEqual(refused('hold-range-not-usable'));
  });

  it('is lifted once, by whoever comes first', async () => {
    const bag = await aBag(house, plant);
    const hold = await place({ scope: { kind: 'bulk-bag', id: bag.id } });
    const settled = await Promise.allSettled([lift(hold.number), lift(hold.number)]);
    const lost = settled.flatMap((end) => (end.status === 'rejected' ? [end.reason as unknown] : []));
    expect(lost).toEqual([refused('hold-already-lifted')]);
    await expect(lift(hold.number)).rejects.toEqual(refused('hold-already-lifted'));
    await expect(lift('H-2026-999999')).rejects.toEqual(unknown('hold'));
    const line = await findHold(reader, plant.siteId, hold.number.toLowerCase());
    expect(line).toMatchObject({ liftReason: 'sieve was whole', hazardSet: null });
    expect((await holdPage(reader, plant.siteId, { before: null, limit: 1 }))[0]?.id).toBe(hold.id);
  });
});

describe('a result outside', () => {
  const look = () => house.get(JobRunner).drain();

  it('makes quality look at each bag that is not rejected, or that was used, until it is gone or decided on', async () => {
    const [waiting, rejected, used] = [await aBag(house, plant), await aBag(house, plant), await aBag(house, plant)];
    for (const bag of [rejected, used]) await decide(bag.number, { verdict: 'rejected', reason: 'wet' });
    await empty(used.id);
    const sample = await someResults(house, plant, waiting, { moisturePercent: '0.08' });
    for (const bag of [rejected, used]) await someResults(house, plant, bag, { moisturePercent: '0.08' });
    await look();
    expect(await openCauses(waiting.id)).toEqual(['results-outside-of-bag']);
    expect(await openCauses(rejected.id)).toEqual([]);
    expect(await openCauses(used.id)).toEqual(['results-outside-of-bag']);
    const [wrong] = (await resultsOfSamples(reader, [sample.id])).get(sample.id) ?? [];
    const right = { why: 'incorrect-data', reason: 'point in the wrong place', amount: '0.008' } as const;
    await house.get(CorrectResult).execute(asking(plant.actor), wrong!.id, right);
    await look();
    expect(await openCauses(waiting.id)).toEqual([]);
  });

  it('is settled by a concession, and comes again with a new result outside', async () => {
    const bag = await aBag(house, plant);
    const sample = await someResults(house, plant, bag, { colourIu: '46' });
    await look();
    expect(await openCauses(bag.id)).toEqual(['results-outside-of-bag']);
    await decide(bag.number, { verdict: 'concession', reason: 'customer takes it' });
    expect(await openCauses(bag.id)).toEqual([]);
    const retest = { property: 'colour-iu', method: colourMethod, amount: '60', isRetest: true };
    await house.get(ReportResult).execute(asking(plant.actor), { sample: sample.number, ...retest });
    await look();
    expect(await openCauses(bag.id)).toEqual(['results-outside-of-bag']);
    await house.get(CorrectSample).execute(asking(plant.actor), { sample: sample.number, reason: 'wrong bag' });
    await look();
    expect(await openCauses(bag.id)).toEqual([]);
  });
});

describe('the word for a state', () => {
  it('puts a hold over whatever was decided, but for a rejection', () => {
    expect(stateWord('released', true)).toBe('on-hold');
    expect(stateWord('concession', true)).toBe('on-hold');
    expect(stateWord('rejected', true)).toBe('rejected');
    expect(stateWord('waiting', false)).toBe('waiting');
  });

  it('of several is the worst', () => {
    expect(worstState(['released', 'concession'])).toBe('concession');
    expect(worstState(['concession', 'waiting'])).toBe('waiting');
    expect(worstState(['waiting', 'on-hold', 'released'])).toBe('on-hold');
    expect(worstState(['on-hold', 'rejected'])).toBe('rejected');
    expect(worstState(['released'])).toBe('released');
    expect(() => worstState([])).toThrow(RangeError);
  });
});

describe('the pages', () => {
  const viewer = (): Viewer => ({
    actor: plant.actor,
    name: 'Test',
    siteName: 'Alder Quay',
    timeZone: 'Europe/Berlin',
    language: 'en',
    csrfToken: 'token',
    ...{ said: null, deviceCode: null, proof: 'password' as const, journalSequence: 0 },
    path: '/bags',
  });

  it('of a bag show numbers, weights, results, decisions and holds, and the dangers of hanging bags', async () => {
    const bag = await aReleasedBag(house, plant, { scaleId: plant.staleScaleId, placeId: plant.placeIds.store });
    const hold = await place({ scope: { kind: 'bulk-bag', id: bag.id }, reason: '<b>torn</b> sieve' });
    const html = renderPage(await house.get(BagController).one(viewer(), bag.id));
    const shown = [
      bag.number,
      bag.sscc,
      '1\u202f000 kg',
      'from 999 kg to 1\u202f001 kg',
      'LANE-1',
      hold.number,
      'S-2026-',
      '0.035',
    ];
    for (const part of [...shown, 'state-on-hold', 'state-doubtful', 'Released', 'Hanging bags kill', 'not sold']) {
      expect(html).toContain(part);
    }
    expect(html).toContain(`/thread?code=${bag.number}`);
    expect(html).toContain(`/quality/holds/new?kind=bulk-bag&amp;id=${bag.id}`);
    expect(html).toContain('&lt;b>torn');
    expect(html).not.toMatch(/<b>torn|style=/);
    const list = renderPage(await house.get(BagController).list(viewer(), { limit: 2 }));
    expect(list).toContain(`/bags/${bag.id}`);
    expect(list).toMatch(/\/bags\?before=[0-9a-f-]{36}/);
  });

  it('of holds and samples show what they cover', async () => {
    const bag = await aBag(house, plant);
    const hold = await place({ scope: { kind: 'bulk-bag', id: bag.id } });
    const page = async () => renderPage(await house.get(HoldController).one(viewer(), hold.id));
    expect(await page()).toContain(`/thread?code=${bag.number}`);
    expect(await page()).toContain('class not set yet');
    await lift(hold.number);
    expect(await page()).toContain('sieve was whole');
    const range = await place({ scope: { kind: 'packing-run', id: ids.next() }, fromCount: 1, toCount: 9 });
    const list = renderPage(await house.get(HoldController).list(viewer(), {}));
    expect(list).toContain('packs from 1 up to before 9');
    expect(list).toContain(range.number);
    const sample = await someResults(house, plant, bag);
    const samplePage = renderPage(await house.get(SampleController).one(viewer(), sample.id));
    for (const part of [bag.number, 'Moisture, %', '0.035', 'GS2/3-10']) expect(samplePage).toContain(part);
    const samples = renderPage(await house.get(SampleController).list(viewer(), { limit: 1 }));
    expect(samples).toContain(`Bag ${bag.number}`);
  });
});
