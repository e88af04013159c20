import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import { aDelivery, deliveryClosed, palletLoaded, unitsCounted, vehicleLeft } from '../../test/support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag, decided } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { textOf } from '../../test/support/read-pdf.js';
import { bagOf } from '../drying/bulk-bags.js';
import { MoveBag } from '../drying/move-bag.js';
import { rebuildBagStates, type RebuiltBagState } from '../drying/rebuild-bag-states.js';
import { bagChangesOfTips } from '../hopper/bag-changes.js';
import { TipBag } from '../hopper/tip-bag.js';
import { openPointsOf } from '../open-points/open-points.js';
import { CloseRun } from '../packing/close-run.js';
import type { PalletAnswer } from '../pallets/add-pallet.js';
import { palletOf } from '../pallets/pallet-list.js';
import { shifted } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Papers } from '../platform/printing/papers.js';
import type { Refusal } from '../platform/refusal.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import { PlaceHold } from '../tracing/place-hold.js';
import { ChangeDelivery } from './change-delivery.js';
import { CloseDelivery } from './close-delivery.js';
import { DecideReturn } from './decide-return.js';
import { deliveriesToGo, deliveryOf, linesOf, loadedUnitsOf } from './deliveries.js';
import { LoadBag } from './load-bag.js';
import { bagChangesOfLoadings, deliveryStatesByFacts, wholePalletStates } from './rebuild-states.js';
import { returnedUnitsOf, waitingReturns } from './returns.js';
import { TakeBack } from './take-back.js';
import { UnloadUnit } from './unload-unit.js';
import { VehicleLeaves } from './vehicle-leaves.js';
import { VoidDeliveryNote } from './void-delivery-note.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
const codes = new Set<string>();

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100, capacityGrams: 30_000_000 });
  reader = readerOf(house);
});
afterAll(async () => {
  await house.close();
});

const refused = (code: string, facts: object = {}): Refusal => {
  codes.add(code);
  return expect.objectContaining({ code, facts: expect.objectContaining(facts) as unknown }) as unknown as Refusal;
};
const nobody = '00000000-0000-7000-8000-00000000dead';

const load = (delivery: string, pallet: string) => palletLoaded(house, plant, delivery, pallet);
const unload = (delivery: string, form: Parameters<UnloadUnit['execute']>[2]) =>
  house.get(UnloadUnit).execute(asking(plant.actor), delivery, form);
const count = (delivery: string, unitCount: number) => unitsCounted(house, plant, delivery, unitCount);
const close = (delivery: string) =>
  house.get(CloseDelivery).execute(asking(plant.actor), delivery, { seal: 'S1', shortCode: 'no-room' });
const leaves = (delivery: string, form: Parameters<VehicleLeaves['execute']>[2] = {}) =>
  house.get(VehicleLeaves).execute(asking(plant.actor), delivery, form);
const held = (pallet: string) =>
  house.get(PlaceHold).execute(asking(plant.actor), { kind: 'pallet', id: pallet, reason: 'a corner is wet' });
const takeBack = (delivery: string, form: Partial<Parameters<TakeBack['execute']>[2]>, key?: string) =>
  house.get(TakeBack).execute(asking(plant.actor, key), delivery, {
    why: 'refused-by-customer',
    placeId: plant.placeIds.store,
    units: [],
    ...form,
  });
const decide = (unit: string, fate: 'restock' | 'destroy') =>
  house.get(DecideReturn).execute(asking(plant.actor), unit, { fate, reason: 'looked at, seal whole' });

async function released() {
  const bag = await aBag(house, plant);
  await decided(house, plant, { kind: 'bulk-bag', id: bag.id }, 'released');
  return bag;
}

const loadBag = (delivery: string, bag: string) => house.get(LoadBag).execute(asking(plant.actor), delivery, { bag });

/** The state rows of all bags against what their facts say. */
async function expectBagsAsFactsSay() {
  const stored = await reader.sql<RebuiltBagState & { bagId: string }>`
    SELECT "bag_id" AS "bagId", "status", "remaining_grams" AS "remainingGrams", "place_id" AS "placeId" FROM "bag_state"`;
  const later = [...(await bagChangesOfTips(reader, plant.siteId)), ...(await bagChangesOfLoadings(reader))];
  const rebuilt = await rebuildBagStates(reader, plant.siteId, later);
  for (const { bagId, placeId, ...state } of stored) {
    // Bags were tipped here past the rules, without a word of the place.
    const kept = state.status === 'empty' ? state : { ...state, placeId };
    expect({ bagId, ...rebuilt.get(bagId) }).toMatchObject({ bagId, ...kept });
  }
  return rebuilt;
}

async function pallets(palletCount: number, code = 'L6071A1'): Promise<readonly PalletAnswer[]> {
  await aTippedBag(house, plant);
  const run = await aPackedRun(house, plant, { packCount: palletCount * 100, code });
  const built: PalletAnswer[] = [];
  for (let place = 0; place < palletCount; place += 1) built.push(await aPallet(house, plant, { run: run.runId }));
  const ended = { packCount: palletCount * 100, loosePackCount: 0 };
  await house.get(CloseRun).execute(asking(plant.actor), run.runId, ended);
  house.clock.pass(1);
  return built;
}

/** So many pallets on a vehicle that is checked. */
async function loaded(palletCount: number): Promise<{ delivery: string; on: readonly PalletAnswer[] }> {
  const on = await pallets(palletCount);
  const delivery = await aDelivery(house, plant);
  for (const { sscc } of on) await load(delivery, sscc);
  return { delivery, on };
}

/** They have left, and an hour has gone by. */
async function gone(palletCount: number): Promise<{ delivery: string; on: readonly PalletAnswer[] }> {
  const made = await loaded(palletCount);
  await deliveryClosed(house, plant, made.delivery, { blindCount: palletCount });
  await vehicleLeft(house, plant, made.delivery);
  house.clock.pass(60);
  return made;
}

describe('the count by walking round', () => {
  it('is asked for, stays blind after a first that differs, and tells the difference after a second', async () => {
    const { delivery } = await loaded(2);
    await expect(close(delivery)).rejects.toEqual(refused('blind-count-missing'));
    expect(await count(delivery, 3)).toEqual({ agrees: false, difference: null, countsSince: 1 });
    const first = close(delivery);
    await expect(first).rejects.toEqual(refused('blind-count-differs', { counted: 3 }));
    await first.catch((error: unknown) => {
      expect(Object.keys((error as Refusal).facts)).toEqual(['counted']);
    });
    expect(await count(delivery, 3)).toEqual({ agrees: false, difference: 1, countsSince: 2 });
    await expect(close(delivery)).rejects.toEqual(refused('blind-count-differs-again', { counted: 3, scanned: 2 }));
    expect(await count(delivery, 2)).toMatchObject({ agrees: true });
    await close(delivery);
  });

  it('holds only until the next unit goes on or comes off', async () => {
    const { delivery, on } = await loaded(2);
    await count(delivery, 2);
    await unload(delivery, { pallet: on[0]!.sscc, reason: 'test' });
    await expect(close(delivery)).rejects.toEqual(refused('blind-count-missing'));
    await load(delivery, on[0]!.sscc);
    await expect(close(delivery)).rejects.toEqual(refused('blind-count-missing'));
    await count(delivery, 2);
    await close(delivery);
    await expect(count(delivery, 2)).rejects.toEqual(refused('delivery-is-closed'));
  });

  it('is not taken of an empty vehicle', async () => {
    await expect(count(await aDelivery(house, plant), 0)).rejects.toEqual(refused('nothing-loaded'));
  });

  it('does not cover a pallet that is loaded while the delivery is being closed', async () => {
    const [first, late] = await pallets(2);
    const delivery = await aDelivery(house, plant);
    await load(delivery, first!.sscc);
    await count(delivery, 1);
    const [onIt, closed] = await Promise.allSettled([load(delivery, late!.sscc), close(delivery)]);
    if (onIt.status === 'fulfilled') {
      expect(closed).toMatchObject({ status: 'rejected', reason: { code: 'blind-count-missing' } });
    } else {
      expect([onIt.reason, closed.status]).toEqual([refused('delivery-is-closed'), 'fulfilled']);
    }
    const { palletIds } = await loadedUnitsOf(reader, delivery);
    expect(palletIds.includes(late!.id)).toBe(onIt.status === 'fulfilled');
  });
});

describe('a pallet that comes off', () => {
  it('is put back at the place that is given', async () => {
    const { delivery, on } = await loaded(1);
    const placeId = plant.placeIds.store;
    await expect(unload(delivery, { pallet: on[0]!.sscc, reason: 'test', placeId: nobody })).rejects.toMatchObject({
      kind: 'store-place',
    });
    await unload(delivery, { pallet: on[0]!.sscc, reason: 'test', placeId });
    expect(await palletOf(reader, on[0]!.id)).toMatchObject({ status: 'in-store', placeId });
  });
});

describe('the vehicle leaves', () => {
  it('only once its papers are printed, not before that, and once', async () => {
    const { delivery, on } = await loaded(1);
    await expect(leaves(delivery)).rejects.toEqual(refused('papers-not-printed'));
    const before = house.clock.now();
    house.clock.pass(5);
    await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await expect(leaves(delivery, { leftAt: before })).rejects.toEqual(refused('left-before-closing'));
    const { leftAt } = await leaves(delivery);
    expect(await deliveryOf(reader, delivery)).toMatchObject({ status: 'left', leftAt });
    expect(await palletOf(reader, on[0]!.id)).toMatchObject({ status: 'dispatched', placeId: delivery });
    await expect(leaves(delivery)).rejects.toEqual(refused('delivery-has-left'));
  });

  it('is stopped by a hold that came after the papers, all pallets named; the note is made void, the rest goes', async () => {
    const { delivery, on } = await loaded(3);
    await deliveryClosed(house, plant, delivery, { blindCount: 3 });
    await held(on[0]!.id);
    await held(on[2]!.id);
    const units = `${on[0]!.sscc}, ${on[2]!.sscc}`;
    await expect(leaves(delivery)).rejects.toEqual(refused('units-may-not-leave', { count: 2, units }));
    expect(await palletOf(reader, on[1]!.id)).toMatchObject({ status: 'loaded' });
    await expect(unload(delivery, { pallet: on[0]!.sscc, reason: 'held' })).rejects.toEqual(
      refused('delivery-is-closed'),
    );
    const voided = { correction: 'did-not-occur', reason: 'pallets on hold at the gate' } as const;
    await house.get(VoidDeliveryNote).execute(asking(plant.actor), delivery, voided);
    await expect(deliveryClosed(house, plant, delivery, { blindCount: 3 })).rejects.toEqual(
      refused('units-may-not-go', { count: 2, units }),
    );
    for (const place of [0, 2]) await unload(delivery, { pallet: on[place]!.sscc, reason: 'on hold' });
    await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await leaves(delivery);
    expect(await palletOf(reader, on[1]!.id)).toMatchObject({ status: 'dispatched' });
  });

  it('gives one of two answers when a hold is placed at the same moment, never both', async () => {
    const { delivery, on } = await loaded(1);
    await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    const [hold, left] = await Promise.allSettled([held(on[0]!.id), leaves(delivery)]);
    expect(hold.status).toBe('fulfilled');
    const { status } = await deliveryOf(reader, delivery);
    expect(status).toBe(left.status === 'fulfilled' ? 'left' : 'closed');
  });

  it('and is gone already: that is recorded whatever was on it, and quality is told', async () => {
    const { delivery, on } = await loaded(1);
    await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await held(on[0]!.id);
    await leaves(delivery, { isGone: true });
    const points = await openPointsOf(reader, plant.siteId, { state: 'open', limit: 200 });
    expect(points.filter((point) => point.subjectId === delivery).map((point) => point.cause)).toEqual([
      'left-with-unfit-units',
    ]);
    codes.add('left-with-unfit-units');
    expect(await palletOf(reader, on[0]!.id)).toMatchObject({ status: 'dispatched' });
  });

  it('prints the fixed reason for a short load in words on the note', async () => {
    const { delivery } = await loaded(1);
    await count(delivery, 1);
    const { paperId } = await close(delivery);
    expect(textOf((await house.get(Papers).fileOf(paperId)).bytes)).toContain('no room left on the vehicle');
  });
});

describe('a plan that changes', () => {
  const change = (delivery: string, form: Partial<Parameters<ChangeDelivery['execute']>[2]>) =>
    house.get(ChangeDelivery).execute(asking(plant.actor), delivery, {
      orderNumber: 'CHANGED-1',
      plannedOn: '2026-03-13',
      lines: [{ formatId: plant.formatId, orderedCount: 200 }],
      reason: 'the customer rang',
      ...form,
    });

  it('leaves at another time with other goods, and what stays the same stays the same record', async () => {
    const delivery = await aDelivery(house, plant, {
      lines: [
        { formatId: plant.formatId, orderedCount: 200 },
        { gradeId: plant.gradeId, orderedCount: 1 },
      ],
    });
    const [kept] = await linesOf(reader, delivery);
    const leavesAt = shifted(house.clock.now(), 3_600_000);
    await change(delivery, { leavesAt });
    expect(await deliveryOf(reader, delivery)).toMatchObject({
      orderNumber: 'CHANGED-1',
      plannedOn: '2026-03-13',
      leavesAt,
    });
    expect(await linesOf(reader, delivery)).toEqual([kept]);
    const seen = { on: '2026-03-13', leftSince: house.clock.now() };
    const toGo = await deliveriesToGo(reader, plant.siteId, seen);
    expect(toGo.find(({ id }) => id === delivery)).toMatchObject({ leavesAt });
    const earlier = await deliveriesToGo(reader, plant.siteId, { ...seen, on: '2026-03-12' });
    expect(earlier.find(({ id }) => id === delivery)).toBeUndefined();
  });

  it('keeps at least what is on, and nothing changes once the papers are printed', async () => {
    const { delivery } = await loaded(2);
    const fewer = [{ formatId: plant.formatId, orderedCount: 199 }];
    await expect(change(delivery, { lines: fewer })).rejects.toEqual(refused('less-than-is-on', { on: 200 }));
    const other = [{ formatId: plant.otherFormatId, orderedCount: 200 }];
    await expect(change(delivery, { lines: other })).rejects.toEqual(refused('less-than-is-on', { ordered: 0 }));
    const twice = { formatId: plant.formatId, orderedCount: 200 };
    await expect(change(delivery, { lines: [twice, twice] })).rejects.toEqual(refused('line-named-twice'));
    await deliveryClosed(house, plant, delivery, { blindCount: 2 });
    await expect(change(delivery, {})).rejects.toEqual(refused('delivery-is-closed'));
  });
});

describe('what comes back', () => {
  it('stands apart as returned, neither to be loaded nor counted as stock, until quality decides', async () => {
    const { delivery, on } = await gone(2);
    const [pallet, other] = on;
    const { unitIds } = await takeBack(delivery, {
      units: on.map(({ sscc }) => ({ pallet: sscc, creditedCount: 100 })),
    });
    expect(await palletOf(reader, pallet!.id)).toMatchObject({ status: 'returned', placeId: plant.placeIds.store });
    const next = await aDelivery(house, plant);
    await expect(load(next, pallet!.sscc)).rejects.toEqual(refused('pallet-not-in-store', { status: 'returned' }));
    expect(await loadedUnitsOf(reader, delivery)).toMatchObject({ palletIds: [pallet!.id, other!.id] });
    expect(await deliveryOf(reader, delivery)).toMatchObject({ status: 'left', loadedCount: 2 });
    const waiting = await waitingReturns(reader, plant.siteId);
    expect(waiting.filter((row) => row.deliveryId === delivery)).toMatchObject([
      { name: pallet!.sscc, unitCount: 100, creditedCount: 100, why: 'refused-by-customer' },
      { name: other!.sscc },
    ]);
    await decide(unitIds[0]!, 'restock');
    await decide(unitIds[1]!, 'destroy');
    await expect(decide(unitIds[1]!, 'restock')).rejects.toEqual(refused('return-decided'));
    await load(next, pallet!.sscc);
    await expect(load(next, other!.sscc)).rejects.toEqual(refused('pallet-not-in-store', { status: 'destroyed' }));
    const points = await openPointsOf(reader, plant.siteId, { state: 'open', limit: 200 });
    expect(points.filter((point) => point.cause === 'return-waits' && point.subjectId === delivery)).toEqual([]);
    codes.add('return-waits');
  });

  it('goes into the stock only if quality would let it go today', async () => {
    const { delivery, on } = await gone(1);
    const { unitIds } = await takeBack(delivery, { units: [{ pallet: on[0]!.id, creditedCount: 0 }] });
    await held(on[0]!.id);
    await expect(decide(unitIds[0]!, 'restock')).rejects.toEqual(refused('unit-on-hold'));
    await decide(unitIds[0]!, 'destroy');
    await expect(decide(nobody, 'destroy')).rejects.toMatchObject({ kind: 'returned-unit' });
  });

  it('is a whole bag that cannot be tipped either', async () => {
    const bag = await aBag(house, plant);
    await decided(house, plant, { kind: 'bulk-bag', id: bag.id }, 'released');
    const delivery = await aDelivery(house, plant, { lines: [{ gradeId: plant.gradeId, orderedCount: 1 }] });
    await house.get(LoadBag).execute(asking(plant.actor), delivery, { bag: bag.number });
    await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await vehicleLeft(house, plant, delivery);
    const { unitIds } = await takeBack(delivery, { units: [{ bag: bag.number, creditedCount: 1 }] });
    const tip = () =>
      house.get(TipBag).execute(asking(plant.actor), {
        hopperId: plant.hopperId,
        bag: bag.number,
        openedAt: house.clock.now(),
        identifiedBy: 'scan',
      });
    await expect(tip()).rejects.toEqual(refused('bag-came-back', { bag: bag.number }));
    await decide(unitIds[0]!, 'restock');
    expect(await bagOf(reader, bag.id)).toMatchObject({ status: 'full', remainingGrams: bag.netGrams });
    await expectBagsAsFactsSay();
    const again = await aDelivery(house, plant, { lines: [{ gradeId: plant.gradeId, orderedCount: 1 }] });
    await house.get(LoadBag).execute(asking(plant.actor), again, { bag: bag.number });
    await deliveryClosed(house, plant, again, { blindCount: 1 });
    await vehicleLeft(house, plant, again);
    const back = await takeBack(again, { units: [{ bag: bag.id, creditedCount: 1 }] });
    await decide(back.unitIds[0]!, 'destroy');
    await expect(tip()).rejects.toEqual(refused('bag-was-destroyed'));
    await expectBagsAsFactsSay();
  });

  it('leaves a whole bag where the facts say: on the vehicle, taken off, away, come back, moved, destroyed', async () => {
    const [one, other, third, fourth] = [await released(), await released(), await released(), await released()];
    const delivery = await aDelivery(house, plant, { lines: [{ gradeId: plant.gradeId, orderedCount: 4 }] });
    for (const { number } of [one, other, third, fourth]) await loadBag(delivery, number);
    await expectBagsAsFactsSay();
    await unload(delivery, { bag: one.number, reason: 'spout torn', placeId: plant.placeIds.store });
    await unload(delivery, { bag: other.number, reason: 'spout torn' });
    await expectBagsAsFactsSay();
    await deliveryClosed(house, plant, delivery, { blindCount: 2 });
    await vehicleLeft(house, plant, delivery);
    await expectBagsAsFactsSay();
    const units = [third, fourth].map(({ number }) => ({ bag: number, creditedCount: 1 }));
    const { unitIds } = await takeBack(delivery, { units, placeId: plant.placeIds.store });
    const came = await expectBagsAsFactsSay();
    expect(came.get(third.id)).toEqual({
      status: 'returned',
      remainingGrams: third.netGrams,
      placeId: plant.placeIds.store,
    });
    await decide(unitIds[0]!, 'destroy');
    await decide(unitIds[1]!, 'restock');
    house.clock.pass(1);
    await house.get(MoveBag).execute(asking(plant.actor), { bag: fourth.number, placeId: plant.placeIds.dock });
    const settled = await expectBagsAsFactsSay();
    expect(settled.get(third.id)).toEqual({ status: 'destroyed', remainingGrams: 0, placeId: plant.placeIds.store });
    expect(settled.get(fourth.id)).toMatchObject({ status: 'full', placeId: plant.placeIds.dock });
  });

  it('is loose packs of a lot that went; they are never stock again', async () => {
    const { delivery } = await gone(1);
    const packs = (packCount: number, creditedCount = 0) =>
      takeBack(delivery, { units: [{ lot: 'l6071a1', packCount, creditedCount }] });
    const { unitIds } = await packs(12, 12);
    expect(await returnedUnitsOf(reader, delivery)).toMatchObject([{ name: 'L6071A1', unitCount: 12, palletId: null }]);
    await expect(packs(89)).rejects.toEqual(refused('more-than-delivered', { back: 101, delivered: 100 }));
    await expect(takeBack(delivery, { units: [{ lot: 'L9999', packCount: 1, creditedCount: 0 }] })).rejects.toEqual(
      refused('lot-not-delivered'),
    );
    await expect(decide(unitIds[0]!, 'restock')).rejects.toEqual(refused('loose-packs-stay-out'));
    await decide(unitIds[0]!, 'destroy');
  });

  it('is never more than went, whole and loose together, however often something comes', async () => {
    const { delivery, on } = await gone(2);
    const whole = (place: number, creditedCount = 100) => ({ pallet: on[place]!.sscc, creditedCount });
    await expect(takeBack(delivery, { units: [whole(0), whole(0)] })).rejects.toEqual(refused('same-unit-twice'));
    await expect(takeBack(delivery, { units: [whole(0, 101)] })).rejects.toEqual(
      refused('credit-over-returned', { credited: 101, count: 100 }),
    );
    await takeBack(delivery, { units: [whole(0)] });
    await expect(takeBack(delivery, { units: [whole(0)] })).rejects.toEqual(refused('came-back-already'));
    const loose = { lot: 'L6071A1', packCount: 101, creditedCount: 0 };
    await expect(takeBack(delivery, { units: [loose] })).rejects.toEqual(refused('more-than-delivered', { back: 201 }));
  });

  it('comes only from a vehicle that left, after it left, with a reason, named one by one, and once if sent twice', async () => {
    const { delivery, on } = await gone(2);
    const units = [{ pallet: on[0]!.sscc, creditedCount: 100 }];
    const leftAt = shifted(house.clock.now(), -61 * 60_000);
    const early = takeBack(delivery, { units, returnedAt: leftAt, reason: 'late' });
    await expect(early).rejects.toEqual(refused('returned-before-leaving'));
    await expect(takeBack(delivery, { units, why: 'other' })).rejects.toEqual(refused('return-words-needed'));
    for (const unclear of [{ creditedCount: 0 }, { lot: 'L6071A1', creditedCount: 0 }]) {
      await expect(takeBack(delivery, { units: [unclear] })).rejects.toMatchObject({ name: 'BadForm' });
    }
    codes.add('returned-unit-unclear');
    await expect(takeBack(delivery, { units, placeId: nobody })).rejects.toMatchObject({ kind: 'store-place' });
    const open = await loaded(1);
    await expect(takeBack(open.delivery, { units })).rejects.toEqual(refused('not-left-yet'));
    const strange = [{ pallet: open.on[0]!.sscc, creditedCount: 0 }];
    await expect(takeBack(delivery, { units: strange })).rejects.toEqual(refused('not-on-this-delivery'));
    const first = await takeBack(delivery, { units }, 'return-key-once');
    expect(await takeBack(delivery, { units }, 'return-key-once')).toEqual(first);
    const voided = { correction: 'did-not-occur', reason: 'test' } as const;
    await expect(house.get(VoidDeliveryNote).execute(asking(plant.actor), delivery, voided)).rejects.toEqual(
      refused('units-came-back'),
    );
  });

  it('is taken in once by two people who scan the same pallet at the same time', async () => {
    const { delivery, on } = await gone(1);
    const units = [{ pallet: on[0]!.sscc, creditedCount: 100 }];
    const settled = await Promise.allSettled([takeBack(delivery, { units }), takeBack(delivery, { units })]);
    expect(settled.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(await returnedUnitsOf(reader, delivery)).toHaveLength(1);
  });
});

describe('the states after all this', () => {
  it('are what the facts say', async () => {
    const deliveries = await reader.sql`
      SELECT "delivery_id" AS "deliveryId", "status", "loaded_count" AS "loadedCount" FROM "delivery_state"
      ORDER BY "delivery_id"`;
    expect(await deliveryStatesByFacts(reader)).toEqual(deliveries);
    const stored = await reader.sql`
      SELECT "pallet_id" AS "palletId", "status", "place_id" AS "placeId" FROM "pallet_state" ORDER BY "pallet_id"`;
    expect(await wholePalletStates(reader)).toEqual(stored);
  });

  it('refuse with sentences that the catalogue has', () => {
    expect(codes.size).toBeGreaterThan(25);
    for (const code of codes) expect([code, hasSentence(code), hasSentence(code, 'es')]).toEqual([code, true, true]);
  });
});
