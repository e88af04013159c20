import { noHead, type WeightColumns } from '../core/weight-blocks/weight-columns.js';
import {
  addSummaries,
  noWeights,
  summariseWeights,
  type WeightSummary,
  type Yardstick,
} from '../core/weight-blocks/weight-summary.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { instantOf } from './kept/instants-of-weights.js';
import { weightsOfRunBetween } from './kept/kept-weights.js';
import { hoursOfRun, summariesOfRun, type HourOfRun } from './kept/weight-questions.js';

/** From one instant to another, both included. */
export interface Stretch {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
}

/** The packs that a weigher weighed in a stretch of time. */
export interface StretchWeighed extends Stretch {
  /** Accepted packs. */
  readonly packCount: number;
  /** Of the accepted ones; null: none. */
  readonly meanMilligrams: number | null;
  readonly smallestMilligrams: number | null;
  readonly beyondT1Count: number;
  readonly rejectedPackCount: number;
  /** False where single weights of it were dropped or are damaged: more were weighed. */
  readonly isWhole: boolean;
}

/** One weight, as it was sent, with tare corrections. */
export interface SingleWeight {
  readonly at: Instant;
  readonly netMilligrams: number;
  /** Null: none was told, or in a block of version 1 head 0 or none. */
  readonly head: number | null;
  readonly isRejected: boolean;
}

/** What a weigher weighed of a run in the minutes of some packs, around them, and over the whole run. */
export interface WeightsAround {
  readonly runId: string;
  readonly weigherId: string;
  readonly weigherCode: string;
  readonly nominalMilligrams: number;
  /** Null: no rule says how short such a pack may be. */
  readonly t1Milligrams: number | null;
  readonly packs: StretchWeighed;
  readonly around: StretchWeighed;
  readonly run: StretchWeighed;
  /** The weights nearest to the middle of the minutes, in the order of time; none where those are many. */
  readonly nearest: readonly SingleWeight[];
}

const hourMilliseconds = 3_600_000;
/** Of minutes that are told so well single weights are worth showing. Our own values, no source. */
const [nearestUpToMilliseconds, nearestCount] = [10 * 60_000, 12];

/**
 * The weights of a run in the minutes of some of its packs and so much before and after, by weigher; none where the run
 * was not weighed. Full hours come from their sums, so that no more than the hours at the edges are read weight by weight.
 */
export async function weightsAround(
  from: ReadFrom,
  { runId, minutes, nearMilliseconds }: AskedAround,
): Promise<readonly WeightsAround[]> {
  const weighers = await summariesOfRun(from, runId);
  if (weighers.length === 0) return [];
  const codes = await codesOf(
    from,
    weighers.map(({ weigherId }) => weigherId),
  );
  const hours = await hoursOfRun(from, runId);
  const around = {
    fromAt: shifted(minutes.fromAt, -nearMilliseconds),
    untilAt: shifted(minutes.untilAt, nearMilliseconds),
  };
  const found: WeightsAround[] = [];
  for (const { weigherId, yardstick, summary, firstAt, lastAt } of weighers) {
    const own = { runId, weigherId, yardstick, hours: hours.filter((hour) => hour.weigherId === weigherId) };
    found.push({
      ...{ runId, weigherId, weigherCode: codes.get(weigherId) ?? '' },
      nominalMilligrams: yardstick.nominalMilligrams,
      t1Milligrams: yardstick.t1Milligrams,
      packs: await weighedIn(from, own, minutes),
      around: await weighedIn(from, own, around),
      run: stretchOf({ fromAt: firstAt, untilAt: lastAt }, { summary, yardstick, isWhole: true }),
      nearest: await nearestTo(from, own, { minutes, around }),
    });
  }
  return found;
}

interface AskedAround {
  readonly runId: string;
  /** In which the packs were packed. */
  readonly minutes: Stretch;
  readonly nearMilliseconds: number;
}

interface OfWeigher {
  readonly runId: string;
  readonly weigherId: string;
  readonly yardstick: Yardstick;
  readonly hours: readonly HourOfRun[];
}

async function codesOf(from: ReadFrom, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await from.sql<{ id: string; code: string }>`
    SELECT "id", "code" FROM "pack_weigher" WHERE "id" IN (${() => [...ids]})`;
  return new Map(rows.map(({ id, code }) => [id, code]));
}

async function weighedIn(from: ReadFrom, of: OfWeigher, stretch: Stretch): Promise<StretchWeighed> {
  let [summary, isWhole] = [noWeights(), true];
  for (const { hourAt, summary: ofHour } of of.hours) {
    const endAt = shifted(hourAt, hourMilliseconds);
    if (hourAt > stretch.untilAt || endAt <= stretch.fromAt) continue;
    if (hourAt >= stretch.fromAt && endAt <= stretch.untilAt) {
      summary = addSummaries(summary, ofHour);
      continue;
    }
    const edge = {
      fromAt: hourAt > stretch.fromAt ? hourAt : stretch.fromAt,
      untilAt: endAt <= stretch.untilAt ? shifted(endAt, -1) : stretch.untilAt,
    };
    const { parts, unreadable } = await weightsOfRunBetween(from, { ...of, ...edge });
    for (const { columns } of parts) summary = addSummaries(summary, summariseWeights(columns, of.yardstick));
    isWhole = isWhole && unreadable.length === 0;
  }
  return stretchOf(stretch, { summary, yardstick: of.yardstick, isWhole });
}

function stretchOf(
  { fromAt, untilAt }: Stretch,
  of: { readonly summary: WeightSummary; readonly yardstick: Yardstick; readonly isWhole: boolean },
): StretchWeighed {
  const { packCount, errorSumMilligrams, smallestMilligrams, beyondT1Count } = of.summary.accepted;
  const mean = of.yardstick.nominalMilligrams + errorSumMilligrams / packCount;
  return {
    ...{ fromAt, untilAt, packCount, smallestMilligrams, beyondT1Count, isWhole: of.isWhole },
    meanMilligrams: packCount === 0 ? null : Math.floor(mean),
    rejectedPackCount: of.summary.rejected.packCount,
  };
}

async function nearestTo(
  from: ReadFrom,
  of: OfWeigher,
  { minutes, around }: { readonly minutes: Stretch; readonly around: Stretch },
): Promise<readonly SingleWeight[]> {
  const [first, last] = [Date.parse(minutes.fromAt), Date.parse(minutes.untilAt)];
  if (last - first > nearestUpToMilliseconds) return [];
  const { parts } = await weightsOfRunBetween(from, { ...of, ...around });
  const middle = (first + last) / 20;
  return parts
    .flatMap(({ columns }) => singlesOf(columns))
    .sort((one, other) => Math.abs(one.at - middle) - Math.abs(other.at - middle))
    .slice(0, nearestCount)
    .sort((one, other) => one.at - other.at)
    .map(({ at, ...weight }) => ({ at: instantOf(at), ...weight }));
}

function singlesOf({ atCentiseconds, netMilligrams, heads, isRejected }: WeightColumns) {
  return [...atCentiseconds].map((at, place) => ({
    at,
    netMilligrams: netMilligrams[place] ?? 0,
    head: toldHead(heads?.[place] ?? noHead),
    isRejected: isRejected?.[place] === 1,
  }));
}

function toldHead(head: number): number | null {
  return head < 0 ? null : head;
}
