import type { Mass } from '../core/hopper-flow/hopper-event.js';
import type { TimedEvent } from '../core/hopper-flow/timed-event.js';
import type { HopperRow } from '../plant/plant-rows.js';
import { hopperOf } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import { once, type ReadFrom } from '../platform/database/reading.js';
import { readAdditions, type AdditionFact } from './addition-facts.js';
import { everyExit, type PackExit } from './counted-packs.js';
import { readExits, type ExitFacts } from './exit-facts.js';
import { modelInForce, type ModelRow } from './flow-models.js';
import { periodOf, type PeriodRow } from './hopper-period-rows.js';
import type { LevelSeen } from './level-seen.entity.js';
import { noEnd, timeUncertaintyAt, windowOfLevel, type Stretch, type TimeWindow } from './record-times.js';

export { currentPeriod } from './hopper-period-rows.js';

/** What someone or something measured to be inside. */
export interface LevelFact extends TimeWindow {
  readonly id: string;
  readonly how: LevelSeen['how'];
  readonly lowerGrams: number;
  readonly upperGrams: number;
  readonly seenAt: Instant;
}

/** Everything that was recorded of a hopper from one proven empty to the next, each with its limits and its times. */
export interface HopperPeriodFacts extends ExitFacts {
  readonly period: PeriodRow;
  readonly hopper: HopperRow;
  /** What was chosen for the hopper when the period began: all of it goes by that. Null: first in, first out. */
  readonly chosen: ModelRow | null;
  readonly additions: readonly AdditionFact[];
  readonly levels: readonly LevelFact[];
  /** The packs of every count, run by run; made when they are asked for. */
  readonly packs: readonly PackExit[];
}

/**
 * Reads a hopper period. One query a kind, so its cost is that of the period's rows and of nothing before it.
 *
 * @throws {NotFound} `hopper-period`
 */
export function readHopperPeriod(from: ReadFrom, periodId: string): Promise<HopperPeriodFacts> {
  return once(from, `hopper-period ${periodId}`, () => readPeriodFacts(from, periodId));
}

async function readPeriodFacts(from: ReadFrom, periodId: string): Promise<HopperPeriodFacts> {
  const period = await periodOf(from, periodId);
  const hopper = await hopperOf(from, period.hopperId);
  const doubt = await timeUncertaintyAt(from, period.siteId, period.startedAt);
  const stretch: Stretch = { fromAt: period.startedAt, untilAt: period.endedAt ?? noEnd };
  const additions = await readAdditions(from, period, doubt, stretch);
  const levels = (await levelsOfPeriod(from, periodId)).map((level) => ({
    ...level,
    ...windowOfLevel(level, doubt, stretch),
  }));
  const chosen = await modelInForce(from, hopper.id, period.startedAt);
  const exits = await readExits(from, period, doubt);
  let packs: readonly PackExit[] | null = null;
  return {
    ...{ period, hopper, chosen, additions, levels, ...exits },
    get packs() {
      return (packs ??= everyExit(exits.counted));
    },
  };
}

/** The last instant that the records of a period speak of. */
export function lastInstantOf(facts: HopperPeriodFacts): Instant {
  const { period, additions, packs, removals, levels } = facts;
  if (period.endedAt !== null) return period.endedAt;
  let last = period.startedAt;
  const see = (at: Instant): void => {
    if (at > last && at !== noEnd) last = at;
  };
  for (const { openedAt, latestAt } of additions) {
    see(openedAt);
    see(latestAt);
  }
  for (const { latestAt } of [...packs, ...removals, ...levels]) see(latestAt);
  return last;
}

/** What is taken to be inside when the records end: left as the last exit of all, so that nothing remains. */
export interface LeftInside {
  readonly mass: Mass;
  readonly at: Instant;
}

/** The additions and levels of a period in the shape of the core. */
export function timedAdditionsAndLevels(facts: HopperPeriodFacts): TimedEvent<Instant>[] {
  return [
    ...facts.additions.map(({ id, mass, earliestAt, likelyAt, latestAt }): TimedEvent<Instant> => {
      return { event: { kind: 'addition', id, mass }, earliestAt, likelyAt, latestAt };
    }),
    ...facts.levels.map(({ id, lowerGrams, upperGrams, earliestAt, likelyAt, latestAt }): TimedEvent<Instant> => {
      return { event: { kind: 'level-seen', id, lowerGrams, upperGrams }, earliestAt, likelyAt, latestAt };
    }),
  ];
}

type StoredLevel = Omit<LevelFact, keyof TimeWindow> & { readonly isLate: boolean | number };

async function levelsOfPeriod(
  from: ReadFrom,
  periodId: string,
): Promise<(Omit<LevelFact, keyof TimeWindow> & { readonly isLate: boolean })[]> {
  const rows = await from.sql<StoredLevel>`
    SELECT "id", "how", "lower_grams" AS "lowerGrams", "upper_grams" AS "upperGrams", "seen_at" AS "seenAt",
      "is_late" AS "isLate"
    FROM "level_seen" WHERE "period_id" = ${periodId} AND "voided_by" IS NULL ORDER BY "seen_at", "id"`;
  return rows.map((row) => ({ ...row, isLate: toBoolean(row.isLate) }));
}
