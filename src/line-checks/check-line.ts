import { Injectable } from '@nestjs/common';
import { findBag } from '../drying/bulk-bags.js';
import type { Asked, Change, Subject } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { raisePoint } from '../open-points/raise-point.js';
import { recordCount } from '../packing/count-packs.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { runOfLineAt } from '../packing/packing-runs.js';
import { canonicalText } from '../platform/canonical-text.js';
import { shifted, type Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { personOf } from '../people/people.js';
import { bringCheckPoints } from './bring-check-points.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import { planAt } from './check-plans.js';
import type { CheckLineForm } from './line-check.form.js';
import { LineCheck } from './line-check.entity.js';
import { judgeCheck, type Judged } from './judge-check.js';

/** Two good checks of one plan so close together are one that two people entered. Our own value, no source. */
const sameCheckMilliseconds = 2 * 60_000;

export interface CheckAnswer {
  readonly id: string;
  readonly planId: string;
  readonly passed: boolean;
  /** When the next is due; null where the clock does not ask for one. */
  readonly dueAt: Instant | null;
}

/**
 * Somebody checked a line as a plan asks. A failed check is always taken, opens a point for quality and keeps the plan due
 * until a good one. A good one that somebody else entered a moment ago is not taken twice.
 * Refusals: `check-plan-ended`, `check-there-already`, `check-needs-action`, `second-person-needed`,
 * `second-person-same`, `no-run-to-read-code-of`, those of the time and of the count.
 */
@Injectable()
export class CheckLine {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, planId: string, form: CheckLineForm): Promise<CheckAnswer> {
    return this.changes.run(asked, { planId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.checkedAt ?? null, change.recordedAt, reason);
      const plan = await planAt(tx, siteId, planId, occurredAt);
      if (!plan.isInForce) throw new Refusal('check-plan-ended', { station: plan.station, endedAt: plan.validFrom });
      await lockPlan(tx, planId);
      const run = await runOfLineAt(tx, plan.lineId, occurredAt);
      const judged = await judgeCheck(tx, { plan, run, at: occurredAt }, form);
      const secondPersonId = await this.secondPerson(tx, asked, plan, form);
      if (judged.passed) await refuseSameCheck(tx, planId, occurredAt);
      else if (form.action == null) throw new Refusal('check-needs-action', { station: plan.station });
      const bagId = await bagOf(tx, siteId, plan, form);
      const packCount = await this.count(tx, run, occurredAt, form);
      const id = this.ids.next();
      const results = judged.results.map((result) => ({ ...result }));
      const found = { passed: judged.passed, action: form.action ?? null };
      await tx.insert(LineCheck, {
        ...{ id, siteId, planId, planVersionId: plan.id, lineId: plan.lineId, runId: run?.id ?? null, bagId },
        ...{
          occurredAt,
          ...found,
          results: canonicalText(results),
          readCode: judged.readCode,
          intendedCode: judged.intendedCode,
        },
        ...{ note: form.note ?? null, personId, secondPersonId },
      });
      const due = await this.points(tx, change, { asked, plan, judged, bagId });
      return {
        answer: { id, planId, passed: judged.passed, dueAt: due },
        entry: {
          action: 'check-line',
          subject: { kind: 'check-plan', id: planId },
          touches: touched(plan, run, bagId, id),
          after: { checkId: id, ...found, results, readCode: judged.readCode, secondPersonId, packCount },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async secondPerson(tx: Tx, asked: Asked, plan: CheckPlanRow, form: CheckLineForm): Promise<string | null> {
    const secondPersonId = form.secondPersonId ?? null;
    if (secondPersonId === null) {
      if (plan.needsSecondPerson) throw new Refusal('second-person-needed', { station: plan.station });
      return null;
    }
    if (secondPersonId === asked.actor.personId) throw new Refusal('second-person-same');
    await personOf(tx, asked.actor.siteId, secondPersonId);
    return secondPersonId;
  }

  /** The counter as it was read with the check, else null. */
  private async count(tx: Tx, run: RunRow | null, countedAt: Instant, form: CheckLineForm): Promise<number | null> {
    const packCount = form.packCount ?? null;
    if (packCount === null || run === null) return null;
    await recordCount(tx, { id: this.ids.next(), runId: run.id, packCount, countedAt, occasion: 'other' });
    return packCount;
  }

  private async points(
    tx: Tx,
    change: Change,
    what: { asked: Asked; plan: CheckPlanRow; judged: Judged; bagId: string | null },
  ): Promise<Instant | null> {
    const { siteId, personId } = what.asked.actor;
    const nextId = (): string => this.ids.next();
    const at = change.recordedAt;
    if (what.plan.kind === 'torn-bag' && !what.judged.passed && what.bagId !== null) {
      const facts = { line: what.plan.lineCode, check: what.plan.station };
      const subject = { kind: 'bulk-bag', id: what.bagId };
      const point = { siteId, cause: 'torn-bag-found', facts, subject, role: 'quality-officer', at } as const;
      await raisePoint(tx, { id: nextId(), ...point });
    }
    const { dueAt } = await bringCheckPoints(tx, { nextId, siteId, planId: what.plan.planId, personId, at });
    return dueAt;
  }
}

/** Takes a plan for this unit: whoever else records a check of it or holds after one waits. */
export async function lockPlan(tx: Tx, planId: string): Promise<void> {
  await tx.sql`UPDATE "check_plan_state" SET "check_count" = "check_count" + 1 WHERE "plan_id" = ${planId}`;
}

async function refuseSameCheck(tx: Tx, planId: string, at: Instant): Promise<void> {
  const [same] = await tx.sql<{ occurredAt: Instant }>`
    SELECT "occurred_at" AS "occurredAt" FROM "line_check"
    WHERE "plan_id" = ${planId} AND "passed" = ${true} AND "voided_by" IS NULL
      AND "occurred_at" >= ${shifted(at, -sameCheckMilliseconds)}
      AND "occurred_at" <= ${shifted(at, sameCheckMilliseconds)} LIMIT 1`;
  if (same !== undefined) throw new Refusal('check-there-already', { at: same.occurredAt });
}

async function bagOf(tx: Tx, siteId: string, plan: CheckPlanRow, form: CheckLineForm): Promise<string | null> {
  if (plan.kind !== 'torn-bag') return null;
  if (form.bag == null) throw new BadForm([{ field: 'bag', code: 'field-missing', facts: {} }]);
  return (await findBag(tx, siteId, form.bag)).id;
}

function touched(plan: CheckPlanRow, run: RunRow | null, bagId: string | null, checkId: string): readonly Subject[] {
  return [
    { kind: 'line-check', id: checkId },
    { kind: 'packing-line', id: plan.lineId },
    ...(run === null ? [] : [{ kind: 'packing-run', id: run.id }]),
    ...(bagId === null ? [] : [{ kind: 'bulk-bag', id: bagId }]),
  ];
}
