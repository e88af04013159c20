import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { anActor, asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { SystemIds } from '../platform/ids.js';
import { NotFound, Refusal, type SentenceFacts } from '../platform/refusal.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import { AddCustomer } from './add-customer.js';
import { AddDryer } from './add-dryer.js';
import { AddPackFormat } from './add-pack-format.js';
import { AddSite } from './add-site.js';
import { CheckScale } from './check-scale.js';
import { CorrectPlantRecord } from './correct-plant-record.js';
import type { AddPackFormatForm } from './grade.form.js';
import { LetFormatTakeGrade } from './let-format-take-grade.js';
import { LinkHopperToLine } from './link-hopper-to-line.js';
import {
  coderClockAt,
  customerOf,
  gradesOfFormat,
  hopperOfLine,
  linesOfHopper,
  ruleSetAt,
  scaleStandingAt,
  shiftAt,
  specificationAt,
} from './plant-facts.js';
import { RemoveCustomerContact } from './remove-customer-contact.js';
import type { VehicleCheckRules } from './rule-kinds.js';
import { SetCoderClock } from './set-coder-clock.js';
import { SetCustomerContact } from './set-customer-contact.js';
import { SetRuleSet } from './set-rule-set.js';
import { SetShiftPattern } from './set-shift-pattern.js';
import { SetSpecification } from './set-specification.js';
import { VerifyScale } from './verify-scale.js';
import { allOf } from './whole-plant.js';

const now = '2026-03-12T06:00:00.000Z';
const later = '2026-03-13T06:00:00.000Z';
const before = '2026-02-01T00:00:00.000Z';
const nobody = '00000000-0000-7000-8000-00000000dead';
const ids = new SystemIds();

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER, { strict: false });
});
afterAll(async () => {
  await house.close();
});

async function newPlant(): Promise<void> {
  house.clock.set(now);
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `AQ${siteCount}` });
}

const asked = () => asking(plant.actor);

/** The refusal that a change meets, by its code, which has a sentence. */
async function refusal(change: Promise<unknown>): Promise<{ code: string; facts: SentenceFacts }> {
  const error: unknown = await change.then(
    () => new Error('it was accepted'),
    (reason: unknown) => reason,
  );
  if (!(error instanceof Refusal)) throw error;
  expect([error.code, hasSentence(error.code)]).toEqual([error.code, true]);
  return { code: error.code, facts: error.facts };
}
async function refused(change: Promise<unknown>): Promise<string> {
  return (await refusal(change)).code;
}

describe('a site', () => {
  beforeAll(newPlant);
  const form = {
    code: 'BQ',
    name: 'Birch Quay',
    timeZone: 'Europe/Berlin',
    productionDayStart: '06:00',
    gln: '9520123000011',
    companyPrefix: '9520123',
    ssccExtensionDigit: 0,
  };
  const add = (with_: Partial<typeof form> = {}, siteId = ids.next()) =>
    house.get(AddSite).execute(asking(anActor(siteId)), { ...form, ...with_ });

  it('begins its own journal', async () => {
    const [entry] = await from.sql<{ action: string; sequence: number | string }>`
      SELECT "action", "sequence" FROM "journal_entry" WHERE "site_id" = ${plant.siteId} ORDER BY "sequence" LIMIT 1`;
    expect({ ...entry, sequence: Number(entry?.sequence) }).toEqual({ action: 'add-site', sequence: 1 });
  });

  it('is refused with wrong numbers, an unknown zone, or a second time', async () => {
    expect(await refused(add({ timeZone: 'Europe/Alder_Quay' }))).toBe('time-zone-unknown');
    expect(await refused(add({ gln: '9520123000012' }))).toBe('gln-wrong');
    expect(await refused(add({ companyPrefix: '95A' }))).toBe('company-prefix-wrong');
    expect(await refused(add({ companyPrefix: '9521' }))).toBe('gln-not-of-prefix');
    expect(await refused(add({}, plant.siteId))).toBe('site-there-already');
    expect(await refused(add({ code: `AQ${siteCount}` }))).toBe('code-taken');
  });
});

describe('a code', () => {
  beforeAll(newPlant);
  it('is never used twice, not by two at once either', async () => {
    const add = () => house.get(AddDryer).execute(asked(), { code: 'D9', name: 'Dryer 9' });
    const outcomes = await Promise.allSettled([add(), add()]);
    expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await refused(add())).toBe('code-taken');
  });

  it('sent twice with one key makes one dryer', async () => {
    const add = () => house.get(AddDryer).execute(asking(plant.actor, `dryer-${siteCount}`), { code: 'D8', name: 'D' });
    const first = await add();
    expect(await add()).toEqual(first);
    const { dryers } = await allOf(from, plant.siteId, now);
    expect(dryers.map((dryer) => dryer.code)).toEqual(['D1', 'D8', 'D9']);
  });
});

describe('the link of hopper and line', () => {
  beforeEach(newPlant);
  const link = (form: { hopperId?: string | null; validFrom?: string; reason?: string }) =>
    house.get(LinkHopperToLine).execute(asked(), { lineId: plant.lineIds[0], ...form });

  it('ends when the line is fed by none, and history stays', async () => {
    await link({ hopperId: null, validFrom: '2026-03-12T05:30:00.000Z' });
    expect(await hopperOfLine(from, plant.lineIds[0], now)).toBeNull();
    expect(await hopperOfLine(from, plant.lineIds[0], '2026-03-12T05:29:59.999Z')).toBe(plant.hopperId);
    const periods = await linesOfHopper(from, plant.hopperId);
    expect(periods.find((period) => period.lineId === plant.lineIds[0])).toMatchObject({
      fromAt: '2026-01-01T00:00:00.000Z',
      untilAt: '2026-03-12T05:30:00.000Z',
    });
    const { lines } = await allOf(from, plant.siteId, now);
    expect(lines.map((line) => line.hopperCode)).toEqual([null, 'H1']);
  });

  it('is refused when it is so already, begins before the last one, or is set far back or ahead', async () => {
    expect(await refused(link({ hopperId: plant.hopperId }))).toBe('hopper-feeds-line-already');
    expect(await refused(link({ hopperId: null, validFrom: before }))).toBe('time-too-far-back');
    expect(await refused(link({ hopperId: null, validFrom: later }))).toBe('time-ahead');
    expect(await refused(link({ hopperId: null, validFrom: '2026-03-12T04:00:00.000Z' }))).toBe('reason-needed');
    await link({ hopperId: null });
    const back = { hopperId: plant.hopperId, validFrom: '2026-03-12T05:50:00.000Z' };
    expect(await refused(link(back))).toBe('valid-from-not-later');
  });

  it('is made once when two make it at the same instant', async () => {
    const outcomes = await Promise.allSettled([link({ hopperId: null }), link({ hopperId: null })]);
    expect(outcomes.filter((outcome) => outcome.status === 'fulfilled')).toHaveLength(1);
  });

  it('is corrected by a later record, after which the line is fed as before', async () => {
    const { id } = await link({ hopperId: null });
    const correct = () =>
      house.get(CorrectPlantRecord).execute(asked(), {
        kind: 'hopper-line',
        id,
        correctionReason: 'did-not-occur',
        reason: 'the slide stayed open',
      });
    await correct();
    expect(await hopperOfLine(from, plant.lineIds[0], now)).toBe(plant.hopperId);
    expect(await refused(correct())).toBe('already-corrected');
  });

  it('is not found for a line of another site', async () => {
    const other = await aPlant(house, { siteCode: `OTHER${siteCount}` });
    const linking = house.get(LinkHopperToLine).execute(asking(other.actor), { lineId: plant.lineIds[0] });
    await expect(linking).rejects.toThrow(NotFound);
  });
});

describe('a coder’s clock', () => {
  beforeEach(newPlant);
  it('is right up to the comparison and off from then on', async () => {
    const coderId = plant.coderIds[0];
    const set = (validFrom?: string) =>
      house.get(SetCoderClock).execute(asked(), {
        coderId,
        offsetSeconds: 3600,
        uncertaintySeconds: 10,
        ...(validFrom === undefined ? {} : { validFrom }),
      });
    await set();
    expect(await coderClockAt(from, coderId, now)).toEqual({ offsetSeconds: 3600, uncertaintySeconds: 10 });
    expect(await coderClockAt(from, coderId, before)).toEqual({ offsetSeconds: 0, uncertaintySeconds: 30 });
    expect(await refused(set())).toBe('valid-from-not-later');
  });
});

describe('a scale', () => {
  beforeEach(newPlant);
  const check = (form: { deviationMilligrams: number; checkedAt?: string; reason?: string }) =>
    house.get(CheckScale).execute(asked(), { scaleId: plant.scaleId, ...form });

  it('passes exactly at its permissible error, and fails one milligram beyond', async () => {
    expect(await check({ deviationMilligrams: -1_000_000 })).toMatchObject({ passed: true });
    house.clock.pass(1);
    expect(await check({ deviationMilligrams: 1_000_001 })).toMatchObject({ passed: false });
    expect(await scaleStandingAt(from, plant.scaleId, house.clock.now())).toMatchObject({ hasFailed: true });
    expect(await scaleStandingAt(from, plant.scaleId, now)).toMatchObject({ hasFailed: false });
  });

  it('is overdue from the very minute its check is due', async () => {
    const { dueAt } = await check({ deviationMilligrams: 0 });
    expect(dueAt).toBe('2026-04-11T06:00:00.000Z');
    const overdueAt = async (at: string) => (await scaleStandingAt(from, plant.scaleId, at)).isOverdue;
    expect(await overdueAt('2026-04-11T05:59:59.999Z')).toBe(false);
    expect(await overdueAt(dueAt)).toBe(true);
  });

  it('has one check of one instant', async () => {
    await check({ deviationMilligrams: 0 });
    expect(await refused(check({ deviationMilligrams: 5 }))).toBe('scale-check-there-already');
  });

  it('is no longer failed once the failed check is corrected', async () => {
    const { id } = await check({ deviationMilligrams: 2_000_000 });
    await house.get(CorrectPlantRecord).execute(asked(), {
      kind: 'scale-check',
      id,
      correctionReason: 'incorrect-data',
      reason: 'the wrong weight was on it',
    });
    expect(await scaleStandingAt(from, plant.scaleId, now)).toMatchObject({ hasFailed: false, isOverdue: false });
  });

  it('is verified for trade for the days that are given', async () => {
    const verify = (verifiedOn: string, verifiedUntilOn: string) =>
      house.get(VerifyScale).execute(asked(), { scaleId: plant.scaleId, verifiedOn, verifiedUntilOn });
    expect(await refused(verify('2028-01-01', '2027-12-31'))).toBe('verification-ends-before-it-begins');
    expect(await refused(verify('2026-01-01', '2029-12-31'))).toBe('verification-there-already');
    await verify('2026-03-12', '2026-03-12');
    expect((await scaleStandingAt(from, plant.scaleId, now)).isVerifiedForTrade).toBe(true);
    expect((await scaleStandingAt(from, plant.scaleId, later)).isVerifiedForTrade).toBe(false);
  });
});

describe('a specification', () => {
  beforeEach(newPlant);
  const line = { property: 'moisture-percent', method: 'GS2/1/3/9-15', required: true };
  const set = (lines: object[], validFrom?: string) =>
    house.get(SetSpecification).execute(asked(), {
      gradeId: plant.gradeId,
      lines: lines as never,
      ...(validFrom === undefined ? {} : { validFrom }),
    });

  it('takes over at its time; what was before stays judged by the earlier one', async () => {
    await set([{ ...line, maximum: '0.050' }], later);
    expect(await specificationAt(from, plant.gradeId, now)).toHaveLength(2);
    expect(await specificationAt(from, plant.gradeId, later)).toEqual([{ ...line, minimum: null, maximum: '0.05' }]);
  });

  it('is refused where a line stands twice, limits are crossed, or it begins too early', async () => {
    expect(await refused(set([line, line]))).toBe('specification-line-twice');
    const crossed = { ...line, minimum: '0.1', maximum: '0.06' };
    expect(await refusal(set([crossed]))).toEqual({
      code: 'specification-limits-crossed',
      facts: { property: 'moisture-percent', minimum: '0.1', maximum: '0.06' },
    });
    expect(await refused(set([line], before))).toBe('valid-from-in-the-past');
    await set([line], later);
    expect(await refused(set([line], later))).toBe('valid-from-not-later');
  });

  it('can be taken back before it is in force, never after', async () => {
    const { id } = await set([line], later);
    const correct = () =>
      house.get(CorrectPlantRecord).execute(asked(), {
        kind: 'specification',
        id,
        correctionReason: 'incorrect-data',
        reason: 'colour was forgotten',
      });
    house.clock.set(later);
    expect(await refused(correct())).toBe('rule-in-force');
    house.clock.set(now);
    await correct();
    expect(await specificationAt(from, plant.gradeId, later)).toHaveLength(2);
  });
});

describe('a pack format', () => {
  beforeAll(newPlant);
  const form = (): AddPackFormatForm => ({
    code: 'WS-1KG',
    name: 'White sugar 1 kg',
    gtin: '9520123000301',
    nominalGrams: 1000,
    assumedLowerMilligrams: 990_000,
    assumedUpperMilligrams: 1_010_000,
    packTareGrams: 8,
    packsPerPallet: 900,
    palletTareGrams: 25_000,
    codePattern: 'L{y}{ddd}{line}{shift}',
    gradeIds: [plant.gradeId],
  });
  const add = (with_: Partial<AddPackFormatForm> = {}) =>
    house.get(AddPackFormat).execute(asked(), { ...form(), ...with_ });

  it('has its number in 14 digits, whatever was typed', async () => {
    expect(await add()).toMatchObject({ gtin: '09520123000301' });
  });

  it.each([
    ['952O123000301', 'gtin-not-digits'],
    ['95201230003', 'gtin-wrong-length'],
    ['9520123000302', 'gtin-check-digit'],
    ['2112345678900', 'gtin-restricted-prefix'],
    ['99520123000304', 'gtin-variable-measure'],
    ['9520123000103', 'gtin-of-other-content'],
  ])('is refused with the number %s: %s', async (gtin, code) => {
    expect(await refused(add({ gtin }))).toBe(code);
  });

  it.each([
    ['L{week}', 'code-pattern-wrong'],
    ['{bestBefore:DD.MM.YYYY}', 'code-pattern-asks-best-before'],
    ['L{y}{ddd}{line:3}', 'code-pattern-fits-no-line'],
    ['L{y}{ddd}{shift:2}', 'code-pattern-fits-no-shift'],
  ])('is refused where the coder is to print %s: %s', async (codePattern, code) => {
    expect(await refused(add({ codePattern }))).toBe(code);
  });

  it('is refused with limits of the mean beside the nominal, a code taken, or an unknown grade', async () => {
    expect(await refused(add({ assumedLowerMilligrams: 1_000_001 }))).toBe('assumed-limits-not-around-nominal');
    expect(await refused(add({ assumedUpperMilligrams: 999_999 }))).toBe('assumed-limits-not-around-nominal');
    expect(await refused(add({ code: 'WS-2KG' }))).toBe('code-taken');
    await expect(add({ gradeIds: [nobody] })).rejects.toThrow(NotFound);
  });

  it('takes one grade more, once, and gives it up by a correction', async () => {
    const take = () =>
      house.get(LetFormatTakeGrade).execute(asked(), { formatId: plant.formatId, gradeId: plant.otherGradeId });
    const { id } = await take();
    expect(await gradesOfFormat(from, plant.formatId)).toContain(plant.otherGradeId);
    expect(await refused(take())).toBe('format-takes-grade-already');
    const correction = {
      kind: 'pack-format-grade',
      id,
      correctionReason: 'incorrect-data',
      reason: 'another was meant',
    };
    await house.get(CorrectPlantRecord).execute(asked(), correction);
    expect(await gradesOfFormat(from, plant.formatId)).not.toContain(plant.otherGradeId);
  });
});

describe('a customer', () => {
  beforeAll(newPlant);
  it('is refused with a number that is no GLN', async () => {
    const add = house.get(AddCustomer).execute(asked(), { code: 'K-2', gln: '1', name: 'N', address: 'A' });
    expect(await refused(add)).toBe('gln-wrong');
  });

  it('keeps its id when name and address go, and the journal never had them', async () => {
    const { customerId } = plant;
    await house.get(SetCustomerContact).execute(asked(), { customerId, name: 'Rowan Stores', address: 'Rowan Way' });
    expect(await customerOf(from, customerId)).toMatchObject({ name: 'Rowan Stores', telephone: null });
    const remove = () => house.get(RemoveCustomerContact).execute(asked(), customerId);
    await remove();
    expect(await customerOf(from, customerId)).toMatchObject({ code: 'K-001', name: null, address: null });
    expect(await refused(remove())).toBe('contact-removed-already');
    const entries = await from.sql<{ after: string | null }>`
      SELECT "after" FROM "journal_entry" WHERE "subject_id" = ${customerId}`;
    expect(entries).toHaveLength(3);
    expect(JSON.stringify(entries)).not.toMatch(/Fernhill|Rowan/);
  });
});

describe('the shifts', () => {
  beforeAll(newPlant);
  const day = { code: 'D', name: 'Day', startTime: '06:00' };
  const night = { code: 'N', name: 'Night', startTime: '18:00' };
  const set = (form: object) => house.get(SetShiftPattern).execute(asked(), { shifts: [day, night], ...form });

  it('are an hour longer in the night in which the clocks go back', async () => {
    expect(await shiftAt(from, plant.siteId, '2026-10-25T01:30:00.000Z')).toMatchObject({
      productionOn: '2026-10-24',
      shiftCode: 'N',
      lengthMinutes: 540,
    });
  });

  it.each([
    [{ shifts: [night, day] }, 'first-shift-not-at-production-day-start'],
    [{ shifts: [day, day] }, 'shifts-not-in-order'],
    [{ shifts: [day, { ...night, code: 'D' }] }, 'shift-code-empty-or-twice'],
    [{ crews: [{ crew: 'Red', cycle: 'D' }] }, 'rota-start-missing'],
    [{ rotaStartsOn: '2026-03-16', crews: [{ crew: 'Red', cycle: 'X' }] }, 'cycle-names-unknown-shift'],
    [
      {
        rotaStartsOn: '2026-03-16',
        crews: [
          { crew: 'Red', cycle: 'D' },
          { crew: 'Blue', cycle: 'D' },
        ],
      },
      'two-crews-on-one-shift',
    ],
    [
      {
        rotaStartsOn: '2026-03-16',
        crews: [
          { crew: 'Red', cycle: 'D' },
          { crew: 'Red', cycle: 'N' },
        ],
      },
      'crew-empty-or-twice',
    ],
    [{ validFrom: before }, 'valid-from-in-the-past'],
  ])('are refused as %j: %s', async (form, code) => {
    expect(await refused(set(form))).toBe(code);
  });

  it('have a sentence for every problem that a pattern can have', () => {
    const problems = ['time-not-of-the-clock', 'no-shifts', 'rota-start-not-a-day', 'cycle-empty'];
    expect(problems.filter((problem) => !hasSentence(problem))).toEqual([]);
  });

  it('change from an instant on, with crews and days off', async () => {
    const crews = [
      { crew: 'Red', cycle: 'D D - -' },
      { crew: 'Blue', cycle: '- - D D' },
    ];
    await set({ validFrom: '2026-03-16T05:00:00.000Z', rotaStartsOn: '2026-03-16', crews });
    expect(await shiftAt(from, plant.siteId, '2026-03-16T04:59:59.999Z')).toMatchObject({ shiftCode: 'N', crew: null });
    expect(await shiftAt(from, plant.siteId, '2026-03-16T05:00:00.000Z')).toMatchObject({
      shiftCode: 'D',
      crew: 'Red',
    });
    expect(await shiftAt(from, plant.siteId, '2026-03-18T12:00:00.000Z')).toMatchObject({ crew: 'Blue' });
    expect(await shiftAt(from, plant.siteId, '2026-03-18T20:00:00.000Z')).toMatchObject({ isWorked: false });
  });
});

describe('a set of rules', () => {
  beforeAll(newPlant);
  const clean = { code: 'clean', text: 'The loading space is clean' };
  const set = (form: object) => house.get(SetRuleSet).execute(asked(), { kind: 'vehicle-check', ...form });

  it('holds from its time on', async () => {
    await set({ checkPoints: [clean] });
    await set({ checkPoints: [clean, { code: 'dry', text: 'It is dry' }], validFrom: later });
    const pointsAt = async (at: string) =>
      (await ruleSetAt<VehicleCheckRules>(from, plant.siteId, 'vehicle-check', at))?.checkPoints.length;
    expect([await pointsAt(before), await pointsAt(now), await pointsAt(later)]).toEqual([undefined, 1, 2]);
  });

  it('is refused when it is incomplete or names a point twice', async () => {
    expect(await refused(set({}))).toBe('rules-incomplete');
    expect(await refused(set({ kind: 'tip-at-risk', mostWaitingBagCount: 4 }))).toBe('rules-incomplete');
    expect(await refused(set({ checkPoints: [clean, clean] }))).toBe('check-point-twice');
    await set({ kind: 'tip-at-risk', mostWaitingBagCount: 4, mostWaitingGrams: 4_000_000 });
    expect(await ruleSetAt(from, plant.siteId, 'tip-at-risk', now)).toEqual({
      mostWaitingBagCount: 4,
      mostWaitingGrams: 4_000_000,
    });
    const times = { scannedEarlierMinutes: 3, statedEarlierMinutes: 20, laterMinutes: 10, handCountMinutes: 2 };
    expect(await refused(set({ kind: 'tip-time-uncertainty', laterMinutes: 10 }))).toBe('rules-incomplete');
    await set({ kind: 'tip-time-uncertainty', ...times });
    expect(await ruleSetAt(from, plant.siteId, 'tip-time-uncertainty', now)).toEqual(times);
  });
});
