import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from '../../test/support/a-bag.js';
import {
  aDelivery,
  deliveryClosed,
  palletLoaded,
  unitsCounted,
  vehicleChecked,
  vehicleLeft,
} from '../../test/support/a-delivery.js';
import { aPackedRun, aPallet, aTippedBag, decided, type Said } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { pageCount, symbolsOf, textOf } from '../../test/support/read-pdf.js';
import type { ClosedBag } from '../drying/close-bag.js';
import { changeBagState } from '../drying/change-bag-state.js';
import { placeHold } from '../disposition/place-hold.js';
import { openPointsOf } from '../open-points/open-points.js';
import { CloseRun } from '../packing/close-run.js';
import type { PalletAnswer } from '../pallets/add-pallet.js';
import { palletOf } from '../pallets/pallet-list.js';
import { TakePalletApart } from '../pallets/take-pallet-apart.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { UnitOfWork } from '../platform/database/unit-of-work.js';
import { SystemIds } from '../platform/ids.js';
import { Papers } from '../platform/printing/papers.js';
import type { Refusal } from '../platform/refusal.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import { Scale } from '../plant/scale.entity.js';
import { ScaleCheck } from '../plant/scale-check.entity.js';
import { CancelDelivery } from './cancel-delivery.js';
import { CheckVehicle, usualCheckPoints } from './check-vehicle.js';
import { CloseDelivery } from './close-delivery.js';
import { bagDeliveryOf, deliveriesOfUnits, deliveryOf, findDelivery, loadedUnitsOf } from './deliveries.js';
import { deliveryView } from './delivery-views.js';
import { LoadBag } from './load-bag.js';
import { paperPage } from './paper-list.js';
import { PlanDelivery } from './plan-delivery.js';
import { deliveryStatesByFacts, wholePalletStates } from './rebuild-states.js';
import { UnloadUnit } from './unload-unit.js';
import { VoidDeliveryNote } from './void-delivery-note.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
const ids = new SystemIds();
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

const load = (delivery: string, pallet: string) => palletLoaded(house, plant, delivery, pallet);
const unload = (delivery: string, form: Parameters<UnloadUnit['execute']>[2]) =>
  house.get(UnloadUnit).execute(asking(plant.actor), delivery, form);

/** So many pallets of a hundred packs, from a run of their own, of sugar that quality released. */
async function pallets(count: number, code = 'L6071A1'): Promise<readonly PalletAnswer[]> {
  await aTippedBag(house, plant);
  const run = await aPackedRun(house, plant, { packCount: count * 100, code });
  const built: PalletAnswer[] = [];
  for (let place = 0; place < count; place += 1) built.push(await aPallet(house, plant, { run: run.runId }));
  await house.get(CloseRun).execute(asking(plant.actor), run.runId, { packCount: count * 100, loosePackCount: 0 });
  house.clock.pass(1);
  return built;
}

async function aPalletToLoad(): Promise<PalletAnswer> {
  return (await pallets(1))[0]!;
}

async function held(scope: Parameters<typeof placeHold>[2]['scope']): Promise<string> {
  const hold = await house.get(UnitOfWork).run((tx) =>
    placeHold(
      tx,
      { recordedAt: house.clock.now() },
      {
        nextId: () => ids.next(),
        siteId: plant.siteId,
        scope,
        reason: 'a stone was found',
        placedAt: house.clock.now(),
      },
    ),
  );
  return hold.number;
}

async function aWholeBag(
  said: Said = 'released',
  wishes: { scaleId?: string; gradeId?: string } = {},
): Promise<ClosedBag> {
  const bag = await aBag(house, plant, wishes);
  if (said !== 'waiting') await decided(house, plant, { kind: 'bulk-bag', id: bag.id }, said);
  return bag;
}

const aBagDelivery = (orderedCount = 2) =>
  aDelivery(house, plant, { lines: [{ gradeId: plant.gradeId, orderedCount }] });
const loadBag = (delivery: string, bag: string) => house.get(LoadBag).execute(asking(plant.actor), delivery, { bag });

describe('planning a delivery', () => {
  const plan = (form: Partial<Parameters<PlanDelivery['execute']>[1]>) =>
    house.get(PlanDelivery).execute(asking(plant.actor), {
      customerId: plant.customerId,
      orderNumber: '4500123',
      plannedOn: '2026-03-12',
      lines: [{ formatId: plant.formatId, orderedCount: 100 }],
      ...form,
    });

  it('refuses lines that name the same goods twice, and goods or a customer that nobody knows', async () => {
    const twice = { formatId: plant.formatId, orderedCount: 1 };
    await expect(plan({ lines: [twice, twice] })).rejects.toEqual(refused('line-named-twice', { line: 2 }));
    await expect(plan({ lines: [{ orderedCount: 1 }] })).rejects.toMatchObject({ name: 'BadForm' });
    const both = { formatId: plant.formatId, gradeId: plant.gradeId, orderedCount: 1 };
    await expect(plan({ lines: [both] })).rejects.toMatchObject({ name: 'BadForm' });
    const unknown = [{ gradeId: plant.formatId, orderedCount: 1 }];
    await expect(plan({ lines: unknown })).rejects.toMatchObject({ kind: 'grade' });
    await expect(plan({ customerId: plant.formatId })).rejects.toMatchObject({ kind: 'customer' });
  });

  it('is found by its order number and its id', async () => {
    const { id } = await plan({ orderNumber: 'Kd-77' });
    expect((await findDelivery(reader, plant.siteId, ' KD-77 ')).id).toBe(id);
    expect((await findDelivery(reader, plant.siteId, id)).status).toBe('planned');
    await expect(findDelivery(reader, plant.siteId, 'DN-2026-999999')).rejects.toMatchObject({ kind: 'delivery' });
  });
});

describe('the vehicle', () => {
  const check = (delivery: string, answers: { point: string; isFine: boolean }[]) =>
    house
      .get(CheckVehicle)
      .execute(asking(plant.actor), delivery, { registration: 'aq  123 d', haulierCode: 'H-01', answers });

  it('takes nothing before it was checked, and nothing after it failed, until it passes', async () => {
    const pallet = await aPalletToLoad();
    const delivery = await aDelivery(house, plant, { failedPoints: null });
    await expect(load(delivery, pallet.sscc)).rejects.toEqual(refused('vehicle-not-checked'));
    await vehicleChecked(house, plant, delivery, ['dry']);
    await expect(load(delivery, pallet.sscc)).rejects.toEqual(refused('vehicle-failed-check', { points: 'dry' }));
    const subject = { subject: { kind: 'delivery', id: delivery } };
    const open = async () =>
      (await openPointsOf(reader, plant.siteId, { state: 'open', limit: 200 }))
        .filter((point) => point.subjectId === subject.subject.id)
        .map((point) => point.cause);
    expect(await open()).toEqual(['vehicle-failed-check']);
    house.clock.pass(20);
    await vehicleChecked(house, plant, delivery);
    expect(await open()).toEqual([]);
    await load(delivery, pallet.sscc);
    await expect(vehicleChecked(house, plant, delivery, [], 'AQ 999 D')).rejects.toEqual(
      refused('other-vehicle-is-loaded', { registration: 'AQ 123 D' }),
    );
  });

  it('is checked in every point that the house asks, and in no other', async () => {
    const delivery = await aDelivery(house, plant, { failedPoints: null });
    const all = usualCheckPoints.map(({ code }) => ({ point: code, isFine: true }));
    await expect(check(delivery, all.slice(1))).rejects.toEqual(refused('check-points-missing', { points: 'clean' }));
    await expect(check(delivery, [...all, { point: 'pretty', isFine: true }])).rejects.toEqual(
      refused('check-point-unknown', { point: 'pretty' }),
    );
    await expect(check(delivery, [...all, all[0]!])).rejects.toEqual(
      refused('check-point-unknown', { point: 'clean' }),
    );
    expect(await check(delivery, all)).toMatchObject({ passed: true, failedPoints: [] });
  });
});

describe('loading a pallet', () => {
  it('puts it onto the vehicle, one after the other, and tells what is left', async () => {
    const [first, second] = await pallets(2);
    const delivery = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 300 }] });
    expect(await load(delivery, `(00)${first!.sscc}`)).toMatchObject({ place: 1, lines: [{ leftCount: 200 }] });
    expect(await load(delivery, second!.id)).toMatchObject({ place: 2, lines: [{ loadedCount: 200, leftCount: 100 }] });
    expect(await palletOf(reader, first!.id)).toMatchObject({ status: 'loaded', placeId: delivery });
    expect(await deliveryOf(reader, delivery)).toMatchObject({ status: 'loading', loadedCount: 2 });
    await expect(load(delivery, first!.sscc)).rejects.toEqual(refused('already-loaded', { unit: first!.sscc }));
    const other = await aDelivery(house, plant);
    await expect(load(other, first!.sscc)).rejects.toEqual(refused('loaded-elsewhere'));
  });

  it('refuses what was not ordered, what is more than was ordered, and what is not in store', async () => {
    const [pallet, apart] = await pallets(2);
    const brown = await aDelivery(house, plant, { lines: [{ formatId: plant.otherFormatId, orderedCount: 500 }] });
    await expect(load(brown, pallet!.sscc)).rejects.toEqual(refused('not-ordered', { goods: 'White sugar 2 kg' }));
    const few = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 99 }] });
    await expect(load(few, pallet!.sscc)).rejects.toEqual(refused('more-than-ordered', { count: 100, ordered: 99 }));
    await house.get(TakePalletApart).execute(asking(plant.actor), apart!.id, { reason: 'test' });
    const delivery = await aDelivery(house, plant);
    await expect(load(delivery, apart!.sscc)).rejects.toEqual(
      refused('pallet-not-in-store', { status: 'taken-apart' }),
    );
    await expect(load(delivery, '095201230000999995')).rejects.toMatchObject({ kind: 'pallet' });
  });

  it('refuses a pallet that quality rejected, and takes one that it accepted by a concession', async () => {
    const [pallet, accepted] = await pallets(2);
    const delivery = await aDelivery(house, plant);
    await decided(house, plant, { kind: 'pallet', id: pallet!.id }, 'rejected');
    await expect(load(delivery, pallet!.sscc)).rejects.toEqual(
      refused('unit-rejected', { because: 'Quality has rejected the pallet: test: rejected' }),
    );
    await decided(house, plant, { kind: 'pallet', id: accepted!.id }, 'concession');
    await load(delivery, accepted!.sscc);
  });

  it('refuses a pallet that is on hold, and says which hold and why', async () => {
    const pallet = await aPalletToLoad();
    const delivery = await aDelivery(house, plant);
    const number = await held({ kind: 'pallet', id: pallet.id });
    await expect(load(delivery, pallet.sscc)).rejects.toEqual(
      refused('unit-on-hold', { because: `On hold (${number} on pallet ${pallet.sscc}, safety): a stone was found` }),
    );
    // Of the wrong goods too: the hold is what must not be missed.
    const brown = await aDelivery(house, plant, { lines: [{ formatId: plant.otherFormatId, orderedCount: 500 }] });
    await expect(load(brown, pallet.sscc)).rejects.toEqual(refused('unit-on-hold'));
  });

  it('gives a pallet to one of two vehicles that take it at once', async () => {
    const pallet = await aPalletToLoad();
    const [one, other] = [await aDelivery(house, plant), await aDelivery(house, plant)];
    const settled = await Promise.allSettled([load(one, pallet.sscc), load(other, pallet.sscc)]);
    expect(settled.filter((each) => each.status === 'fulfilled')).toHaveLength(1);
    expect(settled.find((each) => each.status === 'rejected')?.reason).toEqual(refused('loaded-elsewhere'));
    const on = await deliveriesOfUnits(reader, { palletIds: [pallet.id], bagIds: [] });
    expect(on).toHaveLength(1);
  });
});

describe('loading a whole bag', () => {
  it('takes one that is whole, released and weighed for trade, and not more than were ordered', async () => {
    const [bag, other] = [await aWholeBag(), await aWholeBag('concession')];
    const delivery = await aBagDelivery(1);
    expect(await loadBag(delivery, bag.number)).toMatchObject({ lines: [{ leftCount: 0 }] });
    expect(await bagDeliveryOf(reader, bag.id)).toMatchObject({ id: delivery });
    await expect(loadBag(delivery, other.number)).rejects.toEqual(refused('more-than-ordered'));
    await loadBag(await aBagDelivery(), other.sscc);
  });

  it('refuses one that waits, is on hold, is rejected, is of another grade, or is not whole', async () => {
    const delivery = await aBagDelivery();
    const waiting = await aWholeBag('waiting');
    await expect(loadBag(delivery, waiting.number)).rejects.toEqual(refused('unit-waits'));
    const rejected = await aWholeBag('rejected');
    await expect(loadBag(delivery, rejected.number)).rejects.toEqual(refused('unit-rejected'));
    const onHold = await aWholeBag();
    await held({ kind: 'bulk-bag', id: onHold.id });
    const stopped = refused('unit-on-hold', { because: expect.stringContaining(`on bulk bag ${onHold.number}`) });
    await expect(loadBag(delivery, onHold.number)).rejects.toEqual(stopped);
    const packs = await aDelivery(house, plant);
    await expect(loadBag(packs, onHold.number)).rejects.toEqual(stopped);
    const opened = await aWholeBag();
    await house
      .get(UnitOfWork)
      .run((tx) =>
        changeBagState(
          tx,
          opened.id,
          { status: ['full'] },
          { status: 'opened', remainingGrams: 400_000, placeId: null, at: house.clock.now() },
        ),
      );
    await expect(loadBag(delivery, opened.number)).rejects.toEqual(refused('bag-not-whole', { status: 'opened' }));
    const brown = await aWholeBag('released', { gradeId: plant.otherGradeId });
    await expect(loadBag(delivery, brown.number)).rejects.toEqual(refused('not-ordered', { goods: 'Brown sugar' }));
  });

  it('refuses one whose weight is doubtful, or whose scale was not verified for trade', async () => {
    const delivery = await aBagDelivery();
    const doubtful = await aWholeBag('released', { scaleId: plant.staleScaleId });
    await expect(loadBag(delivery, doubtful.number)).rejects.toEqual(refused('bag-weight-doubtful'));
    const scaleId = await aScaleNotForTrade();
    const unverified = await aWholeBag('released', { scaleId });
    await expect(loadBag(delivery, unverified.number)).rejects.toEqual(refused('scale-not-for-trade', { scale: 'S9' }));
  });

  it('gives a bag to one of two vehicles that take it at once', async () => {
    const bag = await aWholeBag();
    const both = [await aBagDelivery(), await aBagDelivery()];
    const settled = await Promise.allSettled(both.map((delivery) => loadBag(delivery, bag.number)));
    expect(settled.filter((each) => each.status === 'fulfilled')).toHaveLength(1);
    expect(settled.find((each) => each.status === 'rejected')?.reason).toEqual(refused('loaded-elsewhere'));
  });

  async function aScaleNotForTrade(): Promise<string> {
    const id = ids.next();
    await house.get(UnitOfWork).run(async (tx) => {
      await tx.insert(Scale, {
        id,
        siteId: plant.siteId,
        code: 'S9',
        name: 'Scale for the house alone',
        intervalMilligrams: 500_000,
        maximumPermissibleErrorMilligrams: 1_000_000,
        checkEveryHours: 720,
      });
      const check = { deviationMilligrams: 0, passed: true, personId: null };
      await tx.insert(ScaleCheck, { ...check, id: ids.next(), scaleId: id, checkedAt: '2026-03-12T05:00:00.000Z' });
    });
    return id;
  }
});

describe('taking a unit off', () => {
  it('brings pallet and bag back, and both may go onto another vehicle', async () => {
    const [pallet, bag] = [await aPalletToLoad(), await aWholeBag()];
    const lines = [
      { formatId: plant.formatId, orderedCount: 100 },
      { gradeId: plant.gradeId, orderedCount: 1 },
    ];
    const [delivery, other] = [await aDelivery(house, plant, { lines }), await aDelivery(house, plant, { lines })];
    await load(delivery, pallet.sscc);
    await loadBag(delivery, bag.number);
    house.clock.pass(1);
    expect(await unload(delivery, { pallet: pallet.sscc, reason: 'other vehicle' })).toMatchObject({
      lines: [{ loadedCount: 0 }, { loadedCount: 1 }],
    });
    await unload(delivery, { bag: bag.number, reason: 'other vehicle' });
    expect(await palletOf(reader, pallet.id)).toMatchObject({ status: 'in-store', placeId: null });
    await expect(unload(delivery, { bag: bag.number, reason: 'again' })).rejects.toEqual(
      refused('not-on-this-delivery'),
    );
    await expect(unload(delivery, { reason: 'nothing' })).rejects.toMatchObject({ name: 'BadForm' });
    await load(other, pallet.sscc);
    await loadBag(other, bag.number);
    expect(await loadedUnitsOf(reader, delivery)).toEqual({ palletIds: [], bagIds: [] });
    expect(await loadedUnitsOf(reader, other)).toEqual({ palletIds: [pallet.id], bagIds: [bag.id] });
  });
});

describe('closing a delivery', () => {
  const close = (delivery: string, form: Partial<Parameters<CloseDelivery['execute']>[2]> = {}, key?: string) =>
    house.get(CloseDelivery).execute(asking(plant.actor, key), delivery, { seal: 'S123456', ...form });
  const count = (delivery: string, unitCount: number) => unitsCounted(house, plant, delivery, unitCount);

  it('refuses an empty vehicle, a count that does not agree, a time before the last unit, and less without a reason', async () => {
    const pallet = await aPalletToLoad();
    const delivery = await aDelivery(house, plant);
    await expect(close(delivery)).rejects.toEqual(refused('nothing-loaded'));
    const early = house.clock.now();
    house.clock.pass(5);
    await load(delivery, pallet.sscc);
    const reason = { shortReason: 'the rest waits' };
    await expect(close(delivery, { ...reason, closedAt: early })).rejects.toEqual(refused('closed-before-loading'));
    await expect(close(delivery, reason)).rejects.toEqual(refused('blind-count-missing'));
    await count(delivery, 1);
    await expect(close(delivery)).rejects.toEqual(refused('short-reason-needed', { lines: 'White sugar 2 kg: 860' }));
    await expect(close(delivery, { shortCode: 'other' })).rejects.toEqual(refused('short-words-needed'));
    expect(await close(delivery, reason)).toMatchObject({ noteNumber: expect.stringMatching(/^DN-2026-\d{6}$/) });
    expect(await palletOf(reader, pallet.id)).toMatchObject({ status: 'loaded', placeId: delivery });
  });

  it('is done once when it is sent twice, and nothing is changed afterwards', async () => {
    const [pallet, late] = await pallets(2);
    const delivery = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 100 }] });
    await load(delivery, pallet!.sscc);
    await count(delivery, 1);
    const first = await close(delivery, {}, 'close-key-once');
    expect(await close(delivery, {}, 'close-key-once')).toEqual(first);
    const closed = refused('delivery-is-closed', { note: first.noteNumber });
    await expect(close(delivery)).rejects.toEqual(closed);
    await expect(load(delivery, late!.sscc)).rejects.toEqual(closed);
    await expect(unload(delivery, { pallet: pallet!.sscc, reason: 'test' })).rejects.toEqual(closed);
    await vehicleLeft(house, plant, delivery);
    await expect(load(await aDelivery(house, plant), pallet!.sscc)).rejects.toEqual(
      refused('already-dispatched', { note: first.noteNumber }),
    );
    await expect(load(delivery, late!.sscc)).rejects.toEqual(refused('delivery-has-left', { note: first.noteNumber }));
  });

  it('looks at every unit once more: a hold placed after loading keeps the vehicle here', async () => {
    const pallet = await aPalletToLoad();
    const bag = await aWholeBag();
    const delivery = await aDelivery(house, plant, {
      lines: [
        { formatId: plant.formatId, orderedCount: 100 },
        { gradeId: plant.gradeId, orderedCount: 1 },
      ],
    });
    await load(delivery, pallet.sscc);
    await loadBag(delivery, bag.number);
    await held({ kind: 'bulk-bag', id: bag.id });
    await count(delivery, 2);
    await expect(close(delivery)).rejects.toEqual(refused('unit-on-hold', { unit: bag.number }));
    await unload(delivery, { bag: bag.number, reason: 'on hold' });
    await count(delivery, 1);
    await held({ kind: 'pallet', id: pallet.id });
    await expect(close(delivery, { shortReason: 'on hold' })).rejects.toEqual(
      refused('unit-on-hold', { unit: pallet.sscc }),
    );
    expect(await deliveryOf(reader, delivery)).toMatchObject({ status: 'loading', noteNumber: null });
  });

  it('numbers the notes without a gap, also where a close was refused in between', async () => {
    const [one, two] = await pallets(2);
    const lines = [{ formatId: plant.formatId, orderedCount: 100 }];
    const [first, second] = [await aDelivery(house, plant, { lines }), await aDelivery(house, plant, { lines })];
    await load(first, one!.sscc);
    await load(second, two!.sscc);
    await count(first, 1);
    await count(second, 1);
    const { noteNumber } = await close(first);
    await expect(close(second, { closedAt: '2026-03-01T00:00:00.000Z', reason: 'late' })).rejects.toBeDefined();
    const next = await close(second);
    expect(Number(next.noteNumber.slice(-6))).toBe(Number(noteNumber.slice(-6)) + 1);
  });

  it('cancels only what has nothing on, and a cancelled delivery takes nothing', async () => {
    const pallet = await aPalletToLoad();
    const delivery = await aDelivery(house, plant);
    const cancel = () => house.get(CancelDelivery).execute(asking(plant.actor), delivery, { reason: 'withdrawn' });
    await load(delivery, pallet.sscc);
    await expect(cancel()).rejects.toEqual(refused('units-still-on', { count: 1 }));
    await unload(delivery, { pallet: pallet.sscc, reason: 'withdrawn' });
    await cancel();
    await expect(load(delivery, pallet.sscc)).rejects.toEqual(refused('delivery-is-cancelled'));
    await expect(cancel()).rejects.toEqual(refused('delivery-is-cancelled'));
  });
});

describe('a delivery note', () => {
  const noteOf = async (paperId: string) => (await house.get(Papers).fileOf(paperId)).bytes;
  const voidNote = (delivery: string, form: Parameters<VoidDeliveryNote['execute']>[2]) =>
    house.get(VoidDeliveryNote).execute(asking(plant.actor), delivery, form);

  it('says what went, lot by lot, adds up, and its SSCC symbols read back as the units that were loaded', async () => {
    const loaded = [...(await pallets(3, 'L6071A1')), ...(await pallets(2, 'L6071A2'))];
    const bag = await aWholeBag();
    const delivery = await aDelivery(house, plant, {
      orderNumber: '4500987',
      lines: [
        { formatId: plant.formatId, orderedCount: 600 },
        { gradeId: plant.gradeId, orderedCount: 1 },
      ],
    });
    for (const { sscc } of loaded) await load(delivery, sscc);
    await loadBag(delivery, bag.number);
    const closed = await deliveryClosed(house, plant, delivery, { blindCount: 6, remarks: 'Ring before unloading' });
    const pdf = await noteOf(closed.paperId);
    const read = (await symbolsOf(pdf)).filter(({ prefix }) => prefix === ']C1').map(({ text }) => text);
    expect(read.sort()).toEqual([...loaded, bag].map(({ sscc }) => `00${sscc}`).sort());
    const text = textOf(pdf);
    // 500 packs of 2 kg and a bag of a tonne; gross: 12 g of wrapping a pack, 25 kg a pallet, 1.8 kg the bag.
    for (const words of [
      closed.noteNumber,
      'Fernhill Foods (invented)',
      '4500987',
      'S123456',
      'AQ 123 D',
      'Lot L6071A1: 3 pallets',
      'Lot L6071A2: 2 pallets',
      'Lots on this note: L6071A1, L6071A2',
      '2\u2009000.0',
      '2\u2009132.8',
      'White sugar 2 kg, 500 of 600',
      'Ring before unloading',
      `page 1 of ${pageCount(pdf)}`,
    ]) {
      expect(text).toContain(words);
    }
    const [facts] = await reader.sql<{ facts: string }>`SELECT "facts" FROM "paper" WHERE "id" = ${closed.paperId}`;
    expect((JSON.parse(facts!.facts) as { totals: object }).totals).toEqual({
      palletCount: 5,
      bagCount: 1,
      packCount: 500,
      netGrams: 500 * 2000 + bag.netGrams,
      grossGrams: 500 * 2012 + 5 * 25_000 + bag.netGrams + 1_800,
    });
  });

  it('that is void stays in the list with its reason; the next version has a number of its own and says so', async () => {
    const pallet = await aPalletToLoad();
    const delivery = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 100 }] });
    await expect(voidNote(delivery, { correction: 'incorrect-data', reason: 'test' })).rejects.toEqual(
      refused('note-not-issued'),
    );
    await load(delivery, pallet.sscc);
    const first = await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await vehicleLeft(house, plant, delivery);
    const answer = await voidNote(delivery, { correction: 'incorrect-data', reason: 'seal misread', seal: 'S654321' });
    expect(answer.voidNumber).toBe(first.noteNumber);
    expect(await palletOf(reader, pallet.id)).toMatchObject({ status: 'dispatched' });
    const text = textOf(await noteOf(answer.paperId!));
    expect(text).toContain(`version 2, in the place of ${first.noteNumber}, which is void`);
    expect(text).toContain('S654321');
    const { notes } = await deliveryView(reader, plant.siteId, first.noteNumber, house.clock.now());
    expect(notes).toMatchObject([
      { number: first.noteNumber, version: 1, isVoid: true, voidReason: 'seal misread' },
      { number: answer.noteNumber, version: 2, isVoid: false },
    ]);
    const listed = await paperPage(reader, plant.siteId, { before: null, limit: 200 });
    expect(listed.find((paper) => paper.number === first.noteNumber)).toMatchObject({
      isVoid: true,
      voidReason: 'seal misread',
    });
  });

  it('that two people mean at once is made void once: the second is told that another version stands', async () => {
    const pallet = await aPalletToLoad();
    const delivery = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 100 }] });
    await load(delivery, pallet.sscc);
    const { noteNumber: note } = await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    const misread = { correction: 'incorrect-data', reason: 'seal misread', note } as const;
    const [first, second] = await Promise.allSettled([
      voidNote(delivery, { ...misread, seal: 'S1' }),
      voidNote(delivery, { ...misread, seal: 'S2' }),
    ]);
    expect(first.status).toBe('fulfilled');
    expect(second).toMatchObject({ status: 'rejected', reason: { code: 'other-note-stands', facts: { note } } });
    const { notes } = await deliveryView(reader, plant.siteId, note, house.clock.now());
    expect(notes.map(({ isVoid }) => isVoid)).toEqual([true, false]);
  });

  it('that did not come to pass opens the loading again, and the next close goes on with the next version', async () => {
    const [pallet, other] = await pallets(2);
    const delivery = await aDelivery(house, plant, { lines: [{ formatId: plant.formatId, orderedCount: 200 }] });
    const bagLine = await aBagDelivery(1);
    const bag = await aWholeBag();
    await load(delivery, pallet!.sscc);
    await loadBag(bagLine, bag.number);
    const first = await deliveryClosed(house, plant, delivery, { blindCount: 1 });
    await deliveryClosed(house, plant, bagLine, { blindCount: 1 });
    for (const one of [delivery, bagLine]) await vehicleLeft(house, plant, one);
    house.clock.pass(1);
    for (const one of [delivery, bagLine]) await voidNote(one, { correction: 'did-not-occur', reason: 'still here' });
    expect(await deliveryOf(reader, delivery)).toMatchObject({ status: 'loading', noteNumber: null });
    await unload(bagLine, { bag: bag.number, reason: 'stays here' });
    await load(delivery, other!.sscc);
    const again = await deliveryClosed(house, plant, delivery, { blindCount: 2 });
    expect(textOf(await noteOf(again.paperId))).toContain(`in the place of ${first.noteNumber}`);
  });
});

describe('the states that dispatch changes', () => {
  it('are what the facts say: deliveries and pallets', async () => {
    const deliveries = await reader.sql`
      SELECT "delivery_id" AS "deliveryId", "status", "loaded_count" AS "loadedCount" FROM "delivery_state"
      ORDER BY "delivery_id"`;
    expect(await deliveryStatesByFacts(reader)).toEqual(deliveries);
    const stored = await reader.sql`
      SELECT "pallet_id" AS "palletId", "status", "place_id" AS "placeId" FROM "pallet_state" ORDER BY "pallet_id"`;
    expect(await wholePalletStates(reader)).toEqual(stored);
  });

  it('refuse with sentences that the catalogue has', () => {
    expect(codes.size).toBeGreaterThan(20);
    for (const code of codes) expect([code, hasSentence(code)]).toEqual([code, true]);
  });
});
