import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { openPointIdOf } from '../open-points/open-points.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import { planAt } from './check-plans.js';
import { dueCheckOf, type DueCheck } from './due-checks.js';

/** What is brought in line, by whom and when. */
interface Bringing {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly planId: string;
  readonly personId: string | null;
  readonly at: Instant;
}

/** Raises and clears the points of a plan, so that they say what is so: overdue for the lead, failed for quality. */
export async function bringCheckPoints(tx: Tx, bringing: Bringing): Promise<DueCheck> {
  const { nextId, siteId, planId, personId, at } = bringing;
  const plan = await planAt(tx, siteId, planId, at);
  const due = await dueCheckOf(tx, plan, at);
  const subject = { kind: 'check-plan', id: planId };
  for (const { cause, role, isSo } of causesOf(plan, due)) {
    if (isSo) {
      const facts = { line: plan.lineCode, check: plan.station, at: due.dueAt };
      await raisePoint(tx, { id: nextId(), siteId, cause, facts, subject, role, at });
    } else {
      await clearPoints(tx, { nextId, siteId, cause, subject, personId, at });
    }
  }
  return due;
}

/** Whether the points of a plan say already what is so. */
export async function pointsSaySo(from: ReadFrom, due: DueCheck): Promise<boolean> {
  const { siteId, planId } = due.plan;
  for (const { cause, isSo } of causesOf(due.plan, due)) {
    const open = await openPointIdOf(from, { siteId, cause, subject: { kind: 'check-plan', id: planId } });
    if ((open !== null) !== isSo) return false;
  }
  return true;
}

function causesOf(plan: CheckPlanRow, due: DueCheck) {
  // A failed check stays a point while no run is open: what was packed before it waits for quality.
  const hasFailed = plan.kind !== 'torn-bag' && due.last?.passed === false;
  return [
    { cause: 'line-check-overdue', role: 'line-lead', isSo: plan.isInForce && due.word === 'overdue' },
    { cause: 'line-check-failed', role: 'quality-officer', isSo: hasFailed },
  ] as const;
}
