import { hoursOfWeights } from '../../core/weight-blocks/hours-of-weights.js';
import { shiftNets } from '../../core/weight-blocks/shift-nets.js';
import { addToMinutes, addWrittenMinutes, noMinutes, writeMinutes } from '../../core/weight-blocks/minute-sums.js';
import type { WeightColumns } from '../../core/weight-blocks/weight-columns.js';
import {
  addSummaries,
  noWeights,
  summariseWeights,
  type WeightSummary,
  type Yardstick,
} from '../../core/weight-blocks/weight-summary.js';
import type { Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { takingTurns } from '../../platform/taking-turns.js';
import { addShortPacks } from './add-short-packs.js';
import { addToMonths, type MonthPart } from './weight-months.js';
import { hourBegin, spanOf } from './instants-of-weights.js';
import { rowOf, summaryOf, type RawSums } from './summed-rows.js';
import { shiftsOf } from './tare-corrections.js';
import { WeightHour } from './weight-hour.entity.js';
import { WeightRun } from './weight-run.entity.js';
import { yardstickFor, yardstickIn } from './yardsticks.js';

/** Weights of one counter of a weigher in a run, none of which is in the summaries yet. */
export interface AddedWeights {
  readonly runId: string;
  /** Of the run's format. */
  readonly nominalMilligrams: number;
  readonly weigherId: string;
  /** Names the weigher's counter. */
  readonly series: string;
  /** One or more, as they were received. */
  readonly columns: WeightColumns;
}

/**
 * Adds weights to the summaries of their runs, of their hours and of the months, and keeps those beyond T2; to be called
 * once in the unit in which the weights are accepted. The sums are exact, so nobody can tell from them in how many parts
 * the weights came. Months come last: they are shared by runs, so that units would else wait for each other in a ring.
 */
export async function addToSummaries(tx: Tx, added: readonly AddedWeights[]): Promise<void> {
  const ofMonths: MonthPart[] = [];
  const turn = takingTurns();
  for (const part of added) {
    ofMonths.push(...(await addToRunAndHours(tx, part)));
    // A unit keeps other writers waiting, but no reader.
    await turn();
  }
  await addToMonths(tx, ofMonths);
}

async function addToRunAndHours(tx: Tx, added: AddedWeights): Promise<MonthPart[]> {
  const { runId, weigherId } = added;
  const columns = shiftNets(added.columns, await shiftsOf(tx, added));
  // Changes nothing, but other units that add to this run wait from here on (PostgreSQL): none reads sums that move.
  const [run] = await tx.sql<RawSums>`
    UPDATE "weight_run" SET "bin_milligrams" = "bin_milligrams"
    WHERE "run_id" = ${runId} AND "weigher_id" = ${weigherId} RETURNING *`;
  const yardstick = run === undefined ? yardstickFor(added.nominalMilligrams) : yardstickIn(run);
  let whole = noWeights();
  const ofMonths: MonthPart[] = [];
  for (const { hour, columns: own } of hoursOfWeights(columns)) {
    const summary = summariseWeights(own, yardstick);
    const minutes = writeMinutes(addToMinutes(noMinutes(), own, yardstick.nominalMilligrams));
    const hourAt = hourBegin(hour);
    await addToHour(tx, { runId, weigherId, hourAt }, { summary, minutes });
    ofMonths.push({ weigherId, hourAt, yardstick, summary });
    whole = addSummaries(whole, summary);
  }
  await addToRun(tx, { runId, weigherId, yardstick, ...spanOf(columns) }, { before: run, added: whole });
  await addShortPacks(tx, { ...added, columns, belowMilligrams: yardstick.t2Milligrams });
  return ofMonths;
}

interface HourKey {
  readonly runId: string;
  readonly weigherId: string;
  readonly hourAt: Instant;
}

interface HourAdded {
  readonly summary: WeightSummary;
  /** Of the accepted packs, as they are kept. */
  readonly minutes: Uint8Array;
}

async function addToHour(tx: Tx, key: HourKey, { summary, minutes }: HourAdded): Promise<void> {
  const [before] = await tx.sql<RawSums>`
    SELECT * FROM "weight_hour" WHERE "run_id" = ${key.runId} AND "weigher_id" = ${key.weigherId}
      AND "hour_at" = ${key.hourAt}`;
  if (before === undefined) {
    await tx.insert(WeightHour, { ...key, ...rowOf(summary), acceptedMinutes: Buffer.from(minutes) });
    return;
  }
  const acceptedMinutes = minutesTogether(before['accepted_minutes'], minutes);
  await tx.update(WeightHour, { ...key }, { ...rowOf(addSummaries(summaryOf(before), summary)), acceptedMinutes });
}

/** Where those before are not known, those together are not either. */
function minutesTogether(before: unknown, added: Uint8Array): Buffer | null {
  if (!(before instanceof Uint8Array)) return null;
  return Buffer.from(writeMinutes(addWrittenMinutes(addWrittenMinutes(noMinutes(), before), added)));
}

interface RunSpan {
  readonly runId: string;
  readonly weigherId: string;
  readonly yardstick: Yardstick;
  readonly firstAt: Instant;
  readonly lastAt: Instant;
}

async function addToRun(
  tx: Tx,
  { yardstick, firstAt, lastAt, ...key }: RunSpan,
  { before, added }: { readonly before: RawSums | undefined; readonly added: WeightSummary },
): Promise<void> {
  if (before === undefined) {
    await tx.insert(WeightRun, { ...key, ...yardstick, firstAt, lastAt, ...rowOf(added) });
    return;
  }
  const [earlier, later] = [before['first_at'] as Instant, before['last_at'] as Instant];
  await tx.update(
    WeightRun,
    { ...key },
    {
      firstAt: earlier < firstAt ? earlier : firstAt,
      lastAt: later > lastAt ? later : lastAt,
      ...rowOf(addSummaries(summaryOf(before), added)),
    },
  );
}
