import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aPackedRun, aPallet, aTippedBag } from '../../test/support/a-pallet.js';
import { aCheckPlan, passed } from '../../test/support/a-check-plan.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { pageCount, textOf } from '../../test/support/read-pdf.js';
import { aLotLoaded, lotLeaves } from '../../test/support/a-loaded-lot.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { LiftHold } from '../disposition/lift-hold.js';
import { openHolds } from '../disposition/standings.js';
import { TakeSample } from '../laboratory/take-sample.js';
import { TakeBack } from '../dispatch/take-back.js';
import { Papers } from '../platform/printing/papers.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { inPaperLanguage } from '../platform/printing/paper-language.js';
import type { PlaceHoldForm } from '../tracing/hold.form.js';
import { PlaceHold } from '../tracing/place-hold.js';
import { gramPreciseText } from '../tracing/thread-text.js';
import { AnswerRecall, WithdrawRecallAnswer } from './answer-recall.js';
import { HoldRecall } from './hold-recall.js';
import { MarkRecall } from './mark-recall.js';
import { OpenRecall } from './open-recall.js';
import { figuresOfRecall } from './recall-figures.js';
import { proposedHolds } from './recall-holds.js';
import type { OpenRecallForm, RecallAnswerForm } from './recall.form.js';
import { answersOf, findRecall, recallPage, signingOf } from './recalls.js';
import { figuresOfText } from './frozen-figures.js';
import type { RecallReportFacts } from './recall-report.facts.js';
import { recallReport } from './recall-report.paper.js';
import { csvOfLinks, linksCsv } from './links-csv.js';
import { SignRecall } from './sign-recall.js';

let house: TestHouse;
let plant: Plant;
let from: ReadFrom;

// A house for each: all sites of one house would share their SSCCs.
beforeEach(async () => {
  house = await openHouse();
  from = readerOf(house);
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
});
afterEach(() => house.close());

const open = (form: Partial<OpenRecallForm> & Pick<OpenRecallForm, 'scopes'>, key?: string) =>
  house.get(OpenRecall).execute(asking(plant.actor, key), {
    ...{ kind: 'exercise', hazard: 'safety', reason: 'yearly exercise' },
    ...form,
  });
const mark = (id: string, name: 'customers-listed' | 'stock-blocked' | 'clock-stopped') =>
  house.get(MarkRecall).execute(asking(plant.actor), id, { mark: name });
const answer = (id: string, form: Partial<RecallAnswerForm> & Pick<RecallAnswerForm, 'answer'>) =>
  house.get(AnswerRecall).execute(asking(plant.actor), id, { customerId: plant.customerId, ...form });
const sign = (id: string, explanation: string | null = null) =>
  house.get(SignRecall).execute(asking(plant.actor), id, { explanation });
const figures = async (id: string) => figuresOfRecall(from, await findRecall(from, plant.siteId, id));
const countOf = async () => (await recallPage(from, plant.siteId, { before: null, limit: 50 })).length;

const aLotGone = (palletsGone?: number) => aLotLoaded(house, plant, palletsGone);
const gone = (delivery: string, unitCount?: number) => lotLeaves(house, plant, delivery, unitCount);

describe('a recall', () => {
  it('says where every pack of a lot is, in packs and in kilograms, and the sum is what was produced', async () => {
    const { run, delivery } = await aLotGone();
    const { id, number } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    expect(number).toBe('EX-2026-000001');
    expect((await figures(id)).packs).toMatchObject({ onVehicle: 300, inStore: 200, dispatched: 0 });
    await gone(delivery);
    const { packs, milligrams, customers, units } = await figures(id);
    expect(packs).toMatchObject({
      ...{ produced: 503, inStore: 200, onDock: 0, onVehicle: 0, dispatched: 300 },
      ...{ rejects: 2, retained: 1, samples: 0, scrapped: 0, unaccounted: 0, accountedPercent: 100 },
      verdict: 'adds-up',
    });
    const { inStore, dispatched, usedUp, unaccounted, produced } = milligrams;
    expect(inStore + dispatched + usedUp + unaccounted).toBe(produced);
    expect(milligrams.verdict).toBe('adds-up');
    expect(inStore * 3).toBe(dispatched * 2);
    expect(customers).toMatchObject([{ customerId: plant.customerId, palletCount: 3, packCount: 300 }]);
    expect(customers[0]?.deliveries[0]?.number).toMatch(/^DN-2026-/);
    expect(units.filter(({ place }) => place === 'in-store')).toHaveLength(2);
  });

  it('names packs that stand on no pallet unaccounted, and is signed only with words on it', async () => {
    await aTippedBag(house, plant);
    const run = await aPackedRun(house, plant, { packCount: 130 });
    await aPallet(house, plant, { run: run.runId });
    const { id } = await open({ scopes: [{ scopeKind: 'packing-run', scopeId: run.runId }] });
    expect((await figures(id)).packs).toMatchObject({ unaccounted: 30, accountedPercent: 76.92 });
    await expect(sign(id)).rejects.toMatchObject({ code: 'recall-clock-running' });
    await mark(id, 'clock-stopped');
    await expect(sign(id)).rejects.toMatchObject({ code: 'recall-needs-explanation', facts: { packs: 30 } });
    const { journalHead } = await sign(id, 'Thirty packs lie on the table of the line');
    expect(journalHead).toMatch(/^[0-9a-f]{64}$/);
  });

  it('covers all that a bag may be in, with the bags of a dryer shift alike, and counts nothing twice', async () => {
    const { bag } = await aLotGone();
    const waiting = await aBag(house, plant);
    const scopes = [
      { scopeKind: 'bulk-bag' as const, scopeId: bag.id },
      { scopeKind: 'bulk-bag' as const, scopeId: waiting.id },
    ];
    const { id } = await open({ scopes });
    const one = await figures(id);
    expect(one.packs.produced).toBe(503);
    expect(one.milligrams).toMatchObject({ verdict: 'adds-up', unaccounted: 0 });
    expect(one.units.find(({ kind }) => kind === 'bulk-bag')).toMatchObject({ id: waiting.id, place: 'in-store' });
    expect(one.overRecall).not.toBeNull();
    const shift = await open({
      scopes: [
        ...scopes,
        { scopeKind: 'dryer-shift', scopeId: plant.dryerId, fromAt: '2026-03-12T06:30:00.000Z', untilAt: null },
      ],
    });
    expect((await figures(shift.id)).packs.produced).toBe(503);
  });

  it('takes minutes of a run from the last count before to the first after them', async () => {
    await aTippedBag(house, plant);
    const started = house.clock.now();
    const run = await aPackedRun(house, plant, { packCount: 200 });
    const untilAt = house.clock.now();
    const scope = { scopeKind: 'packing-run' as const, scopeId: run.runId };
    const whole = await open({ scopes: [{ ...scope, fromAt: started, untilAt }] });
    expect((await figures(whole.id)).packs.produced).toBe(200);
    const line = { scopeKind: 'packing-shift' as const, scopeId: plant.lineIds[0], fromAt: started, untilAt: null };
    expect((await figures((await open({ scopes: [line] })).id)).packs.produced).toBe(200);
    await expect(open({ scopes: [{ ...scope, fromAt: untilAt, untilAt: started }] })).rejects.toMatchObject({
      code: 'recall-time-not-usable',
    });
    await expect(open({ scopes: [{ ...line, fromAt: null }] })).rejects.toThrow(BadForm);
    await expect(open({ scopes: [{ ...scope, fromAt: started, untilAt: null }] })).rejects.toThrow(BadForm);
  });

  it('answers an empty scope clearly and changes nothing', async () => {
    await expect(open({ scopes: [] })).rejects.toMatchObject({ code: 'recall-scope-empty' });
    const line = { scopeKind: 'packing-shift' as const, scopeId: plant.lineIds[0], fromAt: house.clock.now() };
    await expect(open({ scopes: [line] })).rejects.toMatchObject({ code: 'recall-scope-empty' });
    expect(await countOf()).toBe(0);
  });

  it('is of all that is possible unless quality says why not, and never less for safety', async () => {
    const { run } = await aLotGone();
    const scopes = [{ scopeKind: 'lot' as const, scopeId: run.lotId }];
    const likely = { scopes, sureness: 'likely' as const };
    await expect(open(likely)).rejects.toMatchObject({ code: 'recall-safety-covers-possible' });
    await expect(open({ ...likely, hazard: 'quality' })).rejects.toMatchObject({ code: 'recall-likely-needs-reason' });
    const { id } = await open({ ...likely, hazard: 'quality', surenessReason: 'colour only' });
    expect(await findRecall(from, plant.siteId, id)).toMatchObject({
      sureness: 'likely',
      surenessReason: 'colour only',
    });
    expect(await findRecall(from, plant.siteId, (await open({ scopes })).id)).toMatchObject({ sureness: 'possible' });
  });

  it('knows nothing of another site', async () => {
    const { run } = await aLotGone();
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    plant = await aPlant(house, { siteCode: 'OTHER' });
    await expect(open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] })).rejects.toThrow(NotFound);
    await expect(mark(id, 'clock-stopped')).rejects.toThrow(NotFound);
  });

  it('opens once where it is sent twice', async () => {
    const { run } = await aLotGone();
    const scopes = [{ scopeKind: 'lot' as const, scopeId: run.lotId }];
    const [one, other] = await Promise.all([open({ scopes }, 'twice'), open({ scopes }, 'twice')]);
    expect(one).toEqual(other);
    expect(await countOf()).toBe(1);
  });
});

describe('the customers of a recall', () => {
  it('are recovered and closed out by what they answer, each share by itself', async () => {
    const { run, delivery } = await aLotGone();
    await gone(delivery);
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    await answer(id, { answer: 'nothing-yet' });
    expect(await figures(id)).toMatchObject({ respondedCount: 0, packRates: { recoveryPercent: 0 } });
    await answer(id, { answer: 'returned', packCount: 150 });
    await answer(id, { answer: 'destroyed-at-customer', packCount: 30 });
    const sold = await answer(id, { answer: 'confirmed-sold', packCount: 90 });
    const { packRates, milligramRates, respondedCount, packs } = await figures(id);
    expect(packRates).toEqual({
      ...{ recoveryPercent: 60, closedOutPercent: 90, openAtCustomers: 30, isContradiction: false },
    });
    expect(milligramRates).toMatchObject({ recoveryPercent: 60, closedOutPercent: 90 });
    expect(respondedCount).toBe(1);
    expect(packs.accountedPercent).toBe(100);
    const withdraw = () =>
      house
        .get(WithdrawRecallAnswer)
        .execute(asking(plant.actor), sold.id, { why: 'incorrect-data', reason: 'misheard' });
    await withdraw();
    expect((await figures(id)).packRates.closedOutPercent).toBe(60);
    await expect(withdraw()).rejects.toMatchObject({ code: 'already-corrected' });
  });

  it('may answer for more than they got: it is recorded, said, and needs words to be signed', async () => {
    const { run, delivery } = await aLotGone();
    await gone(delivery);
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    await answer(id, { answer: 'returned', packCount: 301 });
    expect((await figures(id)).packRates).toMatchObject({ isContradiction: true, openAtCustomers: -1 });
    await mark(id, 'clock-stopped');
    await expect(sign(id)).rejects.toMatchObject({ code: 'recall-needs-explanation' });
  });

  it('give an amount with what became of it, and none while they do not know', async () => {
    const { run } = await aLotGone();
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    await expect(answer(id, { answer: 'returned' })).rejects.toThrow(BadForm);
    await expect(answer(id, { answer: 'nothing-yet', packCount: 5 })).rejects.toThrow(BadForm);
    expect(await answersOf(from, id)).toEqual([]);
  });

  it('keep what came back: it has left, and is not in store a second time', async () => {
    const { run, delivery, pallets } = await aLotGone();
    await gone(delivery);
    const units = [{ pallet: pallets[0]?.sscc ?? '', creditedCount: 0 }];
    const back = { why: 'refused-by-customer' as const, placeId: plant.placeIds.store, units };
    await house.get(TakeBack).execute(asking(plant.actor), delivery, back);
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    const { packs, customers } = await figures(id);
    expect(packs).toMatchObject({ inStore: 200, dispatched: 300, unaccounted: 0 });
    expect(customers).toMatchObject([{ palletCount: 3, packCount: 300 }]);
  });
});

describe('the holds of a recall', () => {
  it('are proposed, placed once, and block its stock', async () => {
    const { run, bag } = await aLotGone();
    const scopes = [
      { scopeKind: 'lot' as const, scopeId: run.lotId },
      { scopeKind: 'bulk-bag' as const, scopeId: bag.id },
    ];
    const { id, number } = await open({ kind: 'recall', scopes });
    expect(number).toBe('RC-2026-000001');
    const proposed = await proposedHolds(from, await findRecall(from, plant.siteId, id));
    expect(proposed.map(({ scope, heldBy }) => [scope.kind, heldBy])).toEqual([
      ['lot', null],
      ['bulk-bag', null],
    ]);
    const hold = () => house.get(HoldRecall).execute(asking(plant.actor), id, {});
    const { holds } = await hold();
    expect(holds).toHaveLength(2);
    const [placed] = await openHolds(from, [{ kind: 'lot', id: run.lotId }]);
    expect(placed).toMatchObject({ hazard: 'safety', reason: `${number}: yearly exercise` });
    expect((await findRecall(from, plant.siteId, id)).stockBlockedAt).toBe(house.clock.now());
    await expect(hold()).rejects.toMatchObject({ code: 'recall-held-already' });
  });

  it('are none in an exercise', async () => {
    const { run } = await aLotGone();
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    const hold = house.get(HoldRecall).execute(asking(plant.actor), id, {});
    await expect(hold).rejects.toMatchObject({ code: 'exercise-places-no-hold' });
    expect(await openHolds(from, [{ kind: 'lot', id: run.lotId }])).toEqual([]);
  });
});

describe('the clock and the signing', () => {
  it('keep each moment once, freeze the figures, and take nothing after', async () => {
    const { run } = await aLotGone();
    const { id, number } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    house.clock.pass(2);
    await mark(id, 'customers-listed');
    house.clock.pass(1);
    await mark(id, 'clock-stopped');
    await expect(mark(id, 'clock-stopped')).rejects.toMatchObject({ code: 'recall-marked-already' });
    const signed = await Promise.allSettled([sign(id), sign(id)]);
    expect(signed.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    const row = await signingOf(from, id);
    const frozen = JSON.parse(row?.figures ?? '{}') as { packs: { produced: number; accountedPercent: string } };
    expect(frozen.packs).toMatchObject({ produced: 503, accountedPercent: '100.00' });
    await expect(answer(id, { answer: 'nothing-yet' })).rejects.toMatchObject({ code: 'recall-signed' });
    await expect(mark(id, 'stock-blocked')).rejects.toMatchObject({ code: 'recall-signed' });
    await expect(sign(id)).rejects.toMatchObject({ code: 'recall-signed', facts: { recall: number } });
  });
});

describe('the report of a recall', () => {
  it('is frozen at its signing, says the sums and the customers, and marks an exercise on every page', async () => {
    const { run, delivery, bag } = await aLotGone();
    await gone(delivery);
    const { id, number } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    const live = await linksCsv(from, await findRecall(from, plant.siteId, id));
    house.clock.pass(4);
    await mark(id, 'clock-stopped');
    const { paperId } = await sign(id);
    const file = await house.get(Papers).fileOf(paperId);
    const text = textOf(file.bytes);
    expect(text).toContain(number);
    expect(text).toContain('503 packs');
    expect(text).toContain('It took 4 min');
    expect(text).toContain('Accounted for 100.00 % of produced');
    expect(text).toContain('Recovered (returned or destroyed at the customer) 0.00 % of dispatched');
    expect(text).toContain(bag.number);
    expect(text.match(/EXERCISE – no goods are recalled/g)?.length).toBe(pageCount(file.bytes) + 1);
    expect((await house.get(Papers).fileOf(paperId)).sha256).toBe(file.sha256);
    await answerOfAnother(delivery);
    expect(await linksCsv(from, await findRecall(from, plant.siteId, id))).toBe(live);
  });

  it('draws the thread with the kilograms of its table, and a report of the first edition without it', async () => {
    const { run, bag } = await aLotGone();
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    await mark(id, 'clock-stopped');
    const { paperId } = await sign(id);
    const text = textOf((await house.get(Papers).fileOf(paperId)).bytes).replaceAll(/\s+/g, ' ');
    const { links } = figuresOfText((await signingOf(from, id))?.figures ?? '');
    const link = links.find(({ step, parent }) => step === 'bag-run' && parent === bag.number);
    const [least, likely, most] = [link?.leastGrams, link?.likelyGrams, link?.mostGrams].map((grams) =>
      gramPreciseText(grams ?? NaN).replaceAll(/\s+/g, ' '),
    );
    expect(text).toContain(`least ${least}, likely ${likely}, most ${most} kg`);
    const [row] = await from.sql<{ facts: string }>`SELECT "facts" FROM "paper" WHERE "id" = ${paperId}`;
    const { ribbons, ...first } = JSON.parse(row?.facts ?? '{}') as RecallReportFacts;
    expect(ribbons).toHaveLength(1);
    const drawn = async (facts: RecallReportFacts, edition?: '1' | '2' | '3') =>
      textOf(await inPaperLanguage(() => recallReport(facts, house.clock.now(), edition))).replaceAll(/\s+/g, ' ');
    expect(await drawn(first)).not.toContain('Through the hopper');
    // What an edition said of one pack, and did not say of pictures, stays.
    const packs = { ...first.packs, produced: 1, dispatched: 1 };
    const facts: RecallReportFacts = { ...first, packs, ribbons: ribbons ?? [], ribbonsLeftOut: 2 };
    expect(await drawn(facts, '2')).toContain('1 packs with');
    const today = await drawn(facts);
    expect(today).toMatch(/: 1 pack with .* 1 pack went to customers/);
    expect(today).toContain('2 more have no picture: their bags stand in the table of bags');
    expect(text).not.toContain('no picture');
  });

  it('lists the samples, checks and holds among the records of its file', async () => {
    const planId = await aCheckPlan(house, plant);
    const { run, bag } = await aLotGone();
    const check = await passed(house, plant, planId);
    const { number: sample } = await house
      .get(TakeSample)
      .execute(asking(plant.actor), { standsFor: 'bag', bag: bag.number, takenAt: null });
    const other = await aBag(house, plant);
    const elsewhere = await house
      .get(TakeSample)
      .execute(asking(plant.actor), { standsFor: 'bag', bag: other.number, takenAt: null });
    const hold = async (form: Omit<PlaceHoldForm, 'reason'>) =>
      (await house.get(PlaceHold).execute(asking(plant.actor), { ...form, reason: 'a smell' })).number;
    const line = { kind: 'packing-shift', id: plant.lineIds[0] } as const;
    const own = [
      await hold({ kind: 'lot', id: run.lotId }),
      await hold({ kind: 'bulk-bag', id: bag.id }),
      await hold({ ...line, fromAt: house.clock.now() }),
    ];
    const others = [
      await hold({ kind: 'bulk-bag', id: other.id }),
      await hold({ ...line, fromAt: '2026-02-01T10:00:00.000Z' }),
    ];
    await house.get(LiftHold).execute(asking(plant.actor), { hold: own[0] ?? '', reason: 'it was the glove' });
    house.clock.pass(120);
    const later = await passed(house, plant, planId);
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    await mark(id, 'clock-stopped');
    const { paperId } = await sign(id);
    const [row] = await from.sql<{ facts: string }>`SELECT "facts" FROM "paper" WHERE "id" = ${paperId}`;
    const { records } = JSON.parse(row?.facts ?? '{}') as RecallReportFacts;
    const of = (kind: string) => records.filter((record) => record.kind === kind);
    expect(of('sample').map(({ number }) => number)).toContain(sample);
    expect(of('sample').map(({ number }) => number)).not.toContain(elsewhere.number);
    expect(of('line-check').map(({ link }) => link)).toEqual([`/checks/${check.id}`]);
    expect(of('line-check')[0]?.number).toMatch(/^1 Weigher, /);
    expect(of('line-check').map(({ link }) => link)).not.toContain(`/checks/${later.id}`);
    expect(
      of('hold')
        .map(({ number }) => number)
        .sort(),
    ).toEqual(own.sort());
    expect(of('removal').map(({ number }) => number.replace(/ .*,/, ' …,'))).toEqual(['1 …, 4.0 kg', '1 …, 2.0 kg']);
    expect(of('removal').map(({ link }) => link)).toEqual([`/runs/${run.runId}`, `/runs/${run.runId}`]);
    expect(others).toHaveLength(2);
    expect(new Set(records.map(({ kind, number }) => `${kind} ${number}`)).size).toBe(records.length);
  });

  it('has one line a link from bag to customer, whose packs weigh the same at each step', async () => {
    const { run, delivery, bag, pallets } = await aLotGone();
    await gone(delivery);
    const { id } = await open({ scopes: [{ scopeKind: 'lot', scopeId: run.lotId }] });
    const csv = await linksCsv(from, await findRecall(from, plant.siteId, id));
    const [head, ...rows] = csv
      .trimEnd()
      .split('\r\n')
      .map((line) => line.split(','));
    expect(head).toEqual(['parent', 'child', 'least_kg', 'likely_kg', 'most_kg', 'word', 'time_utc', 'record']);
    const kilogramsOf = (parent: string, child: string): number =>
      Number(rows.find((row) => row[0] === parent && row[1] === child)?.[3]);
    expect(rows.some((row) => row[0] === bag.number && row[1] === run.number)).toBe(true);
    const onPallets = pallets.map(({ sscc }) => kilogramsOf(run.code, sscc));
    const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);
    expect(sum(onPallets)).toBeCloseTo(kilogramsOf(run.number, run.code), 6);
    const note = rows.find((row) => row[0] === pallets[0]?.sscc)?.[1] ?? '';
    const toCustomer = rows.find((row) => row[0] === note);
    expect(Number(toCustomer?.[3])).toBeCloseTo(sum(onPallets.slice(0, 3)), 6);
  });

  it('lets no text of a record be taken for a formula, and doubles quotes', () => {
    const amounts = { leastGrams: 0, likelyGrams: 1_500, mostGrams: 2_000, word: 'possible' as const };
    const csv = csvOfLinks([{ step: 'run-lot', parent: '=1+1', child: 'a "b", c', at: null, record: '1', ...amounts }]);
    expect(csv.split('\r\n')[1]).toBe('\'=1+1,"a ""b"", c",0,1.5,2,possible,,1');
  });
});

/** Something that moves recalled packs after the signing. */
async function answerOfAnother(delivery: string): Promise<void> {
  const units = [{ lot: 'L6071A1', packCount: 5, creditedCount: 0 }];
  const back = { why: 'refused-by-customer' as const, placeId: plant.placeIds.store, units };
  await house.get(TakeBack).execute(asking(plant.actor), delivery, back);
}
