import { Injectable } from '@nestjs/common';
import { findBag } from '../drying/bulk-bags.js';
import type { Asked, Change, Subject } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { raisePoint } from '../open-points/raise-point.js';
import { recordCount } from '../packing/count-packs.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { runOfLineAt } from '../packing/packing-runs.js';
import { canonicalText } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { bringCheckPoints } from './bring-check-points.js';
import type { CheckPlanRow } from './check-plan-rows.js';
import { planAt } from './check-plans.js';
import { brokenCheckRules } from './check-rules.js';
import { judgeCheck } from './judge-check.js';
import { LineCheck } from './line-check.entity.js';
import type { CheckLineForm } from './line-check.form.js';

export interface CheckAnswer {
  readonly id: string;
  readonly planId: string;
  readonly passed: boolean;
  /** When the next is due; null where the clock does not ask for one. */
  readonly dueAt: Instant | null;
}

/**
 * Somebody checked a line as a plan asks. A failed check is always taken, opens a point for quality and keeps the plan due
 * until a good one. A good one that somebody else entered a moment ago is not taken twice. What was kept on a
 * device or on paper is taken whatever the rules say, and opens a point where it breaks one.
 * Refusals: `check-plan-ended`, `check-there-already`, `check-needs-action`, `check-needs-second-person`,
 * `second-person-same`, `no-run-to-read-code-of`, those of the time and of the count.
 */
@Injectable()
export class CheckLine {
  private readonly nextId = (): string => this.ids.next();

  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, planId: string, form: CheckLineForm): Promise<CheckAnswer> {
    return this.changes.run(asked, { planId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const stated = { statedAt: form.checkedAt ?? null, reason: form.reason ?? null };
      const { occurredAt, statedAt, reason, hasHappened } = settleAsked(asked, stated, change.recordedAt);
      const checkedBy = asked.happening?.writtenBy ?? personId;
      const plan = await planAt(tx, siteId, planId, occurredAt);
      await lockPlan(tx, planId);
      const run = await runOfLineAt(tx, plan.lineId, occurredAt);
      const judged = await judgeCheck(tx, { plan, run, at: occurredAt }, form);
      const { passed, readCode, intendedCode } = judged;
      const broken = await brokenCheckRules(tx, { actor: asked.actor, checkedBy, plan, at: occurredAt, passed, form });
      const bagId = await bagOf(tx, siteId, plan, form);
      const uncounted = await this.count(tx, run, occurredAt, form);
      const against = uncounted === null ? broken : [...broken, uncounted];
      if (!hasHappened && against[0] !== undefined) throw against[0];
      const id = this.ids.next();
      const results = judged.results.map((result) => ({ ...result }));
      const found = { passed, readCode, action: form.action ?? null, secondPersonId: form.secondPersonId ?? null };
      await tx.insert(LineCheck, {
        ...{ id, siteId, planId, planVersionId: plan.id, lineId: plan.lineId, runId: run?.id ?? null, bagId },
        ...{ occurredAt, ...found, intendedCode, results: canonicalText(results), note: form.note ?? null, personId },
      });
      if (bagId !== null && !passed) await this.pointAtBag(tx, change, plan, bagId);
      await this.pointsAtRules(tx, change, plan, { checkId: id, against });
      const bringing = { nextId: this.nextId, siteId, planId, personId, at: change.recordedAt };
      const { dueAt } = await bringCheckPoints(tx, bringing);
      return {
        answer: { id, planId, passed, dueAt },
        entry: {
          action: 'check-line',
          subject: { kind: 'check-plan', id: planId },
          touches: touched(plan, run, bagId, id),
          after: { checkId: id, ...found, results, packCount: form.packCount ?? null },
          ...{ reason, occurredAt, statedAt },
        },
      };
    });
  }

  /** Takes the counter where it was read with the check; answers why it does not fit, else null. */
  private async count(tx: Tx, run: RunRow | null, countedAt: Instant, form: CheckLineForm): Promise<Refusal | null> {
    const packCount = form.packCount ?? null;
    if (packCount === null || run === null) return null;
    try {
      await recordCount(tx, { id: this.ids.next(), runId: run.id, packCount, countedAt, occasion: 'other' });
      return null;
    } catch (error) {
      if (error instanceof Refusal) return error;
      throw error;
    }
  }

  private async pointAtBag(tx: Tx, { recordedAt }: Change, plan: CheckPlanRow, bagId: string): Promise<void> {
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId: plan.siteId,
      cause: 'torn-bag-found',
      facts: { line: plan.lineCode, check: plan.station },
      subject: { kind: 'bulk-bag', id: bagId },
      role: 'quality-officer',
      at: recordedAt,
    });
  }

  private async pointsAtRules(
    tx: Tx,
    { recordedAt }: Change,
    plan: CheckPlanRow,
    { checkId, against }: { readonly checkId: string; readonly against: readonly Refusal[] },
  ): Promise<void> {
    if (against.length === 0) return;
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId: plan.siteId,
      cause: 'check-happened-against-rule',
      facts: { line: plan.lineCode, check: plan.station, rule: against.map(({ code }) => code).join(', ') },
      subject: { kind: 'line-check', id: checkId },
      role: 'quality-officer',
      at: recordedAt,
    });
  }
}

/** Takes a plan for this unit: whoever else records a check of it or holds after one waits. */
export async function lockPlan(tx: Tx, planId: string): Promise<void> {
  await tx.sql`UPDATE "check_plan_state" SET "check_count" = "check_count" + 1 WHERE "plan_id" = ${planId}`;
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
