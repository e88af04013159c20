import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag } from '../../test/support/a-bag.js';
import { aDelivery } from '../../test/support/a-delivery.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun, packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { TakeComplaint } from '../complaints/take-complaint.js';
import { ChangeCode } from '../packing/change-code.js';
import { FitFilm } from '../packing/fit-film.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { SetCoderClock } from '../plant/set-coder-clock.js';
import { readThread } from '../tracing/read-thread.js';
import { rangesOfSubject } from '../tracing/subject-ranges.js';
import { findAnything, findSubjects } from './find-subjects.js';
import { FindThread } from './find-thread.js';
import { choiceKey, type Finding } from './finding.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
});
afterAll(() => house.close());
beforeEach(async () => {
  house.clock.set('2026-03-12T06:00:00.000Z');
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `FS${siteCount}` });
});

interface Asked {
  readonly at?: string;
  readonly isReadByEye?: boolean;
}
const ask = (code: string, { at, isReadByEye = false }: Asked = {}) => ({
  ...{ code, localTime: at ?? null, now: house.clock.now(), isReadByEye },
});
const find = (code: string, asked: Asked = {}) => findSubjects(from, plant.siteId, ask(code, asked));
const anything = (code: string) => findAnything(from, plant.siteId, ask(code));
const follow = (code: string, meant: string | null = null) =>
  house.get(FindThread).find(plant.siteId, { code, localTime: null, meant });
const named = (findings: readonly Finding[]) => findings.map(({ subject }) => [subject.kind, subject.name]);
const fitCodes = (finding: Finding | undefined) => finding?.fits.map(({ code }) => code);

/** A run whose packs carry a code, a hundred every ten minutes. */
async function codedRun(code: string, wishes: { lineId?: string; minutes?: number } = {}): Promise<string> {
  const { runId } = await aRun(house, plant, wishes.lineId === undefined ? {} : { lineId: wishes.lineId });
  await house.get(ChangeCode).execute(asking(plant.actor), runId, { code, packCount: 0 });
  for (let passed = 10; passed <= (wishes.minutes ?? 60); passed += 10) {
    house.clock.pass(10);
    await packsCounted(house, plant, runId, passed * 10);
  }
  return runId;
}

describe('a code off a pack', () => {
  it('is found as it is printed, with its time or without', async () => {
    await codedRun('L607112');
    for (const typed of ['L607112', 'l 6071-12', '607112', 'L607112 07:20', 'L6071120720']) {
      expect(named(await find(typed))).toEqual([['lot', 'L607112']]);
    }
    expect((await find('L6071120720'))[0]?.subject.localTime).toBe('07:20');
  });

  it('is found by its beginning, or by what is left when its front is worn off; each lot says why', async () => {
    await codedRun('L607112');
    await codedRun('L607123', { lineId: plant.lineIds[1] });
    const half = await find('L6071');
    expect(named(half)).toEqual([
      ['lot', 'L607123'],
      ['lot', 'L607112'],
    ]);
    expect(half.map(fitCodes)).toEqual([['fits-begins'], ['fits-begins']]);
    expect(half.every(({ tier }) => tier === 'part')).toBe(true);
  });

  it('is forgiven what looks alike where the pattern allows it, and the answer names the characters', async () => {
    await codedRun('L6071B2');
    const [found, ...others] = await find('L6O7182');
    expect(others).toEqual([]);
    expect(found).toMatchObject({ subject: { name: 'L6071B2' }, tier: 'look-alike' });
    expect(found?.fits).toEqual([
      { code: 'fits-pattern', facts: { format: 'White sugar 2 kg' } },
      { code: 'fits-look-alike', facts: { place: 3, typed: 'O', read: '0' } },
      { code: 'fits-look-alike', facts: { place: 6, typed: '8', read: 'B' } },
    ]);
    expect(await follow('L6O7182')).toMatchObject({ fits: [{ code: 'fits-pattern' }, {}, {}] });
  });

  it('is itself where it fits as typed; read by eye, what looks alike stands beside it', async () => {
    await codedRun('L6071B2');
    await codedRun('L607182', { lineId: plant.lineIds[1] });
    expect(named(await find('L607182'))).toEqual([['lot', 'L607182']]);
    const byEye = await find('L607182', { isReadByEye: true });
    expect(byEye.map(({ subject, tier }) => [subject.name, tier])).toEqual([
      ['L607182', 'as-typed'],
      ['L6071B2', 'look-alike'],
    ]);
  });

  it('that nothing carries is nothing; a time that no clock shows is said to be none', async () => {
    await codedRun('L607112');
    expect(await anything('L999912')).toEqual({ findings: [], complaints: [], recalls: [], fault: null });
    expect((await anything('L607112 25:99')).fault).toEqual({ code: 'code-time-impossible', facts: { at: '25:99' } });
  });

  it('with a time that no pack of it carries is offered whole, and never followed by itself', async () => {
    await codedRun('L607112');
    const [found, ...others] = await find('L607112 15:00');
    expect(others).toEqual([]);
    expect(found).toMatchObject({ subject: { localTime: null }, isDoubtful: true });
    expect(found?.fits.at(-1)).toEqual({
      code: 'fits-time-not-printed',
      facts: { at: '15:00', from: '2026-03-12 07:00 UTC+01:00', until: '2026-03-12 08:00 UTC+01:00' },
    });
    expect(await follow('L607112 15:00')).toMatchObject({ choices: { findings: [found] } });
    expect(await follow('L607112 15:00', found?.subject.id ?? '')).toHaveProperty('thread');
  });
});

describe('a time of day that the clocks showed twice', () => {
  /** The night of 25 October 2026 in Berlin: 02:30 comes at 00:30 and at 01:30 UTC. */
  async function nightRun(): Promise<string> {
    house.clock.set('2026-10-24T23:00:00.000Z');
    return codedRun('L62981N', { minutes: 240 });
  }

  it('asks which, and each answer is other packs', async () => {
    const runId = await nightRun();
    const found = await find('L62981N 02:30');
    expect(found.map(({ subject }) => subject.printedAt)).toEqual([
      ...['2026-10-25T00:30:00.000Z', '2026-10-25T01:30:00.000Z', null],
    ]);
    expect(found.map((one) => one.fits.at(-1))).toEqual([
      { code: 'fits-coming', facts: { at: '2026-10-25 02:30 UTC+02:00' } },
      { code: 'fits-coming', facts: { at: '2026-10-25 02:30 UTC+01:00' } },
      { code: 'fits-any-coming', facts: { count: 2 } },
    ]);
    const packs = await Promise.all(
      found.map(async ({ subject }) => (await rangesOfSubject(from, plant.siteId, subject)).possible),
    );
    expect(packs).toEqual([
      [{ runId, fromCount: 800, toCount: 1000 }],
      [{ runId, fromCount: 1400, toCount: 1600 }],
      [
        { runId, fromCount: 800, toCount: 1000 },
        { runId, fromCount: 1400, toCount: 1600 },
      ],
    ]);
  });

  it('is followed once it was said which, and the coder’s clock is shown', async () => {
    await nightRun();
    const found = await find('L62981N 02:30');
    expect(await follow('L62981N 02:30')).toHaveProperty('choices');
    const second = await follow('L62981N 02:30', choiceKey(found[1] as Finding));
    expect(second).toMatchObject({
      thread: {
        subject: { printedAt: '2026-10-25T01:30:00.000Z' },
        printedTimes: [
          {
            ...{ printedAt: '2026-10-25T01:30:00.000Z', lineCode: '1', coderCode: 'C1' },
            clock: { offsetSeconds: 0, uncertaintySeconds: 30 },
            window: { fromAt: '2026-10-25T01:29:30.000Z', untilAt: '2026-10-25T01:31:30.000Z' },
          },
        ],
      },
    });
  });

  it('does not ask where the line ran at one of the two only', async () => {
    house.clock.set('2026-10-25T01:00:00.000Z');
    await codedRun('L62981N', { minutes: 60 });
    const found = await find('L62981N 02:30');
    expect(found.map(({ subject }) => [subject.localTime, subject.printedAt])).toEqual([['02:30', null]]);
  });

  it('is read by the coder’s own clock where that stood apart', async () => {
    const clock = { coderId: plant.coderIds[0], offsetSeconds: 600, uncertaintySeconds: 5 };
    await house.get(SetCoderClock).execute(asking(plant.actor), clock);
    const runId = await codedRun('L607112');
    const [found] = await find('L607112 07:30');
    const thread = await readThread(from, plant.siteId, found?.subject as Finding['subject'], house.clock.now());
    expect(thread.printedTimes).toMatchObject([
      {
        ...{ runId, clock: { offsetSeconds: 600, uncertaintySeconds: 5 } },
        window: { fromAt: '2026-03-12T06:19:55.000Z', untilAt: '2026-03-12T06:21:05.000Z' },
        possible: { fromCount: 100, toCount: 300 },
      },
    ]);
  });
});

describe('any other code', () => {
  it('is a bag, its SSCC, and the lot of its liner', async () => {
    const bag = await aBag(house, plant, { linerLot: 'LN-77' });
    expect(named(await find(bag.number))).toEqual([['bulk-bag', bag.number]]);
    expect(named(await find(`(00)${bag.sscc}`))).toEqual([['bulk-bag', bag.number]]);
    expect(named(await find(`https://id.gs1.org/00/${bag.sscc}`))).toEqual([['bulk-bag', bag.number]]);
    const [liner] = await find(' ln-77 ');
    expect(liner).toMatchObject({
      ...{ subject: { kind: 'liner-lot', id: 'LN-77' }, fits: [{ code: 'fits-liner', facts: { count: 1 } }] },
    });
    const found = await follow('LN-77');
    expect(found).toMatchObject({ thread: { sources: [{ bagNumber: bag.number }] } });
  });

  it('is an item and its lot by a symbol; of the item alone the latest lots are offered', async () => {
    await codedRun('L607112');
    expect(named(await find('(01)09520123000103(10)607112'))).toEqual([['lot', 'L607112']]);
    expect(named(await find('https://id.gs1.org/01/09520123000103/10/607112'))).toEqual([['lot', 'L607112']]);
    const item = await find('(01)09520123000103');
    expect(item).toMatchObject([{ subject: { name: 'L607112' }, fits: [{ code: 'fits-item-only' }], tier: 'part' }]);
  });

  it('is every delivery on a customer’s order, whoever asks which', async () => {
    await aDelivery(house, plant, { orderNumber: 'PO-4711' });
    await aDelivery(house, plant, { orderNumber: 'PO-4711' });
    expect(await find('po-4711')).toMatchObject([
      { subject: { kind: 'delivery' }, fits: [{ code: 'fits-order' }] },
      { subject: { kind: 'delivery' }, fits: [{ code: 'fits-order' }] },
    ]);
    expect(await find('(400)PO-4711')).toHaveLength(2);
  });

  it('is several things where several carry it: a film lot and an order, not whichever was looked for first', async () => {
    const { runId } = await aRun(house, plant);
    const film = { film: 'F-100', supplierCode: 'SUP', kind: 'film' as const, packCount: 0 };
    await house.get(FitFilm).execute(asking(plant.actor), runId, film);
    await aDelivery(house, plant, { orderNumber: 'F-100' });
    expect((await find('f-100')).map(({ subject }) => subject.kind).sort()).toEqual(['delivery', 'film-lot']);
  });

  it('is a complaint, and what the complaint is about', async () => {
    const runId = await codedRun('L607112');
    const { id, number } = await house.get(TakeComplaint).execute(asking(plant.actor), {
      ...{ category: 'lumps', severity: 'nuisance', words: 'Lumps', subjectKind: 'packing-run', subjectId: runId },
    });
    expect(await follow(number)).toMatchObject({ complaint: { id } });
    expect(await follow(number.replace('0', 'O'))).toMatchObject({ complaint: { id } });
    expect((await find(number)).map(({ subject }) => subject.id)).toEqual([runId]);
  });
});
