import { standardUncertaintyWithin, weightOfPacks } from '../core/mass-balance/uncertainty.js';
import { looseCounts } from '../packing/packing-runs.js';
import { runsOfLine } from '../packing/packs-in-time.js';
import type { LooseCountRow } from '../packing/packing-run-rows.js';
import { linesOfHopper } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { AccountLine, LinePacks } from './account-view.js';
import { countAt, type CountAt } from './count-at.js';
import type { PackWeight } from './pack-weights.js';
import type { HopperTime } from './poured-between.js';
import { toLine } from './to-line.js';

/** A run in the part of a time in which its line was fed by the hopper. */
export interface RunStretch {
  readonly runId: string;
  readonly runNumber: string;
  readonly fromAt: Instant;
  readonly untilAt: Instant;
  readonly from: CountAt;
  readonly until: CountAt;
}

/** The runs that drew from a hopper in a time, with their counts at its start and end. */
export async function runStretches(from: ReadFrom, time: HopperTime): Promise<readonly RunStretch[]> {
  const stretches: RunStretch[] = [];
  for (const link of await linesOfHopper(from, time.hopperId)) {
    const fromAt = laterOf(link.fromAt, time.fromAt);
    const untilAt = link.untilAt === null ? time.untilAt : earlierOf(link.untilAt, time.untilAt);
    if (fromAt >= untilAt) continue;
    for (const run of await runsOfLine(from, { lineId: link.lineId, fromAt, untilAt })) {
      stretches.push({
        runId: run.id,
        runNumber: run.number,
        fromAt,
        untilAt,
        from: await countAt(from, run.id, fromAt),
        until: await countAt(from, run.id, untilAt),
      });
    }
  }
  return stretches;
}

/**
 * The accepted packs of a hopper's runs in a time: count at the end less count at the start, times their mean.
 *
 * The machine counts a pack when it accepts it, so packs loose on belts and tables are in the count already. They are
 * shown with their line and added nowhere.
 */
export async function packsOfAccount(
  from: ReadFrom,
  stretches: readonly RunStretch[],
  weights: ReadonlyMap<string, PackWeight>,
): Promise<readonly AccountLine[]> {
  const runIds = [...new Set(stretches.map(({ runId }) => runId))];
  const loose = await looseCounts(from, runIds);
  return stretches.flatMap((stretch) => {
    const weight = weights.get(stretch.runId);
    const packCount = stretch.until.packCount - stretch.from.packCount;
    if (weight === undefined || packCount <= 0) return [];
    const doubtPackCount = stretch.from.doubtPackCount + stretch.until.doubtPackCount;
    const packs: LinePacks = {
      fromCount: stretch.from.packCount,
      toCount: stretch.until.packCount,
      meanMilligrams: weight.meanMilligrams,
      loosePackCount: looseIn(stretch, loose),
      doubtPackCount,
    };
    return [lineOf(stretch, packs, weight)];
  });
}

function lineOf(stretch: RunStretch, packs: LinePacks, weight: PackWeight): AccountLine {
  const counted = weightOfPacks({ packCount: packs.toCount - packs.fromCount, ...weight });
  const doubts = [stretch.from, stretch.until].map(({ doubtPackCount }) =>
    standardUncertaintyWithin((doubtPackCount * weight.meanMilligrams) / 1000),
  );
  return toLine({
    side: 'out',
    kind: 'accepted-packs',
    recordId: stretch.runId,
    code: stretch.runNumber,
    at: stretch.fromAt,
    grams: counted.grams,
    basis: weight.basis,
    uncertainty: {
      ...counted.uncertainty,
      standardGrams: Math.hypot(counted.uncertainty.standardGrams, ...doubts),
    },
    isDoubtful: false,
    packs,
  });
}

function looseIn({ runId, fromAt, untilAt }: RunStretch, loose: readonly LooseCountRow[]): number | null {
  const last = loose.findLast(
    ({ runId: ofRun, countedAt }) => ofRun === runId && countedAt > fromAt && countedAt <= untilAt,
  );
  return last?.packCount ?? null;
}

const earlierOf = (one: Instant, other: Instant): Instant => (one < other ? one : other);
const laterOf = (one: Instant, other: Instant): Instant => (one > other ? one : other);
