import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aDelivery, palletLoaded } from '../../test/support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag } from '../../test/support/a-pallet.js';
import { aPerson, signedIn } from '../../test/support/a-person.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { packsCounted } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { LiftHold } from '../disposition/lift-hold.js';
import { SetHoldClass } from '../disposition/set-hold-class.js';
import { bagStandingsOf, openHolds, type HoldRow } from '../disposition/standings.js';
import { CorrectCount } from '../packing/correct-count.js';
import { countsOf } from '../packing/packing-runs.js';
import { standingOfPallet } from '../pallets/pallet-standing.js';
import { shiftAt } from '../plant/plant-facts.js';
import { printedSscc } from '../platform/printing/printed-figures.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import type { PlaceHoldForm } from './hold.form.js';
import { reachOfHold, scopeOfRow } from './hold-reach.js';
import { NarrowHold } from './narrow-hold.js';
import { PlaceHold } from './place-hold.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
const nobody = '00000000-0000-7000-8000-00000000dead';

beforeEach(async () => {
  house = await openHouse();
  reader = readerOf(house);
  house.clock.set('2026-03-12T11:30:00.000Z');
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
});
afterEach(async () => {
  await house.close();
});

const place = (form: Omit<PlaceHoldForm, 'reason'>): Promise<HoldRow> =>
  house.get(PlaceHold).execute(asking(plant.actor), { ...form, reason: 'a torn sieve' });
const refused = (code: string): unknown => expect.objectContaining({ code });

describe('the pages of holds', () => {
  it('name what is held, with the way to it', async () => {
    await aTippedBag(house, plant);
    const run = await aPackedRun(house, plant, { packCount: 100 });
    const { id, sscc } = await aPallet(house, plant, { run: run.runId });
    const { code } = run;
    const person = await signedIn(house, await aPerson(house, plant.siteId, { roles: ['auditor'] }));
    const pageOf = async (path: string) => (await person.get(path)).text;
    const held = [
      [await place({ kind: 'lot', id: run.lotId }), `/thread?code=${encodeURIComponent(code)}">lot ${code}<`],
      [await place({ kind: 'pallet', id }), `/thread?code=${sscc}">pallet ${printedSscc(sscc)}<`],
      [
        await place({ kind: 'packing-run', id: run.runId, fromCount: 1, toCount: 9 }),
        `">packing run ${run.number}, packs from 1 up to before 9<`,
      ],
    ] as const;
    const list = await pageOf('/holds');
    for (const [hold, link] of held) {
      expect(await pageOf(`/holds/${hold.id}`)).toContain(link);
      expect(list).toContain(link);
    }
    const page = await pageOf(`/pallets/${id}`);
    expect(page).toContain(`href="/holds/${held[0][0].id}">${held[0][0].number}<`);
    expect(page).toContain(held[0][1]);
  });
});
const stateOf = async (palletId: string): Promise<string> => (await standingOfPallet(reader, palletId)).state;

async function onHold(...bagIds: readonly string[]): Promise<readonly boolean[]> {
  const standings = await bagStandingsOf(reader, bagIds);
  return bagIds.map((id) => standings.get(id)?.isOnHold === true);
}

async function reached(hold: HoldRow): Promise<readonly string[]> {
  const row = (await openHolds(reader, [{ kind: hold.scopeKind, id: hold.scopeId }])).find(({ id }) => id === hold.id);
  const { possible } = await reachOfHold(reader, scopeOfRow(row!), row);
  return possible.map(({ palletId }) => palletId);
}

/** A run of 100 packs every twenty minutes over released sugar, each hundred on a pallet; when each was counted. */
async function threePallets() {
  const bag = await aTippedBag(house, plant);
  const { runId } = await aPackedRun(house, plant, { packCount: 100 });
  const at = [house.clock.now()];
  const pallets = [(await aPallet(house, plant, { run: runId })).id];
  for (const packCount of [200, 300]) {
    house.clock.pass(20);
    await packsCounted(house, plant, runId, packCount);
    at.push(house.clock.now());
    pallets.push((await aPallet(house, plant, { run: runId })).id);
  }
  return { bag, runId, at: at as [string, string, string], pallets: pallets as [string, string, string] };
}

describe('a hold on a dryer’s shift', () => {
  it('holds every bag that was closed in it, and no bag of the shift before or after', async () => {
    const before = await aBag(house, plant);
    house.clock.pass(480);
    const inIt = [await aBag(house, plant), await aBag(house, plant)] as const;
    const hold = await place({ kind: 'dryer-shift', id: plant.dryerId, fromAt: house.clock.now() });
    const shift = await shiftAt(reader, plant.siteId, house.clock.now());
    expect(hold).toMatchObject({ fromAt: shift.startsAt, untilAt: shift.endsAt, fromCount: null });
    const late = await aBag(house, plant);
    house.clock.pass(480);
    const after = await aBag(house, plant);
    expect(await onHold(before.id, inIt[0].id, inIt[1].id, late.id, after.id)).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    const { bags } = await reachOfHold(reader, scopeOfRow(hold), hold);
    expect(bags.map(({ bag }) => bag.id).sort()).toEqual([inIt[0].id, inIt[1].id, late.id].sort());
  });

  it('follows its sugar into pallets, at the gate too, and lets a bag go that is taken out of it', async () => {
    const { bag, pallets } = await threePallets();
    const hold = await place({ kind: 'dryer-shift', id: plant.dryerId, fromAt: '2026-03-12T11:30:00.000Z' });
    expect(await stateOf(pallets[0])).toBe('on-hold');
    const delivery = await aDelivery(house, plant);
    await expect(palletLoaded(house, plant, delivery, pallets[0])).rejects.toEqual(refused('unit-on-hold'));
    const part = { hold: hold.number, reason: 'its liner is whole', assessment: 'seen by two', bagIds: [bag.id] };
    await house.get(NarrowHold).execute(asking(plant.actor), part);
    expect(await onHold(bag.id)).toEqual([false]);
    expect(await stateOf(pallets[0])).toBe('released');
    await palletLoaded(house, plant, delivery, pallets[0]);
  });
});

describe('a hold on minutes of a run', () => {
  it('holds what may have been packed in them, from the count before to the count after', async () => {
    const { runId, at, pallets } = await threePallets();
    const hold = await place({ kind: 'packing-run', id: runId, fromAt: at[0], untilAt: at[1] });
    expect(await Promise.all(pallets.map(stateOf))).toEqual(['released', 'on-hold', 'released']);
    expect(await reached(hold)).toEqual([pallets[1]]);
    const delivery = await aDelivery(house, plant);
    await expect(palletLoaded(house, plant, delivery, pallets[1])).rejects.toEqual(refused('unit-on-hold'));
    await house.get(SetHoldClass).execute(asking(plant.actor), { hold: hold.id, hazard: 'quality', reason: 'test' });
    expect(await stateOf(pallets[1])).toBe('on-hold');
    await house.get(LiftHold).execute(asking(plant.actor), { hold: hold.id, reason: 'nothing was found' });
    expect(await stateOf(pallets[1])).toBe('released');
  });

  it('moves with a count that is corrected later', async () => {
    const { runId, at, pallets } = await threePallets();
    await place({ kind: 'packing-run', id: runId, fromAt: at[1], untilAt: at[2] });
    expect(await Promise.all(pallets.map(stateOf))).toEqual(['released', 'released', 'on-hold']);
    const second = (await countsOf(reader, [runId])).find(({ packCount }) => packCount === 200);
    const corrected = { why: 'incorrect-data', reason: 'misread', packCount: 190 } as const;
    await house.get(CorrectCount).execute(asking(plant.actor), second!.id, corrected);
    expect(await Promise.all(pallets.map(stateOf))).toEqual(['released', 'on-hold', 'on-hold']);
  });

  it('has no end until something is counted after them', async () => {
    const { runId, at, pallets } = await threePallets();
    const untilAt = new Date(Date.parse(at[2]) + 600_000).toISOString();
    await place({ kind: 'packing-run', id: runId, fromAt: at[2], untilAt });
    expect(await stateOf(pallets[2])).toBe('released');
    house.clock.pass(20);
    await packsCounted(house, plant, runId, 400);
    const next = (await aPallet(house, plant, { run: runId })).id;
    house.clock.pass(20);
    await packsCounted(house, plant, runId, 500);
    const last = (await aPallet(house, plant, { run: runId })).id;
    expect([await stateOf(next), await stateOf(last)]).toEqual(['on-hold', 'released']);
  });

  it('is narrowed by a pallet', async () => {
    const { runId, at, pallets } = await threePallets();
    const hold = await place({ kind: 'packing-run', id: runId, fromAt: at[0], untilAt: at[2] });
    const part = { hold: hold.number, reason: 'opened', assessment: 'all packs opened', palletIds: [pallets[1]] };
    await house.get(NarrowHold).execute(asking(plant.actor), part);
    expect(await Promise.all(pallets.map(stateOf))).toEqual(['released', 'released', 'on-hold']);
    expect(await reached(hold)).toEqual([pallets[2]]);
  });
});

describe('a hold on a line’s shift', () => {
  it('holds what may have been packed in it on that line, and nothing of the next shift', async () => {
    const { at, pallets } = await threePallets();
    // The second count is taken when the early shift ends.
    const early = await shiftAt(reader, plant.siteId, at[0]);
    expect(at[1]).toBe(early.endsAt);
    const hold = await place({ kind: 'packing-shift', id: plant.lineIds[0], fromAt: at[0] });
    expect(hold).toMatchObject({ fromAt: early.startsAt, untilAt: early.endsAt });
    expect(await Promise.all(pallets.map(stateOf))).toEqual(['on-hold', 'on-hold', 'released']);
    expect((await reached(hold)).toSorted()).toEqual(pallets.slice(0, 2).toSorted());
    const part = { hold: hold.number, reason: 'opened', assessment: 'all packs opened', palletIds: [pallets[0]] };
    await house.get(NarrowHold).execute(asking(plant.actor), part);
    expect(await Promise.all(pallets.map(stateOf))).toEqual(['released', 'on-hold', 'released']);
  });
});

describe('a time that cannot be held', () => {
  it('is refused with what would do', async () => {
    const { runId, at, bag } = await threePallets();
    const times = { fromAt: at[0], untilAt: at[1] };
    const wrong: readonly Omit<PlaceHoldForm, 'reason'>[] = [
      { kind: 'bulk-bag', id: bag.id, ...times },
      { kind: 'packing-run', id: runId, fromAt: at[1], untilAt: at[0] },
      { kind: 'packing-run', id: runId, fromAt: at[0] },
      { kind: 'packing-run', id: runId, ...times, fromCount: 0, toCount: 10 },
      { kind: 'dryer-shift', id: plant.dryerId },
    ];
    for (const form of wrong) await expect(place(form)).rejects.toEqual(refused('hold-times-not-usable'));
    expect(hasSentence('hold-times-not-usable')).toBe(true);
    await expect(place({ kind: 'dryer-shift', id: nobody, fromAt: at[0] })).rejects.toBeInstanceOf(NotFound);
    await expect(place({ kind: 'packing-shift', id: nobody, fromAt: at[0] })).rejects.toBeInstanceOf(NotFound);
  });
});
