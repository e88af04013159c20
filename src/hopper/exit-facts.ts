import type { Mass } from '../core/hopper-flow/hopper-event.js';
import type { RunMeanNet } from '../fill-weight/mean-nets.js';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import { removalsOfHopper, removalsOfRun } from '../packing/packing-runs.js';
import { courseColumnsOf } from '../packing/run-courses.js';
import type { RemovalRow } from '../packing/packing-run-rows.js';
import type { LinePeriod } from '../plant/plant-rows.js';
import { linesOfHopper } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { countPacks, shareWithin, type CountedPacks, type ShareWithin } from './counted-packs.js';
import type { PeriodRow } from './hopper-period-rows.js';
import {
  earlierOf,
  laterOf,
  noEnd,
  within,
  type Stretch,
  type TimeUncertainty,
  type TimeWindow,
} from './record-times.js';

/** A run that drew from the hopper in the period. */
export interface RunFact {
  readonly id: string;
  readonly number: string;
  readonly lineId: string;
  readonly formatId: string;
  readonly nominalGrams: number;
  readonly startedAt: Instant;
  readonly closedAt: Instant | null;
  readonly meanNet: RunMeanNet;
}

/** Rejects, samples, sweepings: what left otherwise. */
export interface RemovalExit extends TimeWindow {
  readonly removalId: string;
  readonly kind: RemovalRow['kind'];
  readonly runId: string | null;
  readonly mass: Mass;
}

/** What left a hopper in a period. */
export interface ExitFacts {
  readonly runs: ReadonlyMap<string, RunFact>;
  /** Each run's in the order of its count, the runs in the order of their start. */
  readonly counted: readonly CountedPacks[];
  readonly removals: readonly RemovalExit[];
}

/** All that left a hopper in a period, on every line that it fed. One query a kind. */
export async function readExits(from: ReadFrom, period: PeriodRow, doubt: TimeUncertainty): Promise<ExitFacts> {
  const links = await linesOfHopper(from, period.hopperId);
  const runs = await runsOfPeriod(from, period, [...new Set(links.map(({ lineId }) => lineId))]);
  const counts = await courseColumnsOf(from, [...runs.keys()]);
  const counted = Array.from(runs.keys()).flatMap((runId): CountedPacks[] => {
    const own = counts.get(runId);
    const lineId = runs.get(runId)?.lineId ?? '';
    return own === undefined ? [] : [countPacks(own, stretchesOf(period, links, lineId), doubt)];
  });
  const removals = await readRemovals(from, period, { runs, doubt, links });
  return { runs, counted, removals };
}

async function runsOfPeriod(
  from: ReadFrom,
  period: PeriodRow,
  lineIds: readonly string[],
): Promise<ReadonlyMap<string, RunFact>> {
  const rows: Omit<RunFact, 'meanNet'>[] = [];
  for (const lineId of lineIds) rows.push(...(await runsOfLineIn(from, period, lineId)));
  rows.sort((one, other) => (one.startedAt + one.id < other.startedAt + other.id ? -1 : 1));
  const nets = await meanNetsOf(
    from,
    rows.map(({ id }) => id),
  );
  return new Map(
    rows.flatMap((row): [string, RunFact][] => {
      const meanNet = nets.get(row.id);
      return meanNet === undefined ? [] : [[row.id, { ...row, meanNet }]];
    }),
  );
}

/** The runs of a line follow each other, so they are looked for from the last one on that began before the period. */
function runsOfLineIn(from: ReadFrom, period: PeriodRow, lineId: string): Promise<Omit<RunFact, 'meanNet'>[]> {
  return from.sql<Omit<RunFact, 'meanNet'>>`
    SELECT r."id", r."number", r."line_id" AS "lineId", r."format_id" AS "formatId",
      f."nominal_grams" AS "nominalGrams", r."started_at" AS "startedAt", c."closed_at" AS "closedAt"
    FROM "packing_run" r
    JOIN "pack_format" f ON f."id" = r."format_id"
    LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL AND r."started_at" <= ${period.endedAt ?? noEnd}
      AND r."started_at" >= COALESCE((
        SELECT q."started_at" FROM "packing_run" q
        WHERE q."line_id" = ${lineId} AND q."voided_by" IS NULL AND q."started_at" < ${period.startedAt}
        ORDER BY q."started_at" DESC LIMIT 1), '')
      AND (c."closed_at" IS NULL OR c."closed_at" >= ${period.startedAt})`;
}

/** When, within the period, a line was fed by its hopper. */
function stretchesOf(period: PeriodRow, links: readonly LinePeriod[], lineId: string): readonly Stretch[] {
  return links
    .filter((link) => link.lineId === lineId)
    .map((link) => ({
      fromAt: laterOf(link.fromAt, period.startedAt),
      untilAt: earlierOf(link.untilAt ?? noEnd, period.endedAt ?? noEnd),
    }))
    .filter(({ fromAt, untilAt }) => fromAt < untilAt);
}

interface RemovalsOf {
  readonly runs: ReadonlyMap<string, RunFact>;
  readonly doubt: TimeUncertainty;
  readonly links: readonly LinePeriod[];
}

/**
 * What was removed left the hopper since the last removal of its kind on the same run (or hopper), or since the run's
 * start. Of a run that went on beyond the period, what was removed later may have left in it too.
 */
async function readRemovals(from: ReadFrom, period: PeriodRow, of: RemovalsOf): Promise<readonly RemovalExit[]> {
  const rows = await removalsOfHopper(from, period.hopperId, period.startedAt, period.endedAt);
  for (const run of of.runs.values()) {
    const goesOn = period.endedAt !== null && (run.closedAt === null || run.closedAt > period.endedAt);
    const beganBefore = run.startedAt < period.startedAt;
    if (!goesOn && !beganBefore) continue;
    const known = new Set(rows.map(({ id }) => id));
    rows.push(...(await removalsOfRun(from, run.id)).filter(({ id }) => !known.has(id)));
  }
  rows.sort((one, other) => (one.removedAt + one.id < other.removedAt + other.id ? -1 : 1));
  const stretch = { fromAt: period.startedAt, untilAt: period.endedAt ?? noEnd };
  const lastByKind = new Map<string, Instant>();
  return rows.flatMap((row) => {
    const key = `${row.kind} ${row.runId ?? ''}`;
    const run = row.runId === null ? undefined : of.runs.get(row.runId);
    const fromAt = lastByKind.get(key) ?? run?.startedAt ?? period.startedAt;
    lastByKind.set(key, row.removedAt);
    const share = shareOfTimes(stretch, earlierOf(fromAt, row.removedAt), row.removedAt);
    const isHere = row.hopperId === null || row.hopperId === period.hopperId;
    if (share === null || !isHere) return [];
    return [removalExit(row, { run, fromAt, share, stretch })];
  });
}

function shareOfTimes({ fromAt, untilAt }: Stretch, earliestAt: Instant, removedAt: Instant): ShareWithin | null {
  const stretch = { from: Date.parse(fromAt), until: Date.parse(untilAt) };
  return shareWithin(stretch, Date.parse(earliestAt), Date.parse(removedAt));
}

function removalExit(
  row: RemovalRow,
  seen: {
    readonly run: RunFact | undefined;
    readonly fromAt: Instant;
    readonly share: ShareWithin;
    readonly stretch: Stretch;
  },
): RemovalExit {
  const whole = removedMass(row, seen.run?.meanNet ?? null);
  const grams = Math.round(whole.grams * (seen.share.until - seen.share.from));
  const mass = seen.share.isWhole ? whole : { lowerGrams: 0, grams, upperGrams: whole.upperGrams };
  const [earliestAt, at] = [earlierOf(seen.fromAt, row.removedAt), row.removedAt];
  return {
    removalId: row.id,
    kind: row.kind,
    runId: row.runId,
    mass,
    ...within(seen.stretch, { earliestAt, likelyAt: at, latestAt: at }),
  };
}

/** Weighed: two readings of the scale. Counted: packs times their mean. Neither: somewhere up to twice what was said. */
function removedMass(row: RemovalRow, meanNet: RunMeanNet | null): Mass {
  if (row.scaleErrorMilligrams !== null) {
    const errorGrams = Math.ceil((2 * row.scaleErrorMilligrams) / 1000);
    const lowerGrams = Math.max(0, row.grams - errorGrams);
    return { lowerGrams, grams: row.grams, upperGrams: row.grams + errorGrams };
  }
  if (row.packCount !== null && meanNet !== null) return packMass(meanNet, 0, row.packCount);
  return { lowerGrams: 0, grams: row.grams, upperGrams: row.grams * 2 };
}

/** Packs of a run from one count to another, by their mean and its limits. Neighbouring ranges add up to the gram. */
export function packMass(meanNet: RunMeanNet, fromCount: number, toCount: number): Mass {
  const packCount = toCount - fromCount;
  const upTo = (count: number): number => Math.round((count * meanNet.meanMilligrams) / 1000);
  return {
    lowerGrams: Math.floor((packCount * meanNet.lowerMilligrams) / 1000),
    grams: upTo(toCount) - upTo(fromCount),
    upperGrams: Math.ceil((packCount * meanNet.upperMilligrams) / 1000),
  };
}
