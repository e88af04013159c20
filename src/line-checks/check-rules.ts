import { personOf } from '../people/people.js';
import type { Actor } from '../platform/actor.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import type { CheckLineForm } from './line-check.form.js';

/** Two good checks of one plan so close together are one that two people entered. Our own value, no source. */
const sameCheckMilliseconds = 2 * 60_000;

/** A check as it is about to be recorded. */
export interface CheckInHand {
  readonly actor: Actor;
  /** Who checked: who keyed the row in did not, where somebody else wrote it. */
  readonly checkedBy: string | null;
  /** The thing that is checked sent it itself: nobody is there to be asked what was done, and each of its checks is one. */
  readonly isByMachine: boolean;
  readonly plan: CheckPlanRow;
  readonly at: Instant;
  readonly passed: boolean;
  readonly form: CheckLineForm;
}

/** The rules that a check breaks, each as the refusal that it would be if it had not happened yet. */
export async function brokenCheckRules(tx: Tx, check: CheckInHand): Promise<readonly Refusal[]> {
  const { actor, checkedBy, plan, passed, form } = check;
  const { station } = plan;
  const broken: Refusal[] = [];
  if (!plan.isInForce) broken.push(new Refusal('check-plan-ended', { station, endedAt: plan.validFrom }));
  const secondPersonId = form.secondPersonId ?? null;
  if (secondPersonId === null && plan.needsSecondPerson)
    broken.push(new Refusal('check-needs-second-person', { station }));
  if (secondPersonId !== null && secondPersonId === checkedBy) broken.push(new Refusal('second-person-same'));
  else if (secondPersonId !== null) await personOf(tx, actor.siteId, secondPersonId);
  if (!passed && form.action == null && !check.isByMachine) broken.push(new Refusal('check-needs-action', { station }));
  const sameAt = passed && !check.isByMachine ? await sameCheckAt(tx, plan.planId, check.at) : null;
  if (sameAt !== null) broken.push(new Refusal('check-there-already', { at: sameAt }));
  return broken;
}

/** When the same check was entered as good a moment before or after; null: it was not. */
async function sameCheckAt(tx: Tx, planId: string, at: Instant): Promise<Instant | null> {
  const [same] = await tx.sql<{ occurredAt: Instant }>`
    SELECT "occurred_at" AS "occurredAt" FROM "line_check"
    WHERE "plan_id" = ${planId} AND "passed" = ${true} AND "voided_by" IS NULL
      AND "occurred_at" >= ${shifted(at, -sameCheckMilliseconds)}
      AND "occurred_at" <= ${shifted(at, sameCheckMilliseconds)} LIMIT 1`;
  return same?.occurredAt ?? null;
}
