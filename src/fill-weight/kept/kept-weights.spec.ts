import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPackWeigher } from '../../../test/support/a-pack-weigher.js';
import { aPlant, type Plant } from '../../../test/support/a-plant.js';
import { aRun } from '../../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../../test/support/house.js';
import { encodeWeights } from '../../core/weight-blocks/encode-weights.js';
import { shiftNets } from '../../core/weight-blocks/shift-nets.js';
import { joinWeights, pickWeights, sliceWeights, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import { addSummaries, noWeights, summariseWeights } from '../../core/weight-blocks/weight-summary.js';
import { someWeights } from '../../core/weight-blocks/weights.examples.js';
import { CloseRun } from '../../packing/close-run.js';
import { shifted } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { UnitOfWork, type Tx } from '../../platform/database/unit-of-work.js';
import { SystemIds } from '../../platform/ids.js';
import { WeightBatch } from '../weight-batch.entity.js';
import { addToSummaries } from './add-to-summaries.js';
import { CorrectTare } from './correct-tare.js';
import { DropWeights } from './drop-weights.js';
import { instantOf, extentOf, spanOf } from './instants-of-weights.js';
import { weightOfSequence, weightsOfHour, weightsOfRun } from './kept-weights.js';
import { rebuildSummaries } from './rebuild-summaries.js';
import { SealWeights } from './seal-weights.js';
import { WeightBlock } from './weight-block.entity.js';
import { histogramsOfLine, hoursOfRun, summariesOfLine, summariesOfRun } from './weight-questions.js';
import { WeightHour } from './weight-hour.entity.js';
import { WithdrawTareCorrection } from './withdraw-tare-correction.js';
import { yardstickFor } from './yardsticks.js';

const ids = new SystemIds();
const hourCentiseconds = 360_000;
const hourBegin = Math.floor(Date.UTC(2026, 5, 1, 8) / 10);

describe('the weights that are kept of a run', () => {
  let house: TestHouse;
  let plant: Plant;
  let reader: ReadFrom;
  let plantCount = 0;

  beforeAll(async () => {
    house = await openHouse();
    reader = house.app.get<ReadFrom>(READER, { strict: false });
  });
  afterAll(() => house.close());

  const inUnit = <Answer>(work: (tx: Tx) => Promise<Answer>): Promise<Answer> => house.get(UnitOfWork).run(work);

  interface Weighed {
    readonly runId: string;
    readonly weigherId: string;
    readonly lineId: string;
  }

  /** A run on a line of a plant of its own. */
  async function aWeighedRun(): Promise<Weighed> {
    plantCount += 1;
    plant = await aPlant(house, { siteCode: `S${plantCount}` });
    const [lineId] = plant.lineIds;
    const { weigherId } = await aPackWeigher(house, plant, { lineId });
    const { runId } = await aRun(house, plant, { lineId });
    return { runId, weigherId, lineId };
  }

  /** What the way in does with a batch that it accepts. */
  async function accept({ runId, weigherId }: Weighed, columns: WeightColumns, series = 'A'): Promise<void> {
    await inUnit(async (tx) => {
      await tx.insert(WeightBatch, {
        id: ids.next(),
        weigherId,
        runId,
        series,
        ...extentOf(columns),
        weights: Buffer.from(encodeWeights(columns)),
        digest: '',
        entryId: ids.next(),
        receivedAt: house.clock.now(),
      });
      await addToSummaries(tx, [{ runId, weigherId, series, nominalMilligrams: 2_000_000, columns }]);
    });
  }

  /** Weights of 2 kg packs over about two hours, some pushed out, a few far too light. */
  function twoHours(seed: number, count = 4600): WeightColumns {
    const columns = someWeights({
      count,
      seed,
      meanMilligrams: 2_004_000,
      heads: 'by-turns',
      rejectedShare: 0.01,
      firstAtCentiseconds: hourBegin + 100_000,
    });
    columns.netMilligrams[17] = 1_930_000;
    if (columns.isRejected !== null) columns.isRejected[17] = 0;
    return columns;
  }

  const cut = (columns: WeightColumns, size: number): WeightColumns[] =>
    Array.from({ length: Math.ceil(columns.count / size) }, (_, part) =>
      sliceWeights(columns, part * size, (part + 1) * size),
    );

  const close = (runId: string): Promise<unknown> =>
    house.get(CloseRun).execute(asking(plant.actor), runId, { packCount: 0, loosePackCount: 0 });

  const read = async (runId: string): Promise<WeightColumns> =>
    joinWeights((await weightsOfRun(reader, runId)).parts.map(({ columns }) => columns));

  it('are summed up as they come, whatever the batches', async () => {
    const columns = twoHours(1);
    const truth = summariseWeights(columns, yardstickFor(2_000_000));
    expect(truth.accepted.beyondT2Count).toBe(1);
    for (const size of [4600, 700, 333]) {
      const run = await aWeighedRun();
      for (const batch of cut(columns, size).reverse()) await accept(run, batch);
      const [found, ...others] = await summariesOfRun(reader, run.runId);
      expect(others).toEqual([]);
      expect(found).toMatchObject({ weigherId: run.weigherId, yardstick: yardstickFor(2_000_000), ...spanOf(columns) });
      expect(found?.summary).toEqual(truth);
      const hours = await hoursOfRun(reader, run.runId);
      expect(hours.map(({ hourAt }) => hourAt.slice(11, 13))).toEqual(['08', '09', '10']);
      const whole = hours.reduce((sum, { summary }) => addSummaries(sum, summary), noWeights());
      expect(whole).toEqual(truth);
      expect(await inUnit((tx) => rebuildSummaries(tx, run.runId))).toBe('as-stored');
    }
  });

  it('are all counted where two counters of one weigher send at once', async () => {
    const run = await aWeighedRun();
    await accept(run, sliceWeights(twoHours(11), 0, 1));
    const parts = cut(sliceWeights(twoHours(11), 1, 401), 50);
    await Promise.all(parts.map((columns, index) => accept(run, columns, index % 2 === 0 ? 'A' : 'B')));
    expect((await summariesOfRun(reader, run.runId))[0]?.summary).toEqual(
      summariseWeights(sliceWeights(twoHours(11), 0, 401), yardstickFor(2_000_000)),
    );
  });

  it('are sealed once the run is closed, read back to the last digit, and late ones sealed too', async () => {
    const columns = twoHours(2, 10_000);
    const run = await aWeighedRun();
    const late = sliceWeights(columns, 500, 900);
    const rest = [sliceWeights(columns, 0, 500), ...cut(sliceWeights(columns, 900, 10_000), 1000)];
    for (const batch of rest) await accept(run, batch);
    await house.get(SealWeights).look();
    const tail = () => reader.sql`SELECT "id" FROM "weight_batch" WHERE "run_id" = ${run.runId}`;
    expect((await tail()).length).toBeGreaterThan(0);
    expect((await tail()).length).toBeLessThan(rest.length);
    await close(run.runId);
    await house.get(SealWeights).look();
    expect(await tail()).toEqual([]);
    await accept(run, late);
    expect(await read(run.runId)).toEqual(columns);
    await house.get(SealWeights).look();
    expect(await tail()).toEqual([]);
    expect(await read(run.runId)).toEqual(columns);
    expect((await summariesOfRun(reader, run.runId))[0]?.summary).toEqual(
      summariseWeights(columns, yardstickFor(2_000_000)),
    );
    expect(await inUnit((tx) => rebuildSummaries(tx, run.runId))).toBe('as-stored');
  });

  it('are found one by one, and by the hour', async () => {
    const columns = twoHours(3);
    const run = await aWeighedRun();
    for (const batch of cut(columns, 900)) await accept(run, batch);
    const place = 3210;
    const of = { weigherId: run.weigherId, series: 'A', sequence: columns.sequences[place] ?? 0 };
    const { parts } = await weightOfSequence(reader, of);
    expect(parts.map((part) => part.columns)).toEqual([sliceWeights(columns, place, place + 1)]);
    expect((await weightOfSequence(reader, { ...of, series: 'B' })).parts).toEqual([]);
    const inHour = await weightsOfHour(reader, {
      weigherId: run.weigherId,
      hourAt: instantOf(hourBegin + hourCentiseconds),
    });
    const expected = columns.atCentiseconds.filter(
      (at) => at >= hourBegin + hourCentiseconds && at < hourBegin + 2 * hourCentiseconds,
    );
    expect(joinWeights(inHour.parts.map((part) => part.columns)).atCentiseconds).toEqual(expected);
  });

  it('are found one by one where some came late', async () => {
    const columns = twoHours(12, 1200);
    const run = await aWeighedRun();
    const of = (place: number) => ({
      ...{ weigherId: run.weigherId, series: 'A', sequence: columns.sequences[place] ?? 0 },
    });
    const places = [100, 450, 700, 899, 1100];
    // The first reaches around the second and into it, and the second around the third.
    const inside = (place: number): number =>
      place < 400 || place >= 1000 || place === 450 ? 0 : place === 700 ? 2 : 1;
    const order = Uint32Array.from({ length: columns.count }, (_, place) => place);
    const parts = [0, 1, 2].map((part) =>
      pickWeights(
        columns,
        order.filter((place) => inside(place) === part),
      ),
    );
    const [first, second, third] = parts;
    if (first === undefined || second === undefined || third === undefined) throw new Error('three parts');
    await accept(run, first);
    await accept(run, second);
    expect((await weightOfSequence(reader, of(700))).parts).toEqual([]);
    await accept(run, third);
    const found = async (): Promise<unknown[]> => {
      const kept = await Promise.all(places.map((place) => weightOfSequence(reader, of(place))));
      return kept.map(({ parts: [part], unreadable }) => [part?.columns, unreadable]);
    };
    const truth = places.map((place) => [sliceWeights(columns, place, place + 1), []]);
    expect(await found()).toEqual(truth);
    await close(run.runId);
    await house.get(SealWeights).look();
    expect(await found()).toEqual(truth);
  });

  it('are summed up over a line and any hours, runs across the edges by their hours', async () => {
    const first = await aWeighedRun();
    const { lineId } = first;
    const all = [twoHours(4), twoHours(5)].map((columns, index) => ({
      ...columns,
      atCentiseconds: columns.atCentiseconds.map((at) => at + index * 10 * hourCentiseconds),
      sequences: columns.sequences.map((sequence) => sequence + index * 100_000),
    }));
    await close(first.runId);
    const second = { ...first, runId: (await aRun(house, plant, { lineId })).runId };
    for (const [index, columns] of all.entries()) await accept(index === 0 ? first : second, columns);
    for (const [fromHour, toHour] of [
      [0, 24],
      [0, 1],
      [1, 11],
      [2, 12],
      [9, 10],
      [11, 12],
    ] as const) {
      const [from, to] = [hourBegin + fromHour * hourCentiseconds, hourBegin + toHour * hourCentiseconds];
      const truth = all.reduce((sum, columns) => {
        const places = columns.atCentiseconds.map((at) => Number(at >= from && at < to));
        const begin = places.indexOf(1);
        const own = begin < 0 ? sliceWeights(columns, 0, 0) : sliceWeights(columns, begin, places.lastIndexOf(1) + 1);
        return addSummaries(sum, summariseWeights(own, yardstickFor(2_000_000)));
      }, noWeights());
      const stretch = { lineId, fromAt: instantOf(from), toAt: instantOf(to) };
      const found = await summariesOfLine(reader, stretch);
      expect(found).toHaveLength(truth.accepted.packCount === 0 ? 0 : 1);
      if (found[0] === undefined) continue;
      const bins = (await histogramsOfLine(reader, stretch))[0];
      const { accepted, rejected } = found[0].summary;
      expect({ ...accepted, histogram: bins?.accepted }).toEqual(truth.accepted);
      expect({ ...rejected, histogram: bins?.rejected }).toEqual(truth.rejected);
    }
  });

  it('beyond T2 are kept one by one, accepted ones only', async () => {
    const columns = twoHours(6);
    const run = await aWeighedRun();
    if (columns.isRejected !== null) columns.isRejected[18] = 1;
    columns.netMilligrams[18] = 0;
    await accept(run, columns);
    const rows = await reader.sql<Record<string, unknown>>`
      SELECT "net_milligrams" AS "net", "head", "weighed_at" AS "at" FROM "short_pack" WHERE "run_id" = ${run.runId}`;
    expect(rows).toEqual([{ net: 1_930_000, head: 6, at: instantOf(columns.atCentiseconds[17] ?? 0) }]);
    const [found] = await summariesOfRun(reader, run.runId);
    expect(found?.summary.rejected.beyondT2Count).toBe(1);
  });

  it('of one damaged block are named, and all others are read', async () => {
    const columns = twoHours(7, 9000);
    const run = await aWeighedRun();
    for (const batch of cut(columns, 1000)) await accept(run, batch);
    await close(run.runId);
    await house.get(SealWeights).look();
    const [block] = await inUnit((tx) => tx.find(WeightBlock, { runId: run.runId }));
    if (block?.weights == null) throw new Error('no block');
    const weights = Buffer.from(block.weights);
    weights[100] = (weights[100] ?? 0) ^ 4;
    await inUnit((tx) => tx.update(WeightBlock, { id: block.id }, { weights }));
    const { parts, unreadable } = await weightsOfRun(reader, run.runId);
    const named = [{ id: block.id, reason: 'wrong-checksum', weightCount: block.weightCount }];
    expect(unreadable).toMatchObject(named);
    const one = { weigherId: run.weigherId, series: 'A', sequence: block.firstSequence };
    expect(await weightOfSequence(reader, one)).toMatchObject({ parts: [], unreadable: named });
    expect(parts.reduce((sum, part) => sum + part.columns.count, 0)).toBe(9000 - block.weightCount);
    expect(await inUnit((tx) => rebuildSummaries(tx, run.runId))).toBe('unreadable');
  });

  it('give their summaries back where these were spoilt', async () => {
    const columns = twoHours(8);
    const run = await aWeighedRun();
    await accept(run, columns);
    const before = await summariesOfRun(reader, run.runId);
    await inUnit(async (tx) => {
      await tx.remove(WeightHour, { runId: run.runId });
      await tx.sql`UPDATE "weight_run" SET "accepted_pack_count" = 3 WHERE "run_id" = ${run.runId}`;
      await tx.sql`DELETE FROM "short_pack" WHERE "run_id" = ${run.runId}`;
    });
    expect(await inUnit((tx) => rebuildSummaries(tx, run.runId))).toBe('written-anew');
    expect(await summariesOfRun(reader, run.runId)).toEqual(before);
    expect(await hoursOfRun(reader, run.runId)).toHaveLength(3);
    expect(await inUnit((tx) => rebuildSummaries(tx, run.runId))).toBe('as-stored');
  });

  it('count with a tare that was found wrong later, and without it again once that is withdrawn', async () => {
    const columns = twoHours(9);
    const run = await aWeighedRun();
    for (const batch of cut(columns, 2000)) await accept(run, batch);
    await close(run.runId);
    await house.get(SealWeights).look();
    const before = await summariesOfRun(reader, run.runId);
    const [fromSequence, toSequence] = [columns.sequences[10] ?? 0, columns.sequences[4009] ?? 0];
    const of = { runId: run.runId, weigherId: run.weigherId, series: 'A' };
    const form = { ...of, fromSequence, toSequence, addedMilligrams: -2500, reason: 'heavier film' };
    const correct = (change: Partial<typeof form> = {}) =>
      house.get(CorrectTare).execute(asking(plant.actor), { ...form, ...change });
    await expect(correct({ addedMilligrams: 0 })).rejects.toMatchObject({ code: 'nothing-to-add' });
    await expect(correct({ series: 'B' })).rejects.toMatchObject({ code: 'no-weights-in-range' });
    const { id, packCount } = await correct();
    expect(packCount).toBe(4000);
    const corrected = shiftNets(columns, [{ fromSequence, toSequence, addedMilligrams: -2500 }]);
    expect(await read(run.runId)).toEqual(corrected);
    const [found] = await summariesOfRun(reader, run.runId);
    expect(found?.summary).toEqual(summariseWeights(corrected, yardstickFor(2_000_000)));
    // What comes later and lies in the range is shifted too.
    const lost = (columns.sequences[2300] ?? 0) + 1;
    expect(columns.sequences.includes(lost)).toBe(false);
    const late = { ...sliceWeights(columns, 0, 1), sequences: Float64Array.of(lost) };
    await accept(run, late);
    expect(await inUnit((tx) => rebuildSummaries(tx, run.runId))).toBe('as-stored');
    const withdraw = () => house.get(WithdrawTareCorrection).execute(asking(plant.actor), id, { reason: 'old film' });
    await withdraw();
    await expect(withdraw()).rejects.toMatchObject({ code: 'already-corrected' });
    const [after] = await summariesOfRun(reader, run.runId);
    const [earlier] = before;
    if (after === undefined || earlier === undefined) throw new Error('no summary');
    expect(after.summary).toEqual(addSummaries(earlier.summary, summariseWeights(late, yardstickFor(2_000_000))));
  });

  it('go one by one when their time is up; their sums and what was beyond T2 stay', async () => {
    const columns = twoHours(10);
    const run = await aWeighedRun();
    await accept(run, columns);
    await close(run.runId);
    await house.get(SealWeights).look();
    const before = await summariesOfRun(reader, run.runId);
    const drop = (at: string) => house.get(DropWeights).execute(asking(plant.actor), { before: at, reason: 'old' });
    const young = spanOf(columns).lastAt;
    await expect(drop(young)).rejects.toMatchObject({ code: 'weights-too-young' });
    house.clock.pass(3 * 366 * 86_400);
    expect(await drop(young)).toMatchObject({ blockCount: 0, weightCount: 0 });
    expect(await drop(shifted(young, 1))).toMatchObject({ blockCount: 1, weightCount: columns.count });
    const { parts, unreadable } = await weightsOfRun(reader, run.runId);
    expect([parts, unreadable.map(({ reason }) => reason)]).toEqual([[], ['dropped']]);
    expect(await summariesOfRun(reader, run.runId)).toEqual(before);
    expect(await reader.sql`SELECT "head" FROM "short_pack" WHERE "run_id" = ${run.runId}`).toHaveLength(1);
    expect(await inUnit((tx) => rebuildSummaries(tx, run.runId))).toBe('unreadable');
    const sequence = columns.sequences[0] ?? 0;
    const range = { fromSequence: sequence, toSequence: sequence, addedMilligrams: 1, reason: 'late' };
    await expect(
      house
        .get(CorrectTare)
        .execute(asking(plant.actor), { runId: run.runId, weigherId: run.weigherId, series: 'A', ...range }),
    ).rejects.toMatchObject({ code: 'weights-not-readable' });
  });
});
