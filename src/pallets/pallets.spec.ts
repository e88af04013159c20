import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aPackedRun, aPallet, aTippedBag } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { pageCount, symbolsOf, textOf } from '../../test/support/read-pdf.js';
import { ChangeCode } from '../packing/change-code.js';
import { CloseRun } from '../packing/close-run.js';
import { runOf } from '../packing/packing-runs.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Papers } from '../platform/printing/papers.js';
import type { Refusal } from '../platform/refusal.js';
import { BuildPallet } from './build-pallet.js';
import { CorrectPallet } from './correct-pallet.js';
import { LabelPallet } from './label-pallet.js';
import { MergePallets } from './merge-pallets.js';
import { MovePallet } from './move-pallet.js';
import { contentsOf, descentsOf, findPallet, palletOf, palletsOfLot, palletsOfRanges } from './pallet-list.js';
import { palletStatesByFacts } from './pallet-states.js';
import { RestackPallet } from './restack-pallet.js';
import { SplitPallet } from './split-pallet.js';
import { TakePalletApart } from './take-pallet-apart.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;

beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house, { packsPerPallet: 100 });
  reader = readerOf(house);
});
afterAll(async () => {
  await house.close();
});

const build = (form: Partial<Parameters<BuildPallet['execute']>[1]>, key?: string) =>
  house.get(BuildPallet).execute(asking(plant.actor, key), { label: false, ...form });

const refused = (code: string, facts: object = {}) =>
  expect.objectContaining({ code, facts: expect.objectContaining(facts) as unknown }) as unknown as Refusal;

/** Each test packs on its own run: the line is freed again. */
async function aClosedRun(
  packCount: number,
  code = 'L6071A1',
): Promise<{ runId: string; number: string; lotId: string }> {
  const run = await aPackedRun(house, plant, { packCount, code });
  await house.get(CloseRun).execute(asking(plant.actor), run.runId, { packCount, loosePackCount: 0 });
  house.clock.pass(1);
  return run;
}

describe('building a pallet', () => {
  it('takes the next packs of the run, full pallets first and the rest as a part pallet', async () => {
    const { runId } = await aClosedRun(230);
    const pallets = [await build({ run: runId }), await build({ run: runId }), await build({ run: runId })];
    expect(pallets.map(({ packCount, isFull }) => ({ packCount, isFull }))).toEqual([
      { packCount: 100, isFull: true },
      { packCount: 100, isFull: true },
      { packCount: 30, isFull: false },
    ]);
    const contents = await contentsOf(reader, [pallets[2]!.id]);
    expect(contents).toMatchObject([{ runId, fromCount: 200, toCount: 230, lotCode: 'L6071A1' }]);
    await expect(build({ run: runId })).rejects.toEqual(refused('nothing-to-palletise'));
  });

  it('counts the packs per lot where the coder was changed in between', async () => {
    const run = await aPackedRun(house, plant, { packCount: 60, code: 'L6071A1' });
    const other = await house
      .get(ChangeCode)
      .execute(asking(plant.actor), run.runId, { code: 'L6071A2', packCount: 60 });
    const pallet = await build({ run: run.runId });
    expect(await contentsOf(reader, [pallet.id])).toMatchObject([
      { lotId: run.lotId, fromCount: 0, toCount: 60 },
      { lotId: other.lotId, fromCount: 60, toCount: 100 },
    ]);
    await house.get(CloseRun).execute(asking(plant.actor), run.runId, { packCount: 100, loosePackCount: 0 });
  });

  it('is a count of the run where it ends beyond the last one, as long as the run is open', async () => {
    house.clock.pass(5);
    const run = await aPackedRun(house, plant, { packCount: 40 });
    await build({ run: run.runId });
    expect((await runOf(reader, run.runId)).packCount).toBe(100);
    const ahead = { ranges: [{ run: run.number, fromCount: 120, toCount: 150 }] };
    await expect(build(ahead)).rejects.toEqual(refused('range-beyond-count', { packCount: 100 }));
    await house.get(CloseRun).execute(asking(plant.actor), run.runId, { packCount: 110, loosePackCount: 10 });
    const beyond = { ranges: [{ run: run.number, fromCount: 100, toCount: 120 }] };
    await expect(build(beyond)).rejects.toEqual(refused('range-beyond-count', { packCount: 110 }));
  });

  it('refuses packs that stand on another pallet, and says on which', async () => {
    const { number } = await aClosedRun(200);
    const first = await build({ ranges: [{ run: number, fromCount: 20, toCount: 60 }] });
    await expect(build({ ranges: [{ run: number, fromCount: 50, toCount: 90 }] })).rejects.toEqual(
      refused('packs-on-another-pallet', { pallet: first.sscc, fromCount: 50, toCount: 60 }),
    );
    await build({ ranges: [{ run: number, fromCount: 60, toCount: 90 }] });
  });

  it('refuses what is no pallet: no packs, the same packs twice, too many, of two formats, of no known code', async () => {
    const { number, runId } = await aClosedRun(200);
    const ranges = (...parts: [number, number][]) => ({
      ranges: parts.map(([fromCount, toCount]) => ({ run: number, fromCount, toCount })),
    });
    await expect(build(ranges([10, 10]))).rejects.toEqual(refused('range-without-packs'));
    await expect(build(ranges([0, 10], [5, 15]))).rejects.toEqual(refused('ranges-overlap'));
    await expect(build(ranges([0, 101]))).rejects.toEqual(refused('pallet-over-full', { packsPerPallet: 100 }));
    const otherFormat = { ...ranges([0, 10]), formatId: plant.otherFormatId };
    await expect(build(otherFormat)).rejects.toEqual(refused('mixed-formats'));
    const brown = await aPackedRun(house, plant, { packCount: 50, formatId: plant.otherFormatId });
    const mixed = [...ranges([0, 10]).ranges, { run: brown.number, fromCount: 0, toCount: 10 }];
    await expect(build({ ranges: mixed })).rejects.toEqual(refused('mixed-formats', { formats: 'WS-2KG, BS-1KG' }));
    await house.get(CloseRun).execute(asking(plant.actor), brown.runId, { packCount: 50, loosePackCount: 50 });
    await expect(build({ run: runId, ...ranges([0, 10]) })).rejects.toMatchObject({ name: 'BadForm' });
    await expect(build({})).rejects.toMatchObject({ name: 'BadForm' });
    await expect(build({ run: 'PR-2026-999999' })).rejects.toMatchObject({ name: 'NotFound', kind: 'packing-run' });
    const early = { run: runId, builtAt: '2026-03-12T05:00:00.000Z', reason: 'test' };
    await expect(build(early)).rejects.toEqual(refused('built-before-run'));
  });

  it('refuses packs for which nobody recorded the printed code', async () => {
    house.clock.pass(5);
    const run = await aPackedRun(house, plant, { packCount: 20 });
    await house.get(CloseRun).execute(asking(plant.actor), run.runId, { packCount: 20, loosePackCount: 20 });
    await house.databases.writer.query(
      `UPDATE "coder_change" SET "voided_by" = 'test' WHERE "run_id" = '${run.runId}'`,
    );
    await expect(build({ run: run.runId })).rejects.toEqual(refused('lot-unknown', { run: run.number }));
  });

  it('gives the same packs to one of two that come at once', async () => {
    const { number } = await aClosedRun(100);
    const both = [0, 1].map(() => build({ ranges: [{ run: number, fromCount: 0, toCount: 60 }] }));
    const settled = await Promise.allSettled(both);
    expect(settled.filter((one) => one.status === 'fulfilled')).toHaveLength(1);
    expect(settled.find((one) => one.status === 'rejected')?.reason).toEqual(refused('packs-on-another-pallet'));
  });

  it('is built once when it is sent twice', async () => {
    const { runId } = await aClosedRun(100);
    const first = await build({ run: runId, packCount: 40 }, 'same-key-twice');
    expect(await build({ run: runId, packCount: 40 }, 'same-key-twice')).toEqual(first);
    expect(await palletsOfRanges(reader, [{ runId, fromCount: 0, toCount: null }])).toHaveLength(1);
  });
});

describe('a pallet in store', () => {
  it('is found by its SSCC however it is typed or scanned, and by its id', async () => {
    const { runId } = await aClosedRun(100);
    const { id, sscc } = await build({ run: runId });
    for (const typed of [
      sscc,
      `00${sscc}`,
      `(00) ${sscc}`,
      `]C100${sscc}`,
      `${sscc.slice(0, 9)} ${sscc.slice(9)}`,
      id,
    ]) {
      expect((await findPallet(reader, plant.siteId, typed)).id).toBe(id);
    }
    await expect(findPallet(reader, plant.siteId, '095201230000000012')).rejects.toMatchObject({ kind: 'pallet' });
  });

  it('is moved; a move that is told late does not undo a later one', async () => {
    const { runId } = await aClosedRun(100);
    const { id, sscc } = await build({ run: runId });
    const early = house.clock.now();
    house.clock.pass(30);
    const move = (form: Parameters<MovePallet['execute']>[2]) =>
      house.get(MovePallet).execute(asking(plant.actor), sscc, form);
    await move({ placeId: plant.placeIds.dock });
    await move({ placeId: plant.placeIds.store, movedAt: early });
    expect((await palletOf(reader, id)).placeId).toBe(plant.placeIds.dock);
    const before = { placeId: plant.placeIds.dock, movedAt: '2026-03-12T05:30:00.000Z', reason: 'test' };
    await expect(move(before)).rejects.toEqual(refused('before-it-was-built'));
    await expect(move({ placeId: plant.customerId })).rejects.toMatchObject({ kind: 'store-place' });
  });

  it('goes on under new SSCCs when it is split, restacked, relabelled and merged; the history does not change', async () => {
    const { runId, lotId } = await aClosedRun(100);
    const whole = await build({ run: runId });
    const halves = await house.get(SplitPallet).execute(asking(plant.actor), whole.id, {
      parts: [{ shares: [{ packCount: 40 }] }, { shares: [{ packCount: 60, lot: 'l 6071 a1' }] }],
      reason: 'half pallets ordered',
      label: false,
    });
    expect(halves.pallets.map(({ packCount }) => packCount)).toEqual([40, 60]);
    const restacked = await house
      .get(RestackPallet)
      .execute(asking(plant.actor), halves.pallets[0]!.id, 'restacked', { reason: 'broken board' });
    const relabelled = await house
      .get(RestackPallet)
      .execute(asking(plant.actor), restacked.sscc, 'relabelled', { reason: 'label torn off' });
    const merged = await house.get(MergePallets).execute(asking(plant.actor), {
      pallets: [{ pallet: relabelled.sscc }, { pallet: halves.pallets[1]!.sscc }],
      reason: 'one customer takes all',
    });
    expect(merged).toMatchObject({ packCount: 100, isFull: true });
    expect(new Set([whole, ...halves.pallets, restacked, relabelled, merged].map(({ sscc }) => sscc)).size).toBe(6);
    expect((await palletOf(reader, whole.id)).status).toBe('taken-apart');
    expect((await descentsOf(reader, merged.id)).map(({ how }) => how)).toEqual(['merged', 'merged']);
    const where = await palletsOfLot(reader, lotId);
    expect(where.filter((row) => row.runId === runId).map((row) => row.palletId)).toEqual(
      expect.arrayContaining([merged.id]),
    );
    await expect(
      house.get(RestackPallet).execute(asking(plant.actor), whole.id, 'restacked', { reason: 'again' }),
    ).rejects.toEqual(refused('pallet-not-in-store', { status: 'taken-apart' }));
  });

  it('may hold any pack of its lot after a split, and its answers say that they are not certain', async () => {
    const { runId } = await aClosedRun(100);
    const whole = await build({ run: runId });
    const { pallets } = await house.get(SplitPallet).execute(asking(plant.actor), whole.id, {
      parts: [{ shares: [{ packCount: 50 }] }, { shares: [{ packCount: 50 }] }],
      reason: 'test',
      label: false,
    });
    const found = await palletsOfRanges(reader, [{ runId, fromCount: 0, toCount: 10 }]);
    expect(found.map(({ palletId, isCertain }) => ({ palletId, isCertain }))).toEqual(
      expect.arrayContaining(pallets.map(({ id }) => ({ palletId: id, isCertain: false }))),
    );
    expect(found).toHaveLength(2);
  });

  it('is split into parts that make up the whole, lot by lot', async () => {
    const run = await aPackedRun(house, plant, { packCount: 30, code: 'L6071A1' });
    await house.get(ChangeCode).execute(asking(plant.actor), run.runId, { code: 'L6071A2', packCount: 30 });
    const { id } = await build({ run: run.runId });
    await house.get(CloseRun).execute(asking(plant.actor), run.runId, { packCount: 100, loosePackCount: 0 });
    const split = (...parts: { lot?: string; packCount: number }[][]) =>
      house
        .get(SplitPallet)
        .execute(asking(plant.actor), id, { parts: parts.map((shares) => ({ shares })), reason: 'test', label: false });
    await expect(split([{ packCount: 50 }], [{ packCount: 50 }])).rejects.toEqual(refused('which-lot'));
    await expect(split([{ lot: 'L6071A9', packCount: 50 }], [])).rejects.toEqual(refused('lot-not-on-pallet'));
    const tooMany = [{ lot: 'L6071A1', packCount: 31 }];
    await expect(split(tooMany, [{ lot: 'L6071A2', packCount: 69 }])).rejects.toEqual(refused('parts-not-the-whole'));
    await expect(split([{ lot: 'L6071A1', packCount: 30 }], [{ lot: 'L6071A2', packCount: 60 }])).rejects.toEqual(
      refused('parts-not-the-whole', { left: 10 }),
    );
    const { pallets } = await split(
      [{ lot: 'L6071A2', packCount: 50 }],
      [
        { lot: 'L6071A1', packCount: 30 },
        { lot: 'L6071A2', packCount: 20 },
      ],
    );
    expect(await contentsOf(reader, [pallets[1]!.id])).toMatchObject([
      { lotCode: 'L6071A1', fromCount: 0, toCount: 30 },
      { lotCode: 'L6071A2', fromCount: 80, toCount: 100 },
    ]);
  });

  it('is not merged with itself, with another format, or into more than a pallet takes', async () => {
    const { number } = await aClosedRun(200);
    const one = await build({ ranges: [{ run: number, fromCount: 0, toCount: 60 }] });
    const other = await build({ ranges: [{ run: number, fromCount: 60, toCount: 120 }] });
    const brown = await aPackedRun(house, plant, { packCount: 50, formatId: plant.otherFormatId });
    const otherFormat = await build({ run: brown.runId, packCount: 20 });
    await house.get(CloseRun).execute(asking(plant.actor), brown.runId, { packCount: 50, loosePackCount: 30 });
    const merge = (...pallets: string[]) =>
      house
        .get(MergePallets)
        .execute(asking(plant.actor), { pallets: pallets.map((pallet) => ({ pallet })), reason: 'test' });
    await expect(merge(one.sscc, one.id)).rejects.toEqual(refused('same-pallet-twice'));
    await expect(merge(one.sscc, otherFormat.sscc)).rejects.toEqual(refused('mixed-formats'));
    await expect(merge(one.sscc, other.sscc)).rejects.toEqual(refused('pallet-over-full', { packCount: 120 }));
  });

  it('is taken apart once, and then its packs may stand on another pallet', async () => {
    const { number } = await aClosedRun(100);
    const ranges = [{ run: number, fromCount: 0, toCount: 100 }];
    const { id } = await build({ ranges });
    const apart = () => house.get(TakePalletApart).execute(asking(plant.actor), id, { reason: 'new cartons' });
    const settled = await Promise.allSettled([apart(), apart()]);
    expect(settled.filter((one) => one.status === 'fulfilled')).toHaveLength(1);
    expect(settled.find((one) => one.status === 'rejected')?.reason).toEqual(refused('pallet-not-in-store'));
    expect((await build({ ranges })).isFull).toBe(true);
    await expect(house.get(LabelPallet).execute(asking(plant.actor), id)).rejects.toEqual(
      refused('pallet-taken-apart'),
    );
  });

  it('that is not there is corrected: its packs are free and its SSCC is not used again', async () => {
    const { number } = await aClosedRun(100);
    const ranges = [{ run: number, fromCount: 0, toCount: 100 }];
    const wrong = await build({ ranges, placeId: plant.placeIds.store });
    const correct = (pallet: string) =>
      house.get(CorrectPallet).execute(asking(plant.actor), pallet, { reason: 'twice' });
    await correct(wrong.id);
    await expect(findPallet(reader, plant.siteId, wrong.sscc)).rejects.toMatchObject({ kind: 'pallet' });
    const right = await build({ ranges });
    expect(right.sscc > wrong.sscc).toBe(true);
    const next = await house
      .get(RestackPallet)
      .execute(asking(plant.actor), right.id, 'restacked', { reason: 'broken board' });
    await expect(correct(next.id)).rejects.toEqual(refused('pallet-has-history'));
    await expect(correct(right.id)).rejects.toEqual(refused('pallet-not-in-store'));
  });
});

describe('the label of a pallet', () => {
  const labelOf = async (paperId: string) => (await house.get(Papers).fileOf(paperId)).bytes;

  it('says what stands on it, and its symbols read back as they were meant', async () => {
    await aTippedBag(house, plant);
    const { runId } = await aClosedRun(100);
    const { sscc, labelPaperId } = await aPallet(house, plant, { run: runId, label: true });
    const pdf = await labelOf(labelPaperId!);
    expect(pageCount(pdf)).toBe(1);
    expect((await symbolsOf(pdf)).map(({ prefix, text }) => prefix + text).sort()).toEqual(
      [`]C100${sscc}`, ']C1106071A1', ']C1020952012300010337100'].sort(),
    );
    for (const word of ['Alder Quay', 'White sugar 2 kg', 'L6071A1', '100', '200.0 kg'])
      expect(textOf(pdf)).toContain(word);
  });

  it('codes nothing but the SSCC where there are several lots, and names them in words', async () => {
    house.clock.pass(5);
    const run = await aPackedRun(house, plant, { packCount: 30, formatId: plant.otherFormatId });
    await house.get(ChangeCode).execute(asking(plant.actor), run.runId, { code: 'L6071A2', packCount: 30 });
    const { sscc, labelPaperId } = await aPallet(house, plant, { run: run.runId, packCount: 80, label: true });
    const pdf = await labelOf(labelPaperId!);
    expect((await symbolsOf(pdf)).map(({ text }) => text)).toEqual([`00${sscc}`]);
    expect(textOf(pdf)).toContain('L6071A1 × 30 · best before 12 MAR 2028');
    expect(textOf(pdf)).toContain('L6071A2 × 50');
    expect(textOf(pdf)).toContain('PART PALLET');
  });
});

describe('the states of pallets', () => {
  it('are what the facts say', async () => {
    const stored = await reader.sql`
      SELECT "pallet_id" AS "palletId", "status", "place_id" AS "placeId", "changed_at" AS "changedAt"
      FROM "pallet_state" ORDER BY "pallet_id"`;
    expect(stored.length).toBeGreaterThan(20);
    expect(await palletStatesByFacts(reader)).toEqual(stored);
  });
});
