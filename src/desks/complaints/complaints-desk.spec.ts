import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../../test/support/a-person.js';
import { aPackWeigher, packsWeighed } from '../../../test/support/a-pack-weigher.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { packsCounted } from '../../../test/support/a-run.js';
import { aProvenEmpty, aStartedRun, aTippedBag } from '../../../test/support/a-tip.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { findComplaint } from '../../complaints/complaints.js';
import { similarComplaints } from '../../complaints/similar-complaints.js';
import { standsOut } from '../../complaints/stand-out.js';
import { ChangeCode } from '../../packing/change-code.js';
import { runOf } from '../../packing/packing-runs.js';
import { StopLine } from '../../packing/stop-line.js';
import { shifted } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { readThread } from '../../tracing/read-thread.js';
import { subjectById } from '../../tracing/subject-by-id.js';
import { TakeByCode } from './take-by-code.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let quality: SignedInPerson;
let runId: string;
let bagNumber: string;

const told = { category: 'colour' as const, severity: 'food-safety' as const, words: 'Grey, not white' };

/** One bag of a tonne, tipped; then 100 packs with one code and 100 with another, and a stop. */
beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
  house.clock.set('2026-03-12T06:00:00.000Z');
  plant = await aPlant(house);
  quality = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['quality-officer'] }));
  await aProvenEmpty(house, plant);
  house.clock.pass(1);
  const { bag } = await aTippedBag(house, plant);
  bagNumber = bag.number;
  house.clock.pass(5);
  ({ id: runId } = await aStartedRun(house, plant));
  await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L607111', packCount: 0 });
  house.clock.pass(20);
  await packsCounted(house, plant, runId, 100);
  await house.get(StopLine).execute(asking(plant.actor), { run: runId, stopReason: 'jam', packCount: 100 });
  await house.get(ChangeCode).execute(asking(plant.actor), runId, { code: 'L607112', packCount: 100 });
  house.clock.pass(20);
  await packsCounted(house, plant, runId, 200);
});
afterAll(() => house.close());

const take = (codeAsRead: string, wishes: object = {}) =>
  house.get(TakeByCode).execute(asking(plant.actor), { ...told, codeAsRead, ...wishes });

describe('a complaint taken in by the code that the customer reads', () => {
  it('is linked to the packs; to none where nothing carries the code and that was said', async () => {
    const { id } = await take('l6071 11 07:10');
    expect(await findComplaint(from, plant.siteId, id)).toMatchObject({ subjectKind: 'lot', localTime: '07:10' });
    await expect(take('X999')).rejects.toMatchObject({ code: 'complaint-code-unknown' });
    await expect(take('L607111 25:99')).rejects.toMatchObject({ code: 'complaint-code-no-time' });
    expect(await take('X999', { isUnlinked: true })).toMatchObject({ isLinked: false });
  });

  it('asks which where it may be several, or was only read as something that looks like it', async () => {
    await expect(take('L6071')).rejects.toMatchObject({ code: 'complaint-code-which' });
    await expect(take('L6O7111')).rejects.toMatchObject({ code: 'complaint-code-which' });
    await expect(take('L607111 15:00')).rejects.toMatchObject({ code: 'complaint-code-which' });
  });

  it('is like another one that shares a bag, though its lot is another', async () => {
    const one = await take('L607111', { category: 'lumps' });
    const other = await take('L607112');
    const complaint = await findComplaint(from, plant.siteId, one.id);
    const similar = await similarComplaints(from, complaint, house.clock.now());
    expect(similar.find((found) => found.complaint.id === other.id)).toMatchObject({
      ...{ isSameLot: false, isSameCategory: false, sharedBags: [{ bagNumber, word: 'sure' }] },
    });
  });

  it('shows what stands out with its numbers, and calls nothing usual that too few records tell', async () => {
    const thread = await readThread(
      from,
      plant.siteId,
      await subjectById(from, 'packing-run', runId),
      house.clock.now(),
    );
    const found = (await standsOut(from, plant.siteId, thread)) ?? [];
    expect(found.find(({ code }) => code === 'stand-out-stops')).toMatchObject({ value: 1, word: 'too-few' });
    expect(found.find(({ code }) => code === 'stand-out-holds-bag')).toMatchObject({ value: 0 });
  });

  it('says how unusual the weights of their minutes are, and what went on too short near them', async () => {
    house.clock.pass(60);
    const subject = await subjectById(from, 'packing-run', runId);
    const { startedAt } = await runOf(from, runId);
    const weigher = await aPackWeigher(house, plant);
    const last = shifted(house.clock.now(), -60_000);
    // A pack every ten seconds, from the run's start on; two of the last minute are heavy, and one is far too short.
    const packs = Math.floor((Date.parse(last) - Date.parse(startedAt)) / 10_000);
    const netGrams = Array.from({ length: packs }, (_, place) => (place === 5 ? 1500 : 2000 + (place % 7) / 10));
    await packsWeighed(house, weigher, { run: runId, fromAt: startedAt, everySeconds: 10, netGrams });
    const heavy = { run: runId, fromAt: last, netGrams: [2900, 2900], fromSequence: packs + 1 };
    await packsWeighed(house, weigher, heavy);
    const thread = await readThread(from, plant.siteId, subject, house.clock.now());
    const minute = new Date(Math.floor(Date.parse(last) / 60_000) * 60_000).toISOString();
    const when = { fromAt: minute, untilAt: shifted(minute, 59_999) };
    const narrow = { ...thread, packed: thread.packed.slice(0, 1).map((part) => ({ ...part, when })) };
    const found = (await standsOut(from, plant.siteId, narrow)) ?? [];
    const weights = found.find(({ code }) => code === 'stand-out-minute-weights');
    expect(weights).toMatchObject({ word: 'unusual', unit: 'grams', href: `/runs/${runId}/weights` });
    expect(weights?.value).toBeGreaterThan(weights?.median ?? Infinity);
    const whole = (await standsOut(from, plant.siteId, thread)) ?? [];
    expect(whole.find(({ code }) => code === 'stand-out-short-packs')).toMatchObject({ value: 1 });
  });
});

describe('the pages of complaints', () => {
  it('take one in, show it, answer it and print the letter; whoever only reads sees no name', async () => {
    expect((await quality.get('/quality/complaints/new')).text).toContain('Take in a complaint');
    const form = { ...told, codeAsRead: 'L607111', contactName: 'Una Fennimore', contactReach: '555 0100' };
    const taken = await quality.post('/api/complaints').send(form);
    expect(taken.status).toBe(201);
    const { id, number } = taken.body as { id: string; number: string };
    const page = await quality.get(`/quality/complaints/${id}`);
    for (const text of [number, 'Una Fennimore', 'Look at a hold', bagNumber, 'What stands out']) {
      expect(page.text).toContain(text);
    }
    expect(page.text).toContain('<td class="number">1 time</td>');
    expect(page.text).toContain('<td class="number">0 holds</td>');
    const steps = `/api/complaints/${id}/steps`;
    for (const step of [
      { kind: 'cause', words: 'Burnt sugar' },
      { kind: 'answer', words: 'It was burnt sugar.', way: 'letter' },
      { kind: 'close', words: 'Nothing more to do' },
    ]) {
      expect((await quality.post(steps).send(step)).status).toBe(201);
    }
    const letter = await quality.get(`/quality/complaints/${id}/letter`);
    expect(letter.text).toContain('It was burnt sugar.');
    expect(letter.text).toContain('We found the packs as lot');
    expect((await quality.get('/quality/complaints')).text).toContain(number);
    const auditor = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    const seen = await auditor.get(`/quality/complaints/${id}`);
    expect(seen.status).toBe(200);
    expect(seen.text).not.toContain('Fennimore');
    expect((await auditor.get(`/quality/complaints/${id}/letter`)).status).toBe(403);
    expect((await auditor.post('/api/complaints').send(told)).status).toBe(403);
    expect((await quality.get(`/thread?code=${number}`)).headers['location']).toBe(`/quality/complaints/${id}`);
  });
});
