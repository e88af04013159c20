import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleLeft } from '../../test/support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag, decided, tipped } from '../../test/support/a-pallet.js';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { LiftHold } from '../disposition/lift-hold.js';
import { narrowingsOf } from '../disposition/narrowings.js';
import { SetHoldClass } from '../disposition/set-hold-class.js';
import { bagStandingsOf, openHolds, type HoldRow, type HoldScope } from '../disposition/standings.js';
import { WidenHold } from '../disposition/widen-hold.js';
import { bagOf } from '../drying/bulk-bags.js';
import { CorrectCount } from '../packing/correct-count.js';
import { countsOf } from '../packing/packing-runs.js';
import { SplitPallet } from '../pallets/split-pallet.js';
import { standingOfPallet } from '../pallets/pallet-standing.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Refusal } from '../platform/refusal.js';
import { hasSentence, say } from '../platform/sentences/sentences.js';
import type { HoldNarrowed } from './hold.form.js';
import { reachOfHold, scopeOfRow } from './hold-reach.js';
import { NarrowHold } from './narrow-hold.js';
import { previewNarrowing } from './narrowing-preview.js';
import { PlaceHold } from './place-hold.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
const codes = new Set<string>();
const nobody = '00000000-0000-7000-8000-00000000dead';
const assessment = 'sieve seen whole at ten past one, forty packs opened, nothing found';

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
});
afterEach(async () => {
  await house.close();
});

const refused = (code: string): Refusal => {
  codes.add(code);
  return expect.objectContaining({ code }) as unknown as Refusal;
};

async function held(scope: HoldScope, hazard: 'safety' | 'quality' | null = null): Promise<HoldRow> {
  const hold = await house.get(PlaceHold).execute(asking(plant.actor), { ...scope, reason: 'a torn sieve' });
  if (hazard !== null) await classed(hold, hazard);
  return openRow(hold);
}

const classed = (hold: HoldRow, hazard: 'safety' | 'quality') =>
  house.get(SetHoldClass).execute(asking(plant.actor), { hold: hold.id, hazard, reason: 'test' });

async function openRow({ id, scopeKind, scopeId }: HoldRow): Promise<HoldRow> {
  const found = (await openHolds(reader, [{ kind: scopeKind, id: scopeId }])).find((hold) => hold.id === id);
  if (found === undefined) throw new Error('not open');
  return found;
}

const narrow = (hold: HoldRow, parts: Partial<HoldNarrowed>, key?: string) =>
  house.get(NarrowHold).execute(asking(plant.actor, key), {
    hold: hold.number,
    reason: 'packed before the sieve tore',
    assessment,
    ...parts,
  });

async function standing(palletId: string): Promise<readonly [string, readonly string[]]> {
  const { state, reasons } = await standingOfPallet(reader, palletId);
  for (const reason of reasons) expect(say(reason.code, reason.facts)).not.toContain('{');
  return [state, reasons.map(({ code }) => code)];
}

async function reach(hold: HoldRow) {
  const row = await openRow(hold);
  const { possible, takenOut, againIds } = await reachOfHold(reader, scopeOfRow(row), row);
  const ids = (lines: typeof possible) => lines.map(({ palletId }) => palletId).sort();
  return { held: ids(possible), out: ids(takenOut), again: [...againIds] };
}

/** A run of 300 packs an hour over released sugar, and its three pallets. */
async function threePallets() {
  house.clock.set('2026-03-12T11:30:00.000Z');
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  const bag = await aTippedBag(house, plant);
  const run = await aPackedRun(house, plant, { packCount: 100 });
  const pallets = [(await aPallet(house, plant, { run: run.runId })).id];
  for (const packCount of [200, 300]) {
    house.clock.pass(20);
    await packsCounted(house, plant, run.runId, packCount);
    pallets.push((await aPallet(house, plant, { run: run.runId })).id);
  }
  const [first, second, third] = pallets as [string, string, string];
  return { bag, run, first, second, third, all: [...pallets].sort() };
}

describe('a safety hold', () => {
  it('is narrowed only with an assessment, and then loading follows it, at scan, at close and at the gate', async () => {
    const { run, first, second, third } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId });
    const delivery = await aDelivery(house, plant);
    await expect(palletLoaded(house, plant, delivery, first)).rejects.toEqual(refused('unit-on-hold'));
    await expect(narrow(hold, { palletIds: [first], assessment: null })).rejects.toEqual(refused('assessment-needed'));
    await narrow(hold, { palletIds: [first, first] });
    expect(await standing(first)).toEqual(['released', ['taken-out-of']]);
    expect(await standing(second)).toEqual(['on-hold', ['held-by']]);
    expect(await reach(hold)).toEqual({ held: [second, third].sort(), out: [first], again: [] });
    await palletLoaded(house, plant, delivery, first);
    await expect(palletLoaded(house, plant, delivery, second)).rejects.toEqual(refused('unit-on-hold'));
    const [narrowing] = await narrowingsOf(reader, [hold.id]);
    expect(narrowing).toMatchObject({
      ...{ hazard: 'safety', reason: 'packed before the sieve tore', assessment, personId: plant.actor.personId },
      parts: [{ unitKind: 'pallet', unitId: first, ground: { packs: [{ fromCount: 0, toCount: 100 }], bags: [] } }],
    });
    await house.get(WidenHold).execute(asking(plant.actor), { narrowing: narrowing!.id, reason: 'the wrong pallet' });
    const late = deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await expect(late).rejects.toEqual(refused('unit-on-hold'));
    const again = house.get(WidenHold).execute(asking(plant.actor), { narrowing: narrowing!.id, reason: 'twice' });
    await expect(again).rejects.toEqual(refused('already-corrected'));
    await narrow(hold, { palletIds: [first] });
    await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await vehicleLeft(house, plant, delivery);
    expect((await reach(hold)).out).toEqual([first]);
  });

  it('is not narrowed by what narrowed it as a quality hold, unless that was assessed', async () => {
    const { run, first, second } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId }, 'quality');
    await narrow(hold, { palletIds: [first], assessment: null });
    await narrow(hold, { palletIds: [second] });
    expect([(await standing(first))[0], (await standing(second))[0]]).toEqual(['released', 'released']);
    house.clock.pass(1);
    await classed(hold, 'safety');
    expect([(await standing(first))[0], (await standing(second))[0]]).toEqual(['on-hold', 'released']);
  });
});

describe('what is taken out', () => {
  it('is a lot as far as it was counted; pallets with other packs stay on hold', async () => {
    const { bag, run, all } = await threePallets();
    const hold = await held({ kind: 'bulk-bag', id: bag.id });
    await narrow(hold, { lotIds: [run.lotId] });
    expect(await reach(hold)).toEqual({ held: [], out: all, again: [] });
    house.clock.pass(20);
    await packsCounted(house, plant, run.runId, 400);
    const later = await aPallet(house, plant, { run: run.runId });
    expect(await standing(later.id)).toEqual(['on-hold', ['held-by']]);
  });

  it('is minutes of a run: only packs that were surely packed in them', async () => {
    const { run, first, second, third } = await threePallets();
    const hold = await held({ kind: 'lot', id: run.lotId });
    const minutes = { run: run.runId, fromAt: '2026-03-12T12:39:00.000Z', untilAt: '2026-03-12T13:01:00.000Z' };
    const row = await openRow(hold);
    expect(await previewNarrowing(reader, plant.siteId, row, minutes)).toMatchObject({
      ...{ freed: [{ palletId: second, status: 'in-store' }], freedPackCount: 100, staysPackCount: 200 },
    });
    await narrow(hold, minutes);
    expect(await reach(hold)).toEqual({ held: [first, third].sort(), out: [second], again: [] });
    // A count that is corrected moves the packs of these minutes: what is no longer surely in them is held again.
    const second200 = (await countsOf(reader, [run.runId])).find(({ packCount }) => packCount === 200);
    const form = { why: 'incorrect-data', packCount: 150, reason: 'counter misread' } as const;
    await house.get(CorrectCount).execute(asking(plant.actor), second200!.id, form);
    expect(await standing(second)).toEqual(['on-hold', ['held-again-by']]);
    expect((await reach(hold)).again).toEqual([second]);
  });

  it('is a bag of a dryer run, and with it all that only this bag was in', async () => {
    const { bag, first, all } = await threePallets();
    const { dryerRunId } = await bagOf(reader, bag.id);
    const hold = await held({ kind: 'dryer-run', id: dryerRunId! });
    expect((await bagStandingsOf(reader, [bag.id])).get(bag.id)?.isOnHold).toBe(true);
    expect((await previewNarrowing(reader, plant.siteId, hold, { bagIds: [bag.id] })).freed).toHaveLength(3);
    await narrow(hold, { bagIds: [bag.id] });
    expect((await bagStandingsOf(reader, [bag.id])).get(bag.id)?.isOnHold).toBe(false);
    expect(await standing(first)).toEqual(['released', []]);
    expect(await reach(hold)).toEqual({ held: [], out: all, again: [] });
    await expect(narrow(hold, { bagIds: [bag.id] })).rejects.toEqual(refused('part-not-reached'));
  });

  it('does not stay out when a pallet is split: what comes of it is looked at anew', async () => {
    const { run, first } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId });
    await narrow(hold, { palletIds: [first] });
    const parts = [60, 40].map((packCount) => ({ shares: [{ lotId: run.lotId, packCount }] }));
    const form = { parts, reason: 'too high for the rack', label: false };
    const { pallets } = await house.get(SplitPallet).execute(asking(plant.actor), first, form);
    for (const { id } of pallets) expect((await standing(id))[0]).toBe('on-hold');
  });
});

describe('a narrowing names its ground and is no pass for ever', () => {
  it('ends for a pallet that a later tip of another held bag may have reached', async () => {
    const { bag, first, third } = await threePallets();
    const { dryerRunId } = await bagOf(reader, bag.id);
    const other = await aBag(house, plant);
    await decided(house, plant, { kind: 'bulk-bag', id: other.id }, 'released');
    const hold = await held({ kind: 'dryer-run', id: dryerRunId! });
    await narrow(hold, { palletIds: [first, third] });
    expect((await standing(third))[0]).toBe('released');
    const now = house.clock.now();
    house.clock.set('2026-03-12T12:58:00.000Z');
    await tipped(house, plant, other);
    house.clock.set(now);
    expect(await standing(third)).toEqual(['on-hold', expect.arrayContaining(['held-again-by'])]);
    // Packed before that bag was tipped, so nothing of it can be there.
    expect((await standing(first))[0]).toBe('released');
    expect((await reach(hold)).again).toEqual([third]);
    await narrow(hold, { palletIds: [third] });
    expect((await standing(third))[0]).toBe('released');
  });

  it('ends for a lot or minutes too, when more of what is held may have come to their packs', async () => {
    const { bag, run, third } = await threePallets();
    const { dryerRunId } = await bagOf(reader, bag.id);
    const other = await aBag(house, plant);
    await decided(house, plant, { kind: 'bulk-bag', id: other.id }, 'released');
    const hold = await held({ kind: 'dryer-run', id: dryerRunId! });
    await narrow(hold, { lotIds: [run.lotId] });
    expect((await standing(third))[0]).toBe('released');
    const now = house.clock.now();
    house.clock.set('2026-03-12T12:58:00.000Z');
    await tipped(house, plant, other);
    house.clock.set(now);
    expect((await standing(third))[0]).toBe('on-hold');
  });
});

describe('a narrowing is refused', () => {
  it('where there is nothing to take out, or the hold does not reach it, or it is the hold itself', async () => {
    const { run, first, second } = await threePallets();
    const hold = await held({ kind: 'pallet', id: first });
    await expect(narrow(hold, {})).rejects.toEqual(refused('nothing-to-take-out'));
    await expect(narrow(hold, { palletIds: [first] })).rejects.toEqual(refused('part-is-the-hold'));
    await expect(narrow(hold, { palletIds: [second] })).rejects.toEqual(refused('part-not-reached'));
    await expect(narrow(hold, { lotIds: [nobody] })).rejects.toMatchObject({ kind: 'lot' });
    const [early, late] = ['2026-03-12T12:00:00.000Z', '2026-03-12T12:01:00.000Z'];
    const minutes = (fromAt: string, untilAt: string) => narrow(hold, { run: run.runId, fromAt, untilAt });
    await expect(minutes(late, early)).rejects.toEqual(refused('minutes-turned-round'));
    await expect(minutes(early, late)).rejects.toEqual(refused('no-pack-in-these-minutes'));
  });

  it('once the hold is lifted; and sent twice with one key it counts once', async () => {
    const { run, first, second } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId });
    const once = await narrow(hold, { palletIds: [first] }, 'narrow-once');
    expect(await narrow(hold, { palletIds: [first] }, 'narrow-once')).toEqual(once);
    expect(await narrowingsOf(reader, [hold.id])).toHaveLength(1);
    await house.get(LiftHold).execute(asking(plant.actor), { hold: hold.id, reason: 'nothing found' });
    await expect(narrow(hold, { palletIds: [second] })).rejects.toEqual(refused('hold-already-lifted'));
    const widen = house.get(WidenHold).execute(asking(plant.actor), { narrowing: once.id, reason: 'late' });
    await expect(widen).rejects.toEqual(refused('hold-already-lifted'));
    const unknown = house.get(WidenHold).execute(asking(plant.actor), { narrowing: nobody, reason: 'none' });
    await expect(unknown).rejects.toMatchObject({ kind: 'hold-narrowing' });
  });

  it('from a loader, and from an officer who does not prove once more who they are', async () => {
    const { run, first } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId });
    const asked = { hold: hold.number, palletIds: [first], reason: 'test', assessment };
    const loader = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['loader'] }));
    expect(await loader.post('/api/hold-narrowings', asked)).toMatchObject({ status: 403 });
    const officer = await aPerson(house, plant.siteId, { roles: ['quality-officer'] });
    const desk = await signedIn(house, officer);
    const type = 'problem:proof-needed';
    expect(await desk.post('/api/hold-narrowings', asked)).toMatchObject({ status: 409, body: { type } });
    const signed = await desk.post('/api/hold-narrowings', { ...asked, password: officer.password });
    expect(signed).toMatchObject({ status: 201, body: { number: hold.number, partCount: 1 } });
    const preview = await desk.get(`/api/holds/${hold.id}/narrowing-preview?run=${run.runId}`);
    expect(preview).toMatchObject({ status: 409, body: { type: 'problem:nothing-to-take-out' } });
    const listed = await desk.get(`/api/holds/${hold.id}/narrowings`);
    expect(listed.body).toMatchObject({ items: [{ personId: officer.personId, assessment }] });
  });
});

describe('the pages of a quality officer', () => {
  it('offer what the hold reaches, show what a choice frees, and keep who signed what readable', async () => {
    const { bag, run, first } = await threePallets();
    const { dryerRunId } = await bagOf(reader, bag.id);
    const hold = await held({ kind: 'dryer-run', id: dryerRunId! });
    const officer = await aPerson(house, plant.siteId, { roles: ['quality-officer'], name: 'Ada Quill' });
    const desk = await signedIn(house, officer);
    const page = async (path: string): Promise<string> => {
      const answer = await desk.get(`/quality/holds/${hold.id}${path}`);
      expect([path, answer.status]).toEqual([path, 200]);
      return answer.text;
    };
    const choice = await page('/narrow');
    expect(choice).toContain(`name="palletIds" value="${first}"`);
    expect(choice).toContain(`name="lotIds" value="${run.lotId}"`);
    expect(await page('/narrow?look=1')).toContain(say('nothing-to-take-out'));
    const minutes = `run=${run.runId}&fromAt=2026-03-12T13%3A39&untilAt=2026-03-12T14%3A01`;
    expect(await page(`/narrow?look=1&${minutes}`)).toContain('name="fromAt" value="2026-03-12T12:39:00.000Z"');
    const seen = await page(`/narrow?look=1&palletIds=${first}`);
    expect(seen).toContain('It frees 1 pallet with 100 packs and 0 bags. 2 pallets with 200 packs');
    const parts = { palletIds: [first], narrowReason: 'sieve was whole', assessment };
    const unproved = await desk.post(`/quality/holds/${hold.id}/narrow`, parts);
    expect(unproved.text).toContain(say('proof-needed'));
    await desk.post(`/quality/holds/${hold.id}/narrow`, { ...parts, password: officer.password });
    const file = await page('');
    for (const text of ['Signed by Ada Quill', 'sieve was whole', assessment]) expect(file).toContain(text);
    expect(file).toContain(say('reach-out-head'));
  });
});

describe('at the same moment', () => {
  it('a pallet is narrowed out and loaded: it goes on only if the narrowing was first', async () => {
    const { run, first } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId });
    const delivery = await aDelivery(house, plant);
    const [narrowed, loaded] = await Promise.allSettled([
      narrow(hold, { palletIds: [first] }),
      palletLoaded(house, plant, delivery, first),
    ]);
    expect(narrowed.status).toBe('fulfilled');
    if (loaded.status === 'rejected') expect(loaded.reason).toEqual(refused('unit-on-hold'));
    expect((await standing(first))[0]).toBe('released');
  });

  it('a hold is narrowed and made a safety hold: without an assessment the parts are on hold, whoever was first', async () => {
    const { run, first } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId }, 'quality');
    house.clock.pass(1);
    await Promise.allSettled([narrow(hold, { palletIds: [first], assessment: null }), classed(hold, 'safety')]);
    expect((await standing(first))[0]).toBe('on-hold');
  });

  it('a narrowing is taken back and the pallet loaded: it does not leave', async () => {
    const { run, first } = await threePallets();
    const hold = await held({ kind: 'packing-run', id: run.runId });
    const { id: narrowing } = await narrow(hold, { palletIds: [first] });
    const delivery = await aDelivery(house, plant);
    const [, loaded] = await Promise.allSettled([
      house.get(WidenHold).execute(asking(plant.actor), { narrowing, reason: 'the wrong pallet' }),
      palletLoaded(house, plant, delivery, first),
    ]);
    expect((await standing(first))[0]).toBe('on-hold');
    if (loaded.status === 'rejected') expect(loaded.reason).toEqual(refused('unit-on-hold'));
    else
      await expect(deliveryClosed(house, plant, delivery, { blindCount: 1 })).rejects.toEqual(refused('unit-on-hold'));
  });
});

it('says each of these refusals in both languages', () => {
  expect(codes.size).toBeGreaterThan(7);
  for (const code of codes) expect([code, hasSentence(code), hasSentence(code, 'es')]).toEqual([code, true, true]);
});
