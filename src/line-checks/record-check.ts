import type { Change, Subject } from '../journal/entry-draft.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { recordCount } from '../packing/count-packs.js';
import { runOfLineAt } from '../packing/packing-runs.js';
import { findBag } from '../drying/bulk-bags.js';
import { canonicalText } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { bringCheckPoints } from './bring-check-points.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import { brokenCheckRules, type CheckInHand } from './check-rules.js';
import { judgeCheck } from './judge-check.js';
import { LineCheck } from './line-check.entity.js';
import type { CheckLineForm } from './line-check.form.js';

/** A check that is to be recorded: what a person found, or the thing itself sent. */
export interface CheckToRecord extends Omit<CheckInHand, 'passed'> {
  /** It is recorded whatever rule it breaks; a point says which. */
  readonly hasHappened: boolean;
}

export interface CheckAnswer {
  readonly id: string;
  readonly planId: string;
  readonly passed: boolean;
  /** When the next is due; null where the clock does not ask for one. */
  readonly dueAt: Instant | null;
}

interface InUnit {
  readonly tx: Tx;
  readonly change: Change;
  readonly nextId: () => string;
}

/**
 * Records a check in the unit, with its points; answers what the journal is to hold of it.
 *
 * @throws {Refusal} the first rule that it breaks, where it has not happened yet
 */
export async function recordCheck({ tx, change, nextId }: InUnit, check: CheckToRecord) {
  const { plan, actor, at, form } = check;
  const { siteId, personId } = actor;
  const { planId, lineId } = plan;
  await lockPlan(tx, planId);
  const run = await runOfLineAt(tx, lineId, at);
  const judged = await judgeCheck(tx, { plan, run, at }, form);
  const { passed, readCode, intendedCode } = judged;
  const broken = await brokenCheckRules(tx, { ...check, passed });
  const bagId = await bagOf(tx, plan, form);
  const uncounted = await takeCount({ tx, change, nextId }, run, check);
  const against = uncounted === null ? broken : [...broken, uncounted];
  if (!check.hasHappened && against[0] !== undefined) throw against[0];
  const id = nextId();
  const results = judged.results.map((result) => ({ ...result }));
  const found = { passed, readCode, action: form.action ?? null, secondPersonId: form.secondPersonId ?? null };
  await tx.insert(LineCheck, {
    ...{ id, siteId, planId, planVersionId: plan.id, lineId, runId: run?.id ?? null, bagId, occurredAt: at },
    ...{ ...found, intendedCode, results: canonicalText(results), note: form.note ?? null, personId },
  });
  const raise = pointsOf({ tx, change, nextId }, plan);
  if (bagId !== null && !passed) await raise('torn-bag-found', { kind: 'bulk-bag', id: bagId });
  const rule = against.map(({ code }) => code).join(', ');
  if (rule !== '') await raise('check-happened-against-rule', { kind: 'line-check', id }, { rule });
  const { dueAt } = await bringCheckPoints(tx, { nextId, siteId, planId, personId, at: change.recordedAt });
  const answer: CheckAnswer = { id, planId, passed, dueAt };
  return {
    answer,
    entry: {
      action: 'check-line',
      subject: { kind: 'check-plan', id: planId },
      touches: touched(plan, run, bagId, id),
      after: { checkId: id, ...found, results, packCount: form.packCount ?? null },
    },
  } as const;
}

/** Takes a plan for this unit: whoever else records a check of it or holds after one waits. */
export async function lockPlan(tx: Tx, planId: string): Promise<void> {
  await tx.sql`UPDATE "check_plan_state" SET "check_count" = "check_count" + 1 WHERE "plan_id" = ${planId}`;
}

/** Takes the counter where it was read with the check; answers why it does not fit, else null. */
async function takeCount({ tx, nextId }: InUnit, run: RunRow | null, check: CheckToRecord): Promise<Refusal | null> {
  const packCount = check.form.packCount ?? null;
  if (packCount === null || run === null) return null;
  try {
    await recordCount(tx, { id: nextId(), runId: run.id, packCount, countedAt: check.at, occasion: 'other' });
    return null;
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
}

function pointsOf({ tx, change, nextId }: InUnit, { siteId, lineCode, station }: CheckPlanRow) {
  return async (cause: string, subject: Subject, more: Readonly<Record<string, string>> = {}): Promise<void> => {
    const facts = { line: lineCode, check: station, ...more };
    await raisePoint(tx, {
      ...{ id: nextId(), siteId, cause, facts, subject },
      ...{ role: 'quality-officer' as const, at: change.recordedAt },
    });
  };
}

async function bagOf(tx: Tx, plan: CheckPlanRow, form: CheckLineForm): Promise<string | null> {
  if (plan.kind !== 'torn-bag') return null;
  if (form.bag == null) throw new BadForm([{ field: 'bag', code: 'field-missing', facts: {} }]);
  return (await findBag(tx, plan.siteId, form.bag)).id;
}

function touched(plan: CheckPlanRow, run: RunRow | null, bagId: string | null, checkId: string): readonly Subject[] {
  return [
    { kind: 'line-check', id: checkId },
    { kind: 'packing-line', id: plan.lineId },
    ...(run === null ? [] : [{ kind: 'packing-run', id: run.id }]),
    ...(bagId === null ? [] : [{ kind: 'bulk-bag', id: bagId }]),
  ];
}
