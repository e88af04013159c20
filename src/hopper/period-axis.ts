import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { PackExit } from './counted-packs.js';
import { packMass } from './exit-facts.js';
import { periodsOfRuns } from './hopper-period-rows.js';
import { readHopperPeriod, type HopperPeriodFacts } from './hopper-periods.js';
import type { RunRange } from './run-range.js';

/** A stretch of the axis of cumulative grams of a hopper period: from the last proven empty on. */
export interface AxisSpan {
  readonly fromGrams: number;
  readonly toGrams: number;
}

/** Something that went into the hopper, where it lies on the axis of what went in. */
export interface AxisAddition extends AxisSpan {
  readonly id: string;
  /** Several where it may have been any of them; none for rework and for what was left from the period before. */
  readonly bagIds: readonly string[];
  readonly source: HopperPeriodFacts['additions'][number]['source'];
}

/** A hopper period by cumulative grams, in and out on one scale, and where some packs lie on it. */
export interface PeriodAxis {
  readonly periodId: string;
  readonly hopperCode: string;
  readonly startedAt: Instant;
  readonly additions: readonly AxisAddition[];
  readonly inGrams: number;
  readonly outGrams: number;
  /** Where the packs asked for lie among what went out, in order; by counts, at the likely times. */
  readonly windows: readonly AxisSpan[];
}

/** The periods that some packs came through, each on its axis; those without a gram of them are left out. */
export async function axesOfRanges(from: ReadFrom, ranges: readonly RunRange[]): Promise<readonly PeriodAxis[]> {
  const runIds = [...new Set(ranges.map(({ runId }) => runId))];
  const periodIds = new Set((await periodsOfRuns(from, runIds)).map(({ periodId }) => periodId));
  const axes: PeriodAxis[] = [];
  for (const periodId of periodIds) {
    const axis = axisOf(await readHopperPeriod(from, periodId), ranges);
    if (axis.windows.length > 0) axes.push(axis);
  }
  return axes.sort((one, other) => (one.startedAt < other.startedAt ? -1 : 1));
}

function axisOf(facts: HopperPeriodFacts, ranges: readonly RunRange[]): PeriodAxis {
  let inGrams = 0;
  const additions = [...facts.additions].sort(byLikelyTime).map(({ id, bagIds, source, mass }): AxisAddition => {
    const fromGrams = inGrams;
    inGrams += mass.grams;
    return { id, bagIds, source, fromGrams, toGrams: inGrams };
  });
  const removals = facts.removals.map(({ likelyAt, mass }) => ({ likelyAt, grams: mass.grams, pack: null }));
  const packs = facts.packs.map((pack) => ({ likelyAt: pack.likelyAt, grams: gramsOf(facts, pack), pack }));
  let outGrams = 0;
  const windows: AxisSpan[] = [];
  for (const { grams, pack } of [...packs, ...removals].sort(byLikelyTime)) {
    const own = pack === null ? [] : ranges.flatMap((range) => partIn(facts, pack, range) ?? []);
    for (const { fromGrams, toGrams } of own) {
      windows.push({ fromGrams: outGrams + Math.min(fromGrams, grams), toGrams: outGrams + Math.min(toGrams, grams) });
    }
    outGrams += grams;
  }
  return {
    ...{ periodId: facts.period.id, hopperCode: facts.hopper.code, startedAt: facts.period.startedAt },
    ...{ additions, inGrams, outGrams, windows: joined(windows) },
  };
}

function byLikelyTime(one: { readonly likelyAt: Instant }, other: { readonly likelyAt: Instant }): number {
  if (one.likelyAt === other.likelyAt) return 0;
  return one.likelyAt < other.likelyAt ? -1 : 1;
}

/** Of packs that only likely left in this period, those. */
function gramsOf(facts: HopperPeriodFacts, { runId, likelyFromCount, likelyToCount }: PackExit): number {
  const meanNet = facts.runs.get(runId)?.meanNet;
  return meanNet === undefined ? 0 : packMass(meanNet, likelyFromCount, likelyToCount).grams;
}

/** Where packs of a range lie within the packs between two counts. */
function partIn(facts: HopperPeriodFacts, pack: PackExit, range: RunRange): AxisSpan | null {
  const meanNet = facts.runs.get(pack.runId)?.meanNet;
  if (range.runId !== pack.runId || meanNet === undefined) return null;
  const fromCount = Math.max(range.fromCount, pack.likelyFromCount);
  const toCount = Math.min(range.toCount, pack.likelyToCount);
  if (fromCount >= toCount) return null;
  const fromGrams = packMass(meanNet, pack.likelyFromCount, fromCount).grams;
  return { fromGrams, toGrams: fromGrams + packMass(meanNet, fromCount, toCount).grams };
}

/** Stretches that touch become one. */
function joined(spans: readonly AxisSpan[]): readonly AxisSpan[] {
  const whole: AxisSpan[] = [];
  for (const span of [...spans].sort((one, other) => one.fromGrams - other.fromGrams)) {
    const last = whole.at(-1);
    if (span.toGrams <= span.fromGrams) continue;
    if (last !== undefined && span.fromGrams <= last.toGrams) {
      whole[whole.length - 1] = { ...last, toGrams: Math.max(last.toGrams, span.toGrams) };
    } else whole.push(span);
  }
  return whole;
}
