import { setImmediate } from 'node:timers/promises';
import { Inject, Injectable, Logger, type OnModuleInit } from '@nestjs/common';
import { encodeWeights } from '../../core/weight-blocks/encode-weights.js';
import { shiftNets, type NetShift } from '../../core/weight-blocks/shift-nets.js';
import { joinWeights, sliceWeights, type WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import { summariseWeights, type Yardstick } from '../../core/weight-blocks/weight-summary.js';
import { Clock, shifted, type Instant } from '../../platform/clock.js';
import { toBoolean, toWhole } from '../../platform/database/stored-values.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { UnitOfWork, type Tx } from '../../platform/database/unit-of-work.js';
import { Ids } from '../../platform/ids.js';
import { JobRunner } from '../../platform/jobs/job-runner.js';
import { takingTurns } from '../../platform/taking-turns.js';
import { WeightBatch } from '../weight-batch.entity.js';
import { extentOf } from './instants-of-weights.js';
import { readBytes } from './kept-weights.js';
import { sealWeightsJob } from './seal-job.js';
import { sumColumnsOf, type RawSums } from './summed-rows.js';
import { shiftsOf } from './tare-corrections.js';
import { WeightBlock } from './weight-block.entity.js';
import { yardstickIn } from './yardsticks.js';

/** About so many weights make a block: the price of its row is spread over many, and one weight is read in well under a millisecond. */
const weightsInBlock = 4096;
/** So many batches are looked at at once; what they hold is read block by block. */
const batchesAtOnce = 500;
const waitMilliseconds = 10 * 60_000;

/** Batches of one run and one counter of a weigher. */
interface Tail {
  readonly runId: string;
  readonly weigherId: string;
  readonly series: string;
  readonly weightCount: number;
  readonly isClosed: boolean;
}

interface TailBatch {
  readonly id: string;
  readonly firstSequence: number | string;
  readonly weightCount: number;
}

interface ReadBatch {
  readonly id: string;
  readonly columns: WeightColumns;
}

/**
 * Puts the batches of a run into blocks once it is closed, or once they are many; comes again by itself. What comes later
 * is put into further blocks. No weight is lost or doubled: a block is written in the unit that removes its batches.
 */
@Injectable()
export class SealWeights implements OnModuleInit {
  private readonly log = new Logger(SealWeights.name);

  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly jobs: JobRunner,
  ) {}

  onModuleInit(): void {
    this.jobs.handleAgain(sealWeightsJob, () => this.look());
  }

  /** Seals what is ready; answers when to look again. */
  async look(): Promise<Instant> {
    for (const tail of await this.tails()) {
      if (tail.isClosed || tail.weightCount >= 2 * weightsInBlock) await this.seal(tail);
    }
    return shifted(this.clock.now(), waitMilliseconds);
  }

  private async tails(): Promise<Tail[]> {
    const rows = await this.reader.sql<Tail>`
      SELECT b."run_id" AS "runId", b."weigher_id" AS "weigherId", b."series", SUM(b."weight_count") AS "weightCount",
        EXISTS (SELECT 1 FROM "packing_run_close" c WHERE c."run_id" = b."run_id" AND c."voided_by" IS NULL) AS "isClosed"
      FROM "weight_batch" b GROUP BY b."run_id", b."weigher_id", b."series"`;
    return rows.map((row) => ({
      ...row,
      weightCount: toWhole(row.weightCount),
      isClosed: toBoolean(row.isClosed),
    }));
  }

  private async seal(tail: Tail): Promise<void> {
    for (let after = -1; ;) {
      const rows = await this.reader.sql<TailBatch>`
        SELECT "id", "first_sequence" AS "firstSequence", "weight_count" AS "weightCount" FROM "weight_batch"
        WHERE "run_id" = ${tail.runId} AND "weigher_id" = ${tail.weigherId} AND "series" = ${tail.series}
          AND "first_sequence" > ${after}
        ORDER BY "first_sequence" LIMIT ${batchesAtOnce}`;
      const last = rows.at(-1);
      if (last === undefined) return;
      for (const batches of inBlocks(rows, tail.isClosed)) await this.sealBatches(tail, batches);
      after = toWhole(last.firstSequence);
    }
  }

  private async sealBatches(tail: Tail, batches: readonly TailBatch[]): Promise<void> {
    const turn = takingTurns();
    const readable: ReadBatch[] = [];
    for (const { id } of batches) {
      readable.push(...(await this.readBatch(id)));
      await turn();
    }
    if (readable.length === 0) return;
    const columns = joinWeights(readable.map((batch) => batch.columns));
    const parts = Math.max(1, Math.round(columns.count / weightsInBlock));
    await this.units.run(async (tx) => {
      const how = await howToSum(tx, tail);
      for (let part = 0; part < parts; part += 1) {
        const [from, to] = [part, part + 1].map((edge) => Math.floor((columns.count * edge) / parts));
        await tx.insert(WeightBlock, this.blockOf(tail, sliceWeights(columns, from ?? 0, to ?? 0), how));
        await turn();
      }
      for (const { id } of readable) {
        // Somebody else has sealed it meanwhile: the unit is taken back.
        if ((await tx.remove(WeightBatch, { id })) !== 1) throw new Error(`batch ${id} of weights has gone`);
        await turn();
      }
      // What was written waits for the disk with the commit: a turn of its own.
      await setImmediate();
    });
    // Between two units everybody else has a turn.
    await setImmediate();
  }

  /** None where it is damaged: it stays where it is, and is named. */
  private async readBatch(id: string): Promise<ReadBatch[]> {
    const [row] = await this.reader.sql<{ weights: Uint8Array }>`
      SELECT "weights" FROM "weight_batch" WHERE "id" = ${id}`;
    if (row === undefined) throw new Error(`batch ${id} of weights has gone`);
    const columns = readBytes(row.weights);
    if (typeof columns !== 'string') return [{ id, columns }];
    this.log.error({ batch: id, reason: columns });
    return [];
  }

  private blockOf(
    { runId, weigherId, series }: Tail,
    columns: WeightColumns,
    { yardstick, shifts }: HowToSum,
  ): WeightBlock {
    const { accepted, rejected } = summariseWeights(shiftNets(columns, shifts), yardstick);
    return {
      id: this.ids.next(),
      weigherId,
      runId,
      series,
      ...extentOf(columns),
      accepted: sumColumnsOf(accepted),
      rejected: sumColumnsOf(rejected),
      sealedAt: this.clock.now(),
      weights: Buffer.from(encodeWeights(columns)),
    };
  }
}

interface HowToSum {
  readonly yardstick: Yardstick;
  readonly shifts: readonly NetShift[];
}

async function howToSum(tx: Tx, tail: Tail): Promise<HowToSum> {
  const [run] = await tx.sql<RawSums>`
    SELECT * FROM "weight_run" WHERE "run_id" = ${tail.runId} AND "weigher_id" = ${tail.weigherId}`;
  if (run === undefined) throw new Error(`run ${tail.runId} has weights and no summary`);
  return { yardstick: yardstickIn(run), shifts: await shiftsOf(tx, tail) };
}

/** Batches one after the other until they fill a block; what fills none waits, unless no more is to come. */
function inBlocks(batches: readonly TailBatch[], isClosed: boolean): TailBatch[][] {
  const groups: TailBatch[][] = [];
  let [open, count]: [TailBatch[], number] = [[], 0];
  for (const batch of batches) {
    open.push(batch);
    count += batch.weightCount;
    if (count < weightsInBlock) continue;
    groups.push(open);
    [open, count] = [[], 0];
  }
  return isClosed && open.length > 0 ? [...groups, open] : groups;
}
