import { hoursOfWeights } from '../../core/weight-blocks/hours-of-weights.js';
import { addToMinutes, noMinutes, writeMinutes, type MinuteSums } from '../../core/weight-blocks/minute-sums.js';
import {
  addSummaries,
  noWeights,
  summariseWeights,
  type WeightSummary,
  type Yardstick,
} from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import { toWhole } from '../../platform/database/stored-values.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { takingTurns } from '../../platform/taking-turns.js';
import { insertShortPacks, shortPacksIn } from './add-short-packs.js';
import { hourBegin, spanOf } from './instants-of-weights.js';
import { weightsOfRun, type ReadableWeights } from './kept-weights.js';
import { textOfRows } from './text-of-rows.js';
import { ShortPack } from './short-pack.entity.js';
import { rebuildMonths } from './rebuild-months.js';
import { rowOf, sumColumnsOf, summaryOf, type RawSums } from './summed-rows.js';
import { WeightBlock } from './weight-block.entity.js';
import { WeightHour } from './weight-hour.entity.js';
import { WeightRun } from './weight-run.entity.js';
import { yardstickFor } from './yardsticks.js';

/** `unreadable`: weights of the run were dropped or are damaged, so what is stored is all there is, and stays. */
export type RebuildOutcome = 'as-stored' | 'written-anew' | 'unreadable';

/** What the weights of a run say, in the rows of the summaries. */
interface Truth {
  readonly runs: readonly WeightRun[];
  readonly hours: readonly WeightHour[];
  readonly shortPacks: readonly ShortPack[];
  readonly blocks: readonly Pick<WeightBlock, 'id' | 'accepted' | 'rejected'>[];
}

/** Sets all summaries of a run anew by its weights, where they are not as the weights say, and its months with them. */
export async function rebuildSummaries(tx: Tx, runId: string): Promise<RebuildOutcome> {
  // Changes nothing, but whoever adds to the run meanwhile waits (PostgreSQL).
  await tx.sql`UPDATE "weight_run" SET "bin_milligrams" = "bin_milligrams" WHERE "run_id" = ${runId}`;
  const { parts, unreadable } = await weightsOfRun(tx, runId);
  if (unreadable.length > 0) return 'unreadable';
  const truth = await truthOf(runId, parts, yardstickFor(await nominalOf(tx, runId)));
  const stored = await storedOf(tx, runId);
  if (textOf(truth) === textOf(stored)) return 'as-stored';
  await tx.remove(WeightHour, { runId });
  await tx.remove(WeightRun, { runId });
  await tx.remove(ShortPack, { runId });
  for (const row of truth.runs) await tx.insert(WeightRun, row);
  for (const row of truth.hours) await tx.insert(WeightHour, row);
  await insertShortPacks(tx, truth.shortPacks);
  for (const { id, ...sums } of truth.blocks) await tx.update(WeightBlock, { id }, sums);
  await rebuildMonths(tx, [...stored.hours, ...truth.hours]);
  return 'written-anew';
}

async function nominalOf(from: ReadFrom, runId: string): Promise<number> {
  const [row] = await from.sql<{ nominalGrams: number }>`
    SELECT f."nominal_grams" AS "nominalGrams" FROM "packing_run" r JOIN "pack_format" f ON f."id" = r."format_id"
    WHERE r."id" = ${runId}`;
  if (row === undefined) throw new RangeError(`no run ${runId}`);
  return row.nominalGrams * 1000;
}

async function truthOf(runId: string, parts: readonly ReadableWeights[], yardstick: Yardstick): Promise<Truth> {
  const runs = new Map<string, Omit<WeightRun, keyof ReturnType<typeof rowOf>> & { summary: WeightSummary }>();
  const hours = new Map<string, HourTruth>();
  const blocks: Truth['blocks'][number][] = [];
  const turn = takingTurns();
  for (const { id, kind, weigherId, columns } of parts) {
    const summary = summariseWeights(columns, yardstick);
    if (kind === 'block') {
      blocks.push({ id, accepted: sumColumnsOf(summary.accepted), rejected: sumColumnsOf(summary.rejected) });
    }
    const span = spanOf(columns);
    const before = runs.get(weigherId) ?? { runId, weigherId, ...yardstick, ...span, summary: noWeights() };
    runs.set(weigherId, {
      ...before,
      firstAt: span.firstAt < before.firstAt ? span.firstAt : before.firstAt,
      lastAt: span.lastAt > before.lastAt ? span.lastAt : before.lastAt,
      summary: addSummaries(before.summary, summary),
    });
    for (const { hour, columns: own } of hoursOfWeights(columns)) {
      const key = `${weigherId} ${hour}`;
      const earlier = hours.get(key) ?? { ...noHour(), weigherId, hourAt: hourBegin(hour) };
      const minutes = addToMinutes(earlier.minutes, own, yardstick.nominalMilligrams);
      hours.set(key, { ...earlier, minutes, summary: addSummaries(earlier.summary, summariseWeights(own, yardstick)) });
    }
    await turn();
  }
  return {
    runs: [...runs.values()].map(({ summary, ...row }) => ({ ...row, ...rowOf(summary) })),
    hours: [...hours.values()].map(({ summary, minutes, ...row }) => {
      return { runId, ...row, ...rowOf(summary), acceptedMinutes: Buffer.from(writeMinutes(minutes)) };
    }),
    shortPacks: parts.flatMap((part) => shortPacksIn({ ...part, belowMilligrams: yardstick.t2Milligrams })),
    blocks,
  };
}

interface HourTruth {
  readonly weigherId: string;
  readonly hourAt: Instant;
  readonly summary: WeightSummary;
  readonly minutes: MinuteSums;
}

const noHour = (): Pick<HourTruth, 'summary' | 'minutes'> => ({ summary: noWeights(), minutes: noMinutes() });

async function storedOf(tx: Tx, runId: string): Promise<Truth> {
  const blocks = await tx.sql<RawSums>`SELECT * FROM "weight_block" WHERE "run_id" = ${runId}`;
  const shortPacks = await tx.find(ShortPack, { runId });
  return {
    runs: await tx.find(WeightRun, { runId }),
    hours: await tx.find(WeightHour, { runId }),
    shortPacks: shortPacks.map((row) => ({ ...row, sequence: toWhole(row.sequence) })),
    blocks: blocks.map((row) => {
      const { accepted, rejected } = summaryOf(row);
      return { id: String(row['id']), accepted: sumColumnsOf(accepted), rejected: sumColumnsOf(rejected) };
    }),
  };
}

function textOf({ runs, hours, shortPacks, blocks }: Truth): string {
  return [runs, hours, shortPacks, blocks].map(textOfRows).join('\n');
}
