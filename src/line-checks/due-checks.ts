import type { RunRow } from '../packing/packing-run-rows.js';
import { openRunOfLine } from '../packing/packing-runs.js';
import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { shiftAt } from '../plant/plant-facts.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import { plansOfLine } from './check-plans.js';
import { dueState, minutesUntil, type DueFacts, type DueState, type DueWord, type LastCheck } from './due-state.js';

/** A check of a line, and how it stands now. */
export interface DueCheck extends DueState {
  readonly plan: CheckPlanRow;
  /** Whole minutes until it is due, negative once it is; null where no time is known. */
  readonly minutesLeft: number | null;
  readonly last: LastOfPlan | null;
}

export interface LastOfPlan extends LastCheck {
  readonly id: string;
  readonly planId: string;
  readonly personId: string | null;
}

const order: readonly DueWord[] = ['failed', 'overdue', 'due', 'later', 'done', 'on-demand', 'idle'];

/** The checks of a line as they stand at an instant, the most pressing first. */
export async function dueChecks(from: ReadFrom, lineId: string, now: Instant): Promise<readonly DueCheck[]> {
  const plans = await plansOfLine(from, lineId, now);
  const [plan] = plans;
  if (plan === undefined) return [];
  const facts = await dueFacts(from, plan.siteId, await openRunOfLine(from, lineId), now);
  const last = await lastChecks(
    from,
    plans.map(({ planId }) => planId),
  );
  return plans
    .map((one) => dueCheck(one, facts, last.get(one.planId) ?? null, now))
    .sort((one, other) => order.indexOf(one.word) - order.indexOf(other.word) || byTime(one, other));
}

/** How one plan stands at an instant. */
export async function dueCheckOf(from: ReadFrom, plan: CheckPlanRow, now: Instant): Promise<DueCheck> {
  const facts = await dueFacts(from, plan.siteId, await openRunOfLine(from, plan.lineId), now);
  return dueCheck(plan, facts, (await lastChecks(from, [plan.planId])).get(plan.planId) ?? null, now);
}

function dueCheck(plan: CheckPlanRow, facts: DueFacts, last: LastOfPlan | null, now: Instant): DueCheck {
  const state = dueState(plan, facts, last, now);
  return { ...state, plan, last, minutesLeft: state.dueAt === null ? null : minutesUntil(state.dueAt, now) };
}

function byTime(one: DueCheck, other: DueCheck): number {
  if (one.dueAt === other.dueAt) return one.plan.planId < other.plan.planId ? -1 : 1;
  return (one.dueAt ?? '~') < (other.dueAt ?? '~') ? -1 : 1;
}

async function dueFacts(from: ReadFrom, siteId: string, run: RunRow | null, now: Instant): Promise<DueFacts> {
  const shiftStartedAt = (await shiftAt(from, siteId, now)).startsAt;
  if (run === null) return { run, shiftStartedAt, codeChangedAt: [], filmFittedAt: [] };
  const changes = await from.sql<{ what: string; at: Instant }>`
    SELECT 'code' AS "what", "changed_at" AS "at" FROM "coder_change"
    WHERE "run_id" = ${run.id} AND "voided_by" IS NULL
    UNION ALL SELECT 'film', "fitted_at" FROM "film_use" WHERE "run_id" = ${run.id} AND "voided_by" IS NULL
    ORDER BY 2`;
  const timesOf = (what: string): Instant[] => changes.filter((row) => row.what === what).map(({ at }) => at);
  return { run, shiftStartedAt, codeChangedAt: timesOf('code'), filmFittedAt: timesOf('film') };
}

/** The last good row of each plan, by the time of the check. */
async function lastChecks(from: ReadFrom, planIds: readonly string[]): Promise<ReadonlyMap<string, LastOfPlan>> {
  const rows = await from.sql<Omit<LastOfPlan, 'passed'> & { passed: boolean | number }>`
    SELECT c."id", c."plan_id" AS "planId", c."occurred_at" AS "occurredAt", c."passed", c."person_id" AS "personId"
    FROM "line_check" c
    WHERE c."plan_id" IN (${() => [...planIds]}) AND c."voided_by" IS NULL AND c."id" = (
      SELECT x."id" FROM "line_check" x WHERE x."plan_id" = c."plan_id" AND x."voided_by" IS NULL
      ORDER BY x."occurred_at" DESC, x."id" DESC LIMIT 1)`;
  return new Map(rows.map((row) => [row.planId, { ...row, passed: toBoolean(row.passed) }]));
}
