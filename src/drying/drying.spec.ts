import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, aDryerRun, readerOf } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { symbolsOf, textOf } from '../../test/support/read-pdf.js';
import { makeSscc } from '../core/identifiers/sscc.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { Papers } from '../platform/printing/papers.js';
import { weighingsOf } from './bag-weighings.js';
import type { FillBagForm } from './bag-fill.form.js';
import { bagOf, bagPage, bagsFilledBetween, bagsOf, findBag } from './bulk-bags.js';
import { changeBagState } from './change-bag-state.js';
import { CloseBag } from './close-bag.js';
import { CorrectBag } from './correct-bag.js';
import { CorrectWeighing } from './correct-weighing.js';
import { dryerRunPage } from './dryer-runs.js';
import { EndDryerRun } from './end-dryer-run.js';
import { FillBag } from './fill-bag.js';
import { receiptOf, receiptPage } from './goods-receipts.js';
import { MoveBag } from './move-bag.js';
import { PrintBagLabel } from './print-bag-label.js';
import { rebuildBagStates } from './rebuild-bag-states.js';
import { ReceiveBags } from './receive-bags.js';
import type { ReceiveBagsForm } from './receipt.form.js';
import { RecordOpeningStock } from './record-opening-stock.js';
import { ReweighBag } from './reweigh-bag.js';
import { StartBag } from './start-bag.js';
import { StartDryerRun } from './start-dryer-run.js';

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

/** Who won and who lost a race of two. */
async function raceOf(one: Promise<unknown>, other: Promise<unknown>): Promise<{ won: number; lost: unknown[] }> {
  const settled = await Promise.allSettled([one, other]);
  const lost = settled.flatMap((end) => (end.status === 'rejected' ? [end.reason as unknown] : []));
  return { won: settled.length - lost.length, lost };
}

async function openCauses(subjectId: string): Promise<string[]> {
  const rows = await reader.sql<{ cause: string }>`
    SELECT p."cause" FROM "open_point" p WHERE p."subject_id" = ${subjectId}
      AND NOT EXISTS (SELECT 1 FROM "open_point_end" e WHERE e."point_id" = p."id") ORDER BY p."cause"`;
  return rows.map((row) => row.cause);
}

const weights = () => ({ grossGrams: 1_001_800, tareGrams: 1_800, isPresetTare: true, scaleId: plant.scaleId });

async function aHangingBag() {
  const run = await aDryerRun(house, plant);
  return house.get(StartBag).execute(asking(plant.actor), { run: run.number, safeLoadGrams: 1_250_000 });
}

describe('the opening stock', () => {
  const form = () => ({
    gradeId: plant.gradeId,
    scaleId: plant.scaleId,
    bags: [{ ...weights(), safeLoadGrams: 1_250_000 }],
  });

  it('is taken in with our numbers, and can be refused only for a reason', async () => {
    const stock = house.get(RecordOpeningStock);
    const { bags } = await stock.execute(asking(plant.actor), form());
    const bag = await bagOf(reader, bags[0]!.id);
    expect(bag).toMatchObject({ origin: 'opening-stock', status: 'full', netGrams: 1_000_000, dryerRunId: null });
    expect(bag.filledAt).toBe(house.clock.now());
    const otherGrade = { ...form(), gradeId: plant.siteId };
    await expect(stock.execute(asking(plant.actor), otherGrade)).rejects.toEqual(unknown('grade'));
  });

  it('is refused once something was dried or received', async () => {
    await aDryerRun(house, plant);
    const late = house.get(RecordOpeningStock).execute(asking(plant.actor), form());
    await expect(late).rejects.toEqual(refused('opening-stock-too-late'));
  });
});

describe('a dryer run', () => {
  it('is the only one of its dryer, and gets a number of the year', async () => {
    const open = await aDryerRun(house, plant);
    expect(open.number).toMatch(/^DR-2026-\d{6}$/);
    const form = { dryerId: plant.dryerId, gradeId: plant.gradeId };
    await expect(house.get(StartDryerRun).execute(asking(plant.actor), form)).rejects.toEqual(
      refused('dryer-has-open-run'),
    );
  });

  it('of two starts at once leaves one', async () => {
    const other = await aPlant(house, { siteCode: 'RACE' });
    const start = house.get(StartDryerRun);
    const form = { dryerId: other.dryerId, gradeId: other.gradeId };
    const race = await raceOf(start.execute(asking(other.actor), form), start.execute(asking(other.actor), form));
    expect(race).toEqual({ won: 1, lost: [refused('dryer-has-open-run')] });
    expect(await dryerRunPage(reader, other.siteId, { before: null, limit: 10 })).toHaveLength(1);
  });

  it('ends once, not before it began, nor before its bags', async () => {
    const own = await openHouse();
    const other = await aPlant(own);
    const run = await aDryerRun(own, other);
    await aBag(own, other);
    const end = own.get(EndDryerRun);
    const before = { run: run.number, endedAt: '2026-03-12T05:00:00.000Z', reason: 'test' };
    await expect(end.execute(asking(other.actor), before)).rejects.toEqual(refused('time-before-run'));
    const early = { run: run.id, endedAt: '2026-03-12T05:30:00.000Z' };
    await expect(end.execute(asking(other.actor), early)).rejects.toEqual(refused('bags-begun-later'));
    own.clock.pass(1);
    const form = { run: run.number };
    const race = await raceOf(end.execute(asking(other.actor), form), end.execute(asking(other.actor), form));
    expect(race).toEqual({ won: 1, lost: [refused('dryer-run-ended')] });
    await expect(end.execute(asking(other.actor), form)).rejects.toEqual(refused('dryer-run-ended'));
    const next = { dryerId: other.dryerId, gradeId: other.gradeId, startedAt: '2026-03-12T05:40:00.000Z' };
    await expect(own.get(StartDryerRun).execute(asking(other.actor), next)).rejects.toEqual(
      refused('time-before-last-run-end'),
    );
    await expect(end.execute(asking(other.actor), { run: 'DR-2026-999999' })).rejects.toEqual(unknown('dryer-run'));
    await own.close();
  });

  it('takes no bag that was begun outside of it', async () => {
    const other = await aPlant(house, { siteCode: 'OUT' });
    const run = await aDryerRun(house, other);
    const fill = house.get(FillBag);
    const form: FillBagForm = { run: run.number, safeLoadGrams: 1_250_000, ...weights(), scaleId: other.scaleId };
    const before = { ...form, startedAt: '2026-03-12T04:00:00.000Z' };
    await expect(fill.execute(asking(other.actor), before)).rejects.toEqual(refused('time-before-run'));
    house.clock.pass(1);
    await house.get(EndDryerRun).execute(asking(other.actor), { run: run.number });
    await expect(fill.execute(asking(other.actor), form)).rejects.toEqual(refused('dryer-run-ended'));
    const start = { run: run.number, safeLoadGrams: 1_250_000 };
    await expect(house.get(StartBag).execute(asking(other.actor), start)).rejects.toEqual(refused('dryer-run-ended'));
  });
});

describe('a bag at the dryer', () => {
  it('gets a short number with its check character and an SSCC when it hangs under the filler', async () => {
    const started = await aHangingBag();
    expect(started.number).toMatch(/^B\d{6}[\dX]$/);
    expect(started.sscc).toMatch(/^09520123\d{10}$/);
    const bag = await bagOf(reader, started.id);
    expect(bag).toMatchObject({
      status: 'filling',
      netGrams: null,
      filledAt: null,
      lowerGrams: 0,
      upperGrams: 1_250_000,
    });
    await expect(house.get(PrintBagLabel).execute(asking(plant.actor), { bag: started.number })).rejects.toEqual(
      refused('bag-not-closed'),
    );
  });

  it('is full once it is weighed, with hard limits by the error of its scale', async () => {
    const started = await aHangingBag();
    house.clock.pass(12);
    const form = { bag: started.number, ...weights(), placeId: plant.placeIds.store };
    const closed = await house.get(CloseBag).execute(asking(plant.actor), form);
    expect(closed).toEqual({ ...started, netGrams: 1_000_000, isDoubtful: false });
    const bag = await bagOf(reader, started.id);
    expect(bag).toMatchObject({ status: 'full', remainingGrams: 1_000_000, placeId: plant.placeIds.store });
    expect(bag).toMatchObject({ filledAt: house.clock.now(), dryerId: plant.dryerId, isPresetTare: true });
    // One reading of 1 kg permissible error with a preset tare; two where the tare was weighed.
    expect([bag.lowerGrams, bag.upperGrams]).toEqual([999_000, 1_001_000]);
    const weighed = await bagOf(reader, (await aBag(house, plant, { isPresetTare: false })).id);
    expect([weighed.lowerGrams, weighed.upperGrams]).toEqual([998_000, 1_002_000]);
  });

  it.each([
    ['gross below tare', { grossGrams: 1_700 }, 'gross-below-tare'],
    ['nothing in it', { grossGrams: 1_800 }, 'net-not-above-zero'],
    ['more than its safe load with its own weight', { grossGrams: 1_250_001 }, 'over-safe-load'],
    ['an end before its start', { filledAt: '2026-03-12T05:30:00.000Z' }, 'time-before-fill-start'],
  ])('is not closed with %s', async (_, wrong, code) => {
    const started = await aHangingBag();
    const form = { bag: started.number, ...weights(), reason: 'test', ...wrong };
    await expect(house.get(CloseBag).execute(asking(plant.actor), form)).rejects.toEqual(refused(code));
    expect((await bagOf(reader, started.id)).status).toBe('filling');
  });

  it('of 940 or 1 100 kg is taken as it is, exactly up to its safe load', async () => {
    expect((await aBag(house, plant, { netGrams: 940_000 })).netGrams).toBe(940_000);
    expect((await aBag(house, plant, { netGrams: 1_248_200 })).netGrams).toBe(1_248_200);
  });

  it('over its safe load that has happened is recorded, and someone must look', async () => {
    const started = await aHangingBag();
    const form = { bag: started.number, ...weights(), grossGrams: 1_260_000, happened: true };
    await house.get(CloseBag).execute(asking(plant.actor), form);
    expect(await openCauses(started.id)).toEqual(['filled-over-safe-load']);
  });

  it('is closed once, by whoever comes first', async () => {
    const started = await aHangingBag();
    const close = house.get(CloseBag);
    const form = { bag: started.number, ...weights() };
    const race = await raceOf(close.execute(asking(plant.actor), form), close.execute(asking(plant.actor), form));
    expect(race).toEqual({ won: 1, lost: [refused('bag-already-closed')] });
    await expect(close.execute(asking(plant.actor), form)).rejects.toEqual(refused('bag-already-closed'));
    expect(await weighingsOf(reader, started.id)).toHaveLength(1);
  });

  it('that a device sends twice is filled once', async () => {
    const run = await aDryerRun(house, plant);
    const form: FillBagForm = { run: run.number, safeLoadGrams: 1_250_000, ...weights() };
    const first = await house.get(FillBag).execute(asking(plant.actor, 'scale-message-1'), form);
    const second = await house.get(FillBag).execute(asking(plant.actor, 'scale-message-1'), form);
    expect(second).toEqual(first);
    const far = { ...form, startedAt: '2026-03-12T23:00:00.000Z' };
    await expect(house.get(FillBag).execute(asking(plant.actor), far)).rejects.toEqual(
      refused('time-before-fill-start'),
    );
    await expect(house.get(FillBag).execute(asking(plant.actor), { ...form, scaleId: run.id })).rejects.toEqual(
      unknown('scale'),
    );
  });

  it('weighed on a scale that is overdue is recorded, marked doubtful, and quality must look until it is weighed again', async () => {
    const { id, number, isDoubtful } = await aBag(house, plant, { scaleId: plant.staleScaleId });
    expect(isDoubtful).toBe(true);
    expect((await bagOf(reader, id)).isDoubtful).toBe(true);
    expect(await openCauses(id)).toEqual(['weighed-on-doubtful-scale']);
    house.clock.pass(5);
    await house.get(ReweighBag).execute(asking(plant.actor), { bag: number, ...weights(), grossGrams: 1_002_300 });
    expect(await bagOf(reader, id)).toMatchObject({
      isDoubtful: false,
      netGrams: 1_000_500,
      remainingGrams: 1_000_500,
    });
    expect(await openCauses(id)).toEqual([]);
  });

  it('is found by its number however typed, by its SSCC and by its id', async () => {
    const { id, number, sscc } = await aBag(house, plant);
    const typed = [
      number.toLowerCase(),
      `${number.slice(0, 4)}-${number.slice(4)}`,
      number.slice(1),
      sscc,
      `(00)${sscc}`,
      id,
    ];
    for (const text of typed) expect((await findBag(reader, plant.siteId, text)).id).toBe(id);
    for (const text of ['B0000000', 'nonsense', '095201230000000012']) {
      await expect(findBag(reader, plant.siteId, text)).rejects.toEqual(unknown('bulk-bag'));
    }
    const other = await aPlant(house, { siteCode: 'ELSE' });
    await expect(findBag(reader, other.siteId, id)).rejects.toEqual(unknown('bulk-bag'));
  });

  it('stands in lists by key, and among those filled in an interval that is open at its end', async () => {
    house.clock.pass(60);
    const at = house.clock.now();
    const bag = await aBag(house, plant);
    const [first, ...rest] = await bagPage(reader, plant.siteId, { before: null, limit: 3 });
    expect(first?.id).toBe(bag.id);
    const next = await bagPage(reader, plant.siteId, { before: rest.at(-1)!.id, limit: 3 });
    expect(next.every((row) => row.id < rest.at(-1)!.id)).toBe(true);
    const ids = async (fromAt: string, untilAt: string) =>
      (await bagsFilledBetween(reader, plant.dryerId, fromAt, untilAt)).map((row) => row.id);
    const later = new Date(Date.parse(at) + 1).toISOString();
    expect(await ids(at, later)).toEqual([bag.id]);
    expect(await ids('2026-03-01T00:00:00.000Z', at)).not.toContain(bag.id);
    expect((await bagsOf(reader, [bag.id, plant.siteId, bag.id])).map((row) => row.id)).toEqual([bag.id]);
  });
});

describe('a bag that is weighed again', () => {
  it('is full, and not earlier than it was filled', async () => {
    const { id, number } = await aBag(house, plant);
    const reweigh = house.get(ReweighBag);
    const early = { bag: number, ...weights(), weighedAt: '2026-03-12T05:30:00.000Z', reason: 'test' };
    await expect(reweigh.execute(asking(plant.actor), early)).rejects.toEqual(refused('time-before-fill-end'));
    await leaveAs(id, 'opened', 400_000);
    await expect(reweigh.execute(asking(plant.actor), { bag: number, ...weights() })).rejects.toEqual(
      refused('bag-not-full'),
    );
  });
});

/** What a later step would do. */
async function leaveAs(
  bagId: string,
  status: 'opened' | 'empty' | 'dispatched',
  remainingGrams: number,
): Promise<void> {
  await house.get(UnitOfWork).run(async (tx) => {
    const to = { status, remainingGrams, placeId: null, at: house.clock.now() };
    expect(await changeBagState(tx, bagId, { status: ['full', 'opened'] }, to)).toBe(true);
    expect(await changeBagState(tx, bagId, { status: ['full'] }, to)).toBe(false);
    expect(await changeBagState(tx, bagId, { status: [status], remainingGrams: remainingGrams + 1 }, to)).toBe(false);
  });
}

describe('a wrong weighing', () => {
  const correct = (weighingId: string, form: Omit<Parameters<CorrectWeighing['execute']>[2], 'reason'>) =>
    house.get(CorrectWeighing).execute(asking(plant.actor), weighingId, { reason: 'wrong tare', ...form });
  const weighingOf = async (bagId: string) => (await weighingsOf(reader, bagId)).filter((row) => !row.isVoid)[0]!.id;

  it('becomes void, and the right one takes its place in net and rest', async () => {
    const { id } = await aBag(house, plant);
    const old = await weighingOf(id);
    const corrected = await correct(old, { why: 'incorrect-data', tareGrams: 2_300 });
    expect(corrected).toMatchObject({ netGrams: 999_500, status: 'full', remainingGrams: 999_500 });
    expect((await weighingsOf(reader, id)).map((row) => row.isVoid).sort()).toEqual([false, true]);
    await expect(correct(old, { why: 'incorrect-data', tareGrams: 1 })).rejects.toEqual(refused('already-corrected'));
    const again = corrected.weighingId!;
    await expect(correct(again, { why: 'incorrect-data' })).rejects.toEqual(refused('nothing-corrected'));
    const early = { why: 'incorrect-data', weighedAt: '2026-03-12T05:00:00.000Z' } as const;
    await expect(correct(again, early)).rejects.toEqual(refused('time-before-fill-start'));
    const race = await raceOf(
      correct(again, { why: 'incorrect-data', tareGrams: 2_400 }),
      correct(again, { why: 'incorrect-data', tareGrams: 2_500 }),
    );
    expect(race).toEqual({ won: 1, lost: [refused('already-corrected')] });
    await expect(correct(plant.siteId, { why: 'incorrect-data' })).rejects.toEqual(unknown('bag-weighing'));
  });

  it('that never took place leaves the bag under the filler', async () => {
    const { id } = await aBag(house, plant);
    const answer = await correct(await weighingOf(id), { why: 'did-not-occur' });
    expect(answer).toMatchObject({ weighingId: null, netGrams: null, status: 'filling', remainingGrams: 0 });
  });

  it('can’t be taken away from a bag that went on, and its correction is looked at', async () => {
    const { id } = await aBag(house, plant);
    await leaveAs(id, 'empty', 0);
    const weighing = await weighingOf(id);
    await expect(correct(weighing, { why: 'did-not-occur' })).rejects.toEqual(refused('bag-needs-its-weight'));
    const answer = await correct(weighing, { why: 'incorrect-data', grossGrams: 1_000_800 });
    expect(answer).toMatchObject({ netGrams: 999_000, status: 'empty', remainingGrams: 0 });
    expect(await openCauses(id)).toEqual(['weight-corrected-after-tip']);
  });

  it('of a bag that has left is recorded, and the clerk must look', async () => {
    const { id } = await aBag(house, plant);
    await leaveAs(id, 'dispatched', 1_000_000);
    const answer = await correct(await weighingOf(id), { why: 'incorrect-data', grossGrams: 1_001_300 });
    expect(answer).toMatchObject({ netGrams: 999_500, status: 'dispatched', remainingGrams: 999_500 });
    expect(await openCauses(id)).toEqual(['weight-corrected-after-loading']);
  });
});

describe('a receipt', () => {
  const form = (wishes: Partial<ReceiveBagsForm> = {}): ReceiveBagsForm => ({
    gradeId: plant.gradeId,
    supplierCode: 'SUP-07',
    supplierLot: 'A-4471',
    documentNumber: 'DN 88213',
    scaleId: plant.scaleId,
    bags: [{ ...weights(), safeLoadGrams: 1_250_000 }],
    ...wishes,
  });
  const receive = (wishes: Partial<ReceiveBagsForm> = {}) =>
    house.get(ReceiveBags).execute(asking(plant.actor), form(wishes));
  const foreign = makeSscc({ companyPrefix: '9521234', extensionDigit: 3, serial: 1 });
  const bringing = (sscc: string) => [{ ...weights(), safeLoadGrams: 1_250_000, sscc }];

  it('names supplier, lot and document, and weighs each bag', async () => {
    const received = await receive({ bags: [...bringing(foreign), ...form().bags] });
    const [theirs, ours] = await bagsOf(
      reader,
      received.bags.map(({ id }) => id),
    );
    expect(theirs).toMatchObject({ origin: 'receipt', receiptId: received.id, sscc: foreign, dryerId: null });
    expect(ours?.sscc).toMatch(/^09520123/);
    expect((await receiptOf(reader, plant.siteId, received.id)).number).toMatch(/^GR-2026-/);
    expect((await receiptPage(reader, plant.siteId, { before: null, limit: 5 }))[0]?.supplierLot).toBe('A-4471');
    await expect(receiptOf(reader, plant.siteId, plant.siteId)).rejects.toEqual(unknown('goods-receipt'));
  });

  it('is recorded once, and only with numbers that can be', async () => {
    await expect(receive()).rejects.toEqual(refused('receipt-already-recorded'));
    const second = { documentNumber: 'DN 88214' };
    const wrong = foreign.slice(0, 17) + String((Number(foreign[17]) + 1) % 10);
    await expect(receive({ ...second, bags: bringing(wrong) })).rejects.toEqual(refused('sscc-not-valid'));
    await expect(receive({ ...second, bags: bringing(foreign) })).rejects.toEqual(refused('sscc-taken'));
    const ours = makeSscc({ companyPrefix: '9520123', extensionDigit: 0, serial: 900_000 });
    await expect(receive({ ...second, bags: bringing(ours) })).rejects.toEqual(refused('sscc-is-ours'));
    const race = await raceOf(receive(second), receive(second));
    expect(race).toEqual({ won: 1, lost: [refused('receipt-already-recorded')] });
  });
});

describe('a place in the store', () => {
  it('is where a full or opened bag can be put', async () => {
    const { id, number } = await aBag(house, plant);
    const move = (wishes: object = {}) =>
      house.get(MoveBag).execute(asking(plant.actor), { bag: number, placeId: plant.placeIds.dock, ...wishes });
    const early = { movedAt: '2026-03-12T05:30:00.000Z', reason: 'test' };
    await expect(move(early)).rejects.toEqual(refused('time-before-fill-end'));
    expect(await move()).toEqual({ id, number, placeId: plant.placeIds.dock });
    await expect(move()).rejects.toEqual(refused('bag-already-there'));
    await expect(move({ placeId: id })).rejects.toEqual(unknown('store-place'));
    const store = { placeId: plant.placeIds.store };
    await leaveAs(id, 'empty', 0);
    await expect(move(store)).rejects.toEqual(refused('bag-not-in-store'));
  });
});

describe('a bag that does not exist', () => {
  it('is taken out of the lists, its numbers never used again, unless sugar of it went on', async () => {
    const correct = (bag: string) =>
      house.get(CorrectBag).execute(asking(plant.actor), { bag, reason: 'started twice' });
    const started = await aHangingBag();
    await correct(started.number);
    await expect(bagOf(reader, started.id)).rejects.toEqual(unknown('bulk-bag'));
    const next = await aBag(house, plant);
    expect(next.number).not.toBe(started.number);
    await leaveAs(next.id, 'opened', 1);
    await expect(correct(next.number)).rejects.toEqual(refused('bag-in-use'));
  });
});

describe('the label of a bag', () => {
  it('shows number, weight and origin, and its symbols read back as its SSCC', async () => {
    const bag = await aBag(house, plant, { netGrams: 996_500, linerLot: 'LN-5521' });
    const print = (reason: string | null) =>
      house.get(PrintBagLabel).execute(asking(plant.actor), { bag: bag.number, reason });
    const { paperId, copyNumber } = await print(null);
    expect(copyNumber).toBe(1);
    const { bytes } = await house.get(Papers).fileOf(paperId);
    const text = textOf(bytes);
    for (const part of ['996.5 kg', 'PT (preset tare)', 'LN-5521', 'DR-2026-', 'promises no state', 'nobody under']) {
      expect(text).toContain(part);
    }
    expect(text).not.toContain('COPY');
    const symbols = (await symbolsOf(bytes)).map((symbol) => symbol.prefix + symbol.text).sort();
    expect(symbols).toEqual([`]C100${bag.sscc}`, `]d200${bag.sscc}`]);
    await expect(print(null)).rejects.toEqual(refused('label-printed-already'));
    const second = await print('torn');
    expect(textOf((await house.get(Papers).fileOf(second.paperId)).bytes)).toContain('COPY 2');
  });
});

describe('the states of all bags', () => {
  it('can be rebuilt from the facts', async () => {
    const kept = await reader.sql<{ bagId: string; status: string; remainingGrams: number; placeId: string | null }>`
      SELECT s."bag_id" AS "bagId", s."status", s."remaining_grams" AS "remainingGrams", s."place_id" AS "placeId"
      FROM "bag_state" s JOIN "bulk_bag" b ON b."id" = s."bag_id" WHERE b."site_id" = ${plant.siteId}`;
    const ofLaterSteps = kept
      .filter(({ status }) => ['opened', 'empty', 'dispatched'].includes(status))
      .map((state) => ({ ...state, status: state.status as 'opened', at: house.clock.now() }));
    expect(ofLaterSteps.length).toBeGreaterThan(3);
    const rebuilt = await rebuildBagStates(reader, plant.siteId, ofLaterSteps);
    expect(rebuilt.size).toBe(kept.length);
    for (const { bagId, ...state } of kept) expect(rebuilt.get(bagId)).toEqual(state);
  });
});
