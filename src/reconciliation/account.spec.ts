import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { openPointsOf } from '../open-points/open-points.js';
import { journalHeadOf, journalPage } from '../journal/journal-entries.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aPackScale } from '../../test/support/a-run.js';
import { aStartedRun, aTippedBag } from '../../test/support/a-tip.js';
import { WeighHandSample } from '../fill-weight/weigh-hand-sample.js';
import { CorrectTip } from '../hopper/correct-tip.js';
import { EndTip } from '../hopper/end-tip.js';
import { SeeLevel } from '../hopper/see-level.js';
import { CountPacks } from '../packing/count-packs.js';
import { RemoveSugar } from '../packing/remove-sugar.js';
import {
  aShiftOfTwoLines,
  bagNets as nets,
  earlyShift as shift,
  onThatDay as at,
  type ShiftOfTwoLines,
  type ShiftWishes,
} from '../../test/support/an-account.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { accountPage, accountWithCorrections, findAccount } from './accounts.js';
import type { AccountLine, AccountView } from './account-view.js';
import { hashOfAccount } from './account-text.js';
import { CorrectAccount } from './correct-account.js';
import { draftAccount } from './draft-account.js';
import { SignAccount } from './sign-account.js';

let house: TestHouse;

beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const aShift = (wishes: ShiftWishes = {}): Promise<ShiftOfTwoLines> => aShiftOfTwoLines(house, wishes);
const reader = (): ReadFrom => house.app.get<ReadFrom>(READER, { strict: false });
const draftOf = ({ plant }: ShiftOfTwoLines): Promise<AccountView> =>
  draftAccount(reader(), plant.siteId, { hopperId: plant.hopperId, ...shift });
const sign = (plant: Plant, form: object = {}, key?: string) =>
  house.get(SignAccount).execute(asking(plant.actor, key), { hopper: plant.hopperId, ...shift, ...form });
const only = (account: AccountView, kind: AccountLine['kind']) => account.lines.filter((line) => line.kind === kind);
const points = (plant: Plant) => openPointsOf(reader(), plant.siteId, { state: 'open', limit: 50 });
const refusal = (code: string): unknown => expect.objectContaining({ code });

describe('the account of a shift', () => {
  it('adds up to the gram by hand', async () => {
    const account = await draftOf(await aShift());
    const grams = account.lines.map(({ side, kind, grams: weight }) => [side, kind, weight]);
    expect(grams).toEqual([
      ['in', 'opening', 200_000],
      ...nets.map((net) => ['in', 'bag-tipped', net]),
      // 1500 packs of 2001.0 g by the hand sample, 800 of the nominal 2000 g.
      ['out', 'accepted-packs', 3_001_500],
      ['out', 'accepted-packs', 1_600_000],
      ['out', 'samples', 8_004],
      ['out', 'sweepings', 12_000],
      ['out', 'rejects', 30_200],
      ['out', 'weighed-back', 150_000],
      ['out', 'closing', 397_000],
    ]);
    expect(account).toMatchObject({
      drawnFromAt: at('05:02'),
      drawnUntilAt: at('12:58'),
      inGrams: 5_200_000,
      outGrams: 5_198_704,
      differenceGrams: 1_296,
      // 1296 of 5 200 000 − 397 000.
      differencePercent: '0.0270',
      // √(800²·15²/3 + 8·500²/6 + 2²·1000²/3 + 1504²·1²/3 + (1500² + 4²)·(2/3) + 2·1000²/3), all in grams.
      standardUncertaintyGrams: 7252,
      verdict: 'closes',
      hasAssumed: true,
      suspects: [],
    });
  });

  it('names the bag, the counts, the loose packs and what was assumed', async () => {
    const made = await aShift();
    const account = await draftOf(made);
    expect(only(account, 'bag-tipped').map(({ code }) => code)).toEqual(made.tips.map(({ number }) => number));
    const [measured, assumed] = only(account, 'accepted-packs');
    const packs = { fromCount: 10, toCount: 1510, meanMilligrams: 2_001_000, loosePackCount: 46, doubtPackCount: 0 };
    expect(measured).toMatchObject({ basis: 'measured', packs });
    expect(assumed).toMatchObject({ basis: 'assumed', packs: { fromCount: 0, toCount: 800, loosePackCount: null } });
  });

  it('says how many packs were packed with which lot of film', async () => {
    const made = await aShift();
    await made.records.film(made.runIds[0], 'F-1', 0);
    await made.records.film(made.runIds[0], 'F-2', 1000);
    const { packaging } = await draftOf(made);
    // From count 10 to 1510.
    expect(packaging.map(({ code, packCount }) => [code, packCount])).toEqual([
      ['F-1', 990],
      ['F-2', 510],
    ]);
  });

  it('does not close with a skipped tip, and suspects a bag that nobody recorded', async () => {
    const account = await draftOf(await aShift({ skippedTip: true }));
    expect(account).toMatchObject({ verdict: 'does-not-close', differenceGrams: 1_296 - 1_002_000 });
    // The mean of the other four bags is 999.5 kg.
    expect(account.suspects[0]).toMatchObject({
      mistake: 'bag-not-recorded',
      recordId: null,
      grams: 999_500,
      remainingGrams: -1_204,
    });
  });

  it('gives no difference and no verdict where nobody looked into the hopper at the end', async () => {
    const account = await draftOf(await aShift({ closing: null }));
    expect(account).toMatchObject({ verdict: 'not-observed', differenceGrams: null, closingNotSeen: 'nobody-looked' });
    expect(only(account, 'closing')).toEqual([]);
    expect(account.outGrams).toBeLessThan(account.inGrams);
  });

  it('takes exactly nothing left over for a red flag', async () => {
    const account = await draftOf(await aShift({ closing: [398_296, 398_296] }));
    expect(account).toMatchObject({ verdict: 'exactly-zero', differenceGrams: 0 });
  });

  it('takes a proven empty with its residue for the end, and carries it into the next account', async () => {
    const { plant, records } = await aShift({ closing: null });
    await records.provenEmpty(at('12:55'), 3_000, 4_000);
    const before = await draftAccount(reader(), plant.siteId, { hopperId: plant.hopperId, ...shift });
    await records.period(at('12:55'), 3_000);
    const tip = await records.tip({ openedAt: at('13:05') });
    const later = { fromAt: shift.untilAt, untilAt: '2026-03-12T13:50:00.000Z' };
    const after = await draftAccount(reader(), plant.siteId, { hopperId: plant.hopperId, ...later });
    expect(only(before, 'closing')).toMatchObject([{ grams: 3_000, at: at('12:55') }]);
    expect(only(after, 'opening')).toMatchObject([{ grams: 3_000, at: at('12:55') }]);
    expect(only(after, 'bag-tipped').map(({ recordId }) => recordId)).toEqual([tip.tipId]);
  });

  it('takes no look for the end while a bag hangs, and one further off where none does', async () => {
    const made = await aShift();
    await made.records.tip({ netGrams: 950_000, openedAt: at('12:50'), offAt: at('13:20') });
    const hanging = await draftOf(made);
    expect(hanging).toMatchObject({ verdict: 'not-observed', closingNotSeen: 'bag-hanging' });
    await made.records.level(at('12:45'), 500_000);
    expect(await draftOf(made)).toMatchObject({ closingNotSeen: null, drawnUntilAt: at('12:45') });
  });

  it('counts a bag by when its spout was opened, and what is weighed back of it with it', async () => {
    const { plant, records } = await aShift();
    const tip = await records.tip({ openedAt: at('13:30'), offAt: at('14:30'), restGrams: 400_000 });
    const first = { hopperId: plant.hopperId, fromAt: shift.untilAt, untilAt: at('14:00') };
    const second = { ...first, fromAt: at('14:00'), untilAt: at('15:00') };
    const of = async (span: typeof first): Promise<unknown[]> =>
      (await draftAccount(reader(), plant.siteId, span)).lines
        .filter(({ recordId }) => recordId === tip.tipId)
        .map(({ kind, grams }) => [kind, grams]);
    expect(await of(first)).toEqual([
      ['bag-tipped', 1_000_000],
      ['weighed-back', 400_000],
    ]);
    expect(await of(second)).toEqual([]);
  });

  it('doubts the packs between two readings where the counter was not read at the end', async () => {
    const made = await aShift({ closing: null });
    await made.records.level(at('13:00'), 396_000, 398_000);
    const [line] = only(await draftOf(made), 'accepted-packs');
    // 12:58 is nearer than 13:10; 90 packs lie between.
    expect(line?.packs).toMatchObject({ toCount: 1510, doubtPackCount: 90 });
    // √(1224.7² + (90 · 2001 g/√3)²)
    expect(line?.standardMilligrams).toBeCloseTo(1000 * Math.hypot(1224.745, (90 * 2001) / Math.sqrt(3)), -2);
  });

  it('takes the mean of several bags where the number could not be read, and says it is assumed', async () => {
    const made = await aShift();
    const bags = [await made.records.bag(940_000, at('04:00')), await made.records.bag(960_000, at('04:00'))];
    await made.records.tipOfOneOf(
      bags.map(({ bagId }) => bagId),
      at('11:30'),
      950_000,
    );
    const line = only(await draftOf(made), 'bag-tipped').find(({ code }) => code === null);
    // From 938 to 962 kg with both readings of the scale: 12 kg/√3.
    expect(line).toMatchObject({ grams: 950_000, basis: 'assumed', standardMilligrams: 6_928_203 });
  });

  it('counts rework in, and suspects a bin that nobody tipped', async () => {
    const made = await aShift();
    await made.records.reworkBin(60_000, at('05:30'), at('07:00'));
    const idle = await made.records.reworkBin(400_000, at('05:30'), null);
    await made.records.level(at('12:59'), 856_000, 858_000);
    const account = await draftOf(made);
    expect(only(account, 'rework')).toMatchObject([{ grams: 60_000, basis: 'measured' }]);
    expect(account).toMatchObject({ verdict: 'does-not-close' });
    expect(account.suspects[0]).toMatchObject({ mistake: 'rework-not-recorded', recordId: idle, grams: 400_000 });
  });

  it('does not know the hopper of another plant', async () => {
    const [one, other] = [await aShift(), await aShift()];
    const asked = draftAccount(reader(), one.plant.siteId, { hopperId: other.plant.hopperId, ...shift });
    await expect(asked).rejects.toMatchObject({ kind: 'hopper' });
  });
});

describe('signing an account', () => {
  it('freezes it with its number and the head of the journal', async () => {
    const made = await aShift();
    const before = await house.get(UnitOfWork).run((tx) => journalHeadOf(tx, made.plant.siteId));
    const answer = await sign(made.plant);
    expect(answer).toMatchObject({ number: 'AC-2026-000001', verdict: 'closes', differenceGrams: 1_296 });
    expect(answer.journalHead).toBe(before ?? '0'.repeat(64));
    const kept = await accountWithCorrections(reader(), made.plant.siteId, answer.id);
    expect(kept.account).toEqual(await draftOf(made));
    expect(kept).toMatchObject({ isVoid: false, signedAt: at('14:00'), since: { hasChanged: false, lines: [] } });
    expect(await points(made.plant)).toEqual([]);
    const [entry] = await journalPage(reader(), made.plant.siteId, { before: null, limit: 1 });
    expect(entry).toMatchObject({ action: 'sign-account', subjectId: answer.id });
    expect(entry?.after).toContain(hashOfAccount(kept.account));
    expect(await findAccount(reader(), made.plant.siteId, 'ac 2026 1')).toMatchObject({ id: answer.id });
  });

  it('twice with the same key signs once', async () => {
    const { plant } = await aShift();
    const [first, second] = await Promise.all([sign(plant, {}, 'sign-once-0001'), sign(plant, {}, 'sign-once-0001')]);
    expect(second).toEqual(first);
    expect(await accountPage(reader(), plant.siteId, { before: null, limit: 10 })).toHaveLength(1);
  });

  it('of two at once for the same time lets one through', async () => {
    const { plant } = await aShift();
    const both = await Promise.allSettled([sign(plant), sign(plant)]);
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(both.find(({ status }) => status === 'rejected')).toMatchObject({ reason: refusal('account-overlaps') });
  });

  it('refuses a time that another account has a part of, and takes the time beside it', async () => {
    const { plant } = await aShift();
    await sign(plant);
    const overlapping = sign(plant, { fromAt: at('12:59'), untilAt: at('13:59') });
    await expect(overlapping).rejects.toMatchObject({ code: 'account-overlaps', facts: { account: 'AC-2026-000001' } });
    const beside = await sign(plant, { fromAt: shift.untilAt, untilAt: at('14:00') });
    expect(beside).toMatchObject({ number: 'AC-2026-000002', verdict: 'not-observed', differenceGrams: null });
  });

  it('needs the lead’s own words where it does not close, and points the plant manager to it', async () => {
    const { plant } = await aShift({ skippedTip: true });
    await expect(sign(plant)).rejects.toMatchObject({ code: 'account-needs-explanation' });
    const answer = await sign(plant, { statedLoss: 'A bag may be missing, see the hoist log' });
    const [point, ...others] = await points(plant);
    expect(others).toEqual([]);
    expect(point).toMatchObject({ cause: 'account-does-not-close', role: 'plant-manager', subjectId: answer.id });
    expect(point?.facts).toMatchObject({ account: answer.number, kilograms: '-1000.704' });
  });

  it('points to an account in which nothing at all is left over', async () => {
    const { plant } = await aShift({ closing: [398_296, 398_296] });
    await sign(plant);
    expect(await points(plant)).toMatchObject([{ cause: 'account-exactly-zero' }]);
  });

  it('refuses a time that is not over, a bag that still hangs, and figures that were not the ones seen', async () => {
    const made = await aShift();
    await expect(sign(made.plant, { untilAt: at('14:01') })).rejects.toMatchObject({ code: 'account-time-not-over' });
    const seenHash = hashOfAccount(await draftOf(made));
    await made.records.tip({ openedAt: at('11:00'), netGrams: 900_000 });
    await expect(sign(made.plant, { seenHash })).rejects.toMatchObject({ code: 'account-changed-since-seen' });
    const { number } = await made.records.tip({ openedAt: at('12:00'), offAt: null });
    const hanging = sign(made.plant, { statedLoss: 'not yet looked into' });
    await expect(hanging).rejects.toMatchObject({ code: 'bag-still-hanging', facts: { bag: number } });
    expect(await accountPage(reader(), made.plant.siteId, { before: null, limit: 10 })).toEqual([]);
  });

  it('is over the last shift that ended, the shift of an instant, or a run, where no times are given', async () => {
    const { plant, records, runIds } = await aShift();
    const none = { fromAt: null, untilAt: null };
    await expect(sign(plant, { ...none, run: runIds[0] })).rejects.toMatchObject({ code: 'run-still-open' });
    await records.close(runIds[0], at('13:10'), 1600);
    const statedLoss = 'bags of the second line are in it';
    expect(await sign(plant, { ...none, shiftAt: at('02:00') })).toMatchObject({ fromAt: '2026-03-11T21:00:00.000Z' });
    expect(await sign(plant, none)).toMatchObject(shift);
    const run = sign(plant, { ...none, run: runIds[0], statedLoss });
    await expect(run).rejects.toMatchObject({ code: 'account-overlaps' });
  });

  it.each([
    ['by half', { untilAt: null }, 'untilAt', 'field-missing'],
    ['turned round', { fromAt: shift.untilAt, untilAt: shift.fromAt }, 'untilAt', 'account-time-turned'],
    ['over half a year', { fromAt: '2025-09-01T05:00:00.000Z' }, 'untilAt', 'account-time-too-long'],
    ['in two ways at once', { shiftAt: shift.fromAt }, 'untilAt', 'account-time-stated-twice'],
  ])('refuses a time that is stated %s', async (_how, form, field, code) => {
    const { plant } = await aShift();
    await expect(sign(plant, form)).rejects.toMatchObject({ problems: [{ field, code }] });
  });
});

describe('a signed account', () => {
  it('stays what it was when a weighing is corrected, and the correction stands beside it', async () => {
    const made = await aShift();
    const { id } = await sign(made.plant);
    const corrected = made.tips[0];
    await house.get(UnitOfWork).run(async (tx) => {
      await tx.sql`UPDATE "bag_weighing" SET "voided_by" = ${'correction'} WHERE "id" = ${corrected?.weighingId}`;
      await tx.sql`
        INSERT INTO "bag_weighing" ("id", "bag_id", "occasion", "gross_grams", "tare_grams", "net_grams",
          "is_preset_tare", "scale_id", "weighed_at", "is_doubtful")
        SELECT ${`${corrected?.weighingId}-2`}, "bag_id", "occasion", "gross_grams" - 10000, "tare_grams",
          "net_grams" - 10000, "is_preset_tare", "scale_id", "weighed_at", "is_doubtful"
        FROM "bag_weighing" WHERE "id" = ${corrected?.weighingId}`;
    });
    const kept = await accountWithCorrections(reader(), made.plant.siteId, id);
    expect(kept).toMatchObject({ differenceGrams: 1_296, account: { differenceGrams: 1_296, inGrams: 5_200_000 } });
    expect(kept.since).toMatchObject({ hasChanged: true, movedByGrams: -10_000 });
    expect(kept.since.lines.map(({ signed, now }) => [signed?.grams, now?.grams])).toEqual([[996_500, 986_500]]);
  });

  it('shows a tip that came late as a line of its own', async () => {
    const made = await aShift();
    const { id } = await sign(made.plant);
    const late = await made.records.tip({ openedAt: at('10:40'), netGrams: 950_000 });
    const { since } = await accountWithCorrections(reader(), made.plant.siteId, id);
    expect(since.lines).toMatchObject([{ signed: null, now: { recordId: late.tipId, grams: 950_000 } }]);
    expect(since).toMatchObject({ movedByGrams: 950_000, now: { verdict: 'does-not-close' } });
  });

  it('can be declared void once; its number stays and another may be signed', async () => {
    const { plant } = await aShift({ skippedTip: true });
    const { id } = await sign(plant, { statedLoss: 'unknown' });
    const form = { why: 'incorrect-data', reason: 'Signed for the wrong hopper' } as const;
    const correct = () => house.get(CorrectAccount).execute(asking(plant.actor), id, form);
    expect(await correct()).toEqual({ id, number: 'AC-2026-000001' });
    await expect(correct()).rejects.toMatchObject({ code: 'already-corrected' });
    expect(await points(plant)).toEqual([]);
    expect(await sign(plant, { statedLoss: 'unknown' })).toMatchObject({ number: 'AC-2026-000002' });
    const all = await accountPage(reader(), plant.siteId, { before: null, limit: 10 });
    expect(all.map(({ number, isVoid }) => [number, isVoid])).toEqual([
      ['AC-2026-000002', false],
      ['AC-2026-000001', true],
    ]);
  });
});

describe('a day by the commands of the house', () => {
  it('is drafted, signed, and set beside a tip that is corrected afterwards', async () => {
    house.clock.set(at('05:10'));
    const plant = await aPlant(house, { siteCode: 'DAY' });
    const packScaleId = await aPackScale(house, plant);
    const look = (lowerGrams: number, upperGrams: number) =>
      house.get(SeeLevel).execute(asking(plant.actor), plant.hopperId, { how: 'probe', lowerGrams, upperGrams });
    await look(0, 0);
    const first = await aTippedBag(house, plant);
    const run = await aStartedRun(house, plant);
    house.clock.set(at('05:40'));
    const second = await aTippedBag(house, plant, { isOff: false });
    house.clock.set(at('05:50'));
    const rest = { grossGrams: 301_800, tareGrams: 1_800, isPresetTare: true, scaleId: plant.scaleId };
    await house.get(EndTip).execute(asking(plant.actor), second.tip.id, rest);
    const sample = { run: run.number, netDecigrams: [20_000, 20_020, 20_010, 20_010], scaleId: packScaleId };
    await house.get(WeighHandSample).execute(asking(plant.actor), sample);
    house.clock.set(at('06:50'));
    const swept = { kind: 'sweepings', netGrams: 10_000, removalReason: 'floor', fate: 'waste' } as const;
    await house
      .get(RemoveSugar)
      .execute(asking(plant.actor), { ...swept, hopperId: plant.hopperId, scaleId: plant.scaleId });
    await house.get(CountPacks).execute(asking(plant.actor), run.number, { packCount: 700 });
    await look(288_000, 290_000);
    house.clock.set(at('07:00'));
    const time = { fromAt: at('05:00'), untilAt: at('07:00') };
    const signed = await sign(plant, time);
    // 2 000 000 in; 700 packs of 2001.0 g, 10 000 g swept, 300 000 g weighed back, 289 000 g inside.
    expect(signed).toMatchObject({ inGrams: 2_000_000, outGrams: 1_999_700, differenceGrams: 300, verdict: 'closes' });

    const correction = { why: 'did-not-occur', reason: 'The neighbour’s label was scanned' } as const;
    await house.get(CorrectTip).execute(asking(plant.actor), first.tip.id, correction);
    const kept = await accountWithCorrections(reader(), plant.siteId, signed.id);
    expect(kept).toMatchObject({ verdict: 'closes', since: { movedByGrams: -1_000_000 } });
    expect(kept.since.now.verdict).toBe('does-not-close');
    expect(kept.since.lines).toMatchObject([{ signed: { code: first.bag.number }, now: null }]);
  });
});
