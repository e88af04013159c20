import type { RunRow } from '../../packing/packing-run-rows.js';
import { openRunOfLine } from '../../packing/packing-runs.js';
import { millisecondsBetween, shifted, type Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { handPlanFor, type HandPlanRow } from './hand-plans.js';

const minute = 60_000;

/** When the next hand sample of a line is due. */
export interface DueHandSample {
  readonly plan: HandPlanRow;
  readonly run: RunRow;
  /** When packs of the run were last weighed by hand; null: never. */
  readonly lastAt: Instant | null;
  readonly dueAt: Instant;
  readonly word: 'later' | 'due' | 'overdue';
  /** Whole minutes until it is due, negative once it is. */
  readonly minutesLeft: number;
}

/**
 * The hand sample that a line owes: the first as its run begins, each other when its interval is over since the last.
 * Null where no run is open or nothing is planned for its format.
 */
export async function dueHandSample(from: ReadFrom, lineId: string, now: Instant): Promise<DueHandSample | null> {
  const run = await openRunOfLine(from, lineId);
  const plan = run === null ? null : await handPlanFor(from, run);
  if (run === null || plan === null) return null;
  const lastAt = await lastHandSampleAt(from, run.id);
  const wanted = lastAt === null ? run.startedAt : shifted(lastAt, plan.everyMinutes * minute);
  // Nobody is late for a plan that was set a moment ago.
  const dueAt = wanted > plan.setAt ? wanted : plan.setAt;
  const overdueAt = shifted(dueAt, plan.graceMinutes * minute);
  const word = dueAt > now ? 'later' : overdueAt > now ? 'due' : 'overdue';
  return { plan, run, lastAt, dueAt, word, minutesLeft: Math.floor(millisecondsBetween(now, dueAt) / minute) };
}

async function lastHandSampleAt(from: ReadFrom, runId: string): Promise<Instant | null> {
  const [row] = await from.sql<{ lastAt: Instant | null }>`
    SELECT MAX("weighed_at") AS "lastAt" FROM "mean_net" WHERE "run_id" = ${runId} AND "voided_by" IS NULL`;
  return row?.lastAt ?? null;
}
