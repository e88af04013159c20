import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import { runOf } from '../packing/packing-runs.js';
import { canonicalText } from '../platform/canonical-text.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { bringCheckPoints } from './bring-check-points.js';
import { planAt } from './check-plans.js';
import type { CorrectLineCheckForm } from './line-check.form.js';
import { LineCheck } from './line-check.entity.js';
import { judgeCheck } from './judge-check.js';
import { lockPlan } from './record-check.js';

export interface CorrectLineCheckAnswer {
  readonly planId: string;
  /** The check that stands in its place; null: there was no check. */
  readonly checkId: string | null;
  readonly passed: boolean | null;
}

/**
 * A check was not made, or its results were written down wrongly. That a failed check goes away, or becomes a good one, is
 * for quality to say: packs may be on hold for it. Holds stay until they are lifted.
 * Refusals: `already-corrected`, `failed-check-is-for-quality`, `check-needs-action`.
 */
@Injectable()
export class CorrectLineCheck {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, checkId: string, form: CorrectLineCheckForm): Promise<CorrectLineCheckAnswer> {
    return this.changes.run(asked, { checkId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const { siteId, personId, roles } = asked.actor;
      const old = await tx.findOne(LineCheck, { id: checkId, siteId });
      if (old === null) throw new NotFound('line-check', checkId);
      if (!old.passed && !roles.includes('quality-officer')) throw new Refusal('failed-check-is-for-quality');
      const { planId } = old;
      await lockPlan(tx, planId);
      await voidFact(tx, LineCheck, checkId, change);
      const replaced = form.why === 'incorrect-data' ? await this.replace(tx, old, form) : null;
      const nextId = (): string => this.ids.next();
      await bringCheckPoints(tx, { nextId, siteId, planId, personId, at: change.recordedAt });
      return {
        answer: { planId, checkId: replaced?.id ?? null, passed: replaced?.passed ?? null },
        entry: {
          action: 'correct-line-check',
          subject: { kind: 'check-plan', id: planId },
          touches: [
            { kind: 'line-check', id: checkId },
            { kind: 'packing-line', id: old.lineId },
          ],
          before: { id: checkId, passed: old.passed, results: old.results },
          after: { id: replaced?.id ?? null, passed: replaced?.passed ?? null, why: form.why },
          reason: form.reason,
        },
      };
    });
  }

  private async replace(tx: Tx, old: LineCheck, form: CorrectLineCheckForm): Promise<{ id: string; passed: boolean }> {
    const plan = await planAt(tx, old.siteId, old.planId, old.occurredAt);
    const run = old.runId === null ? null : await runOf(tx, old.runId);
    const judged = await judgeCheck(tx, { plan, run, at: old.occurredAt }, form);
    if (!judged.passed && form.action == null) throw new Refusal('check-needs-action', { station: plan.station });
    const id = this.ids.next();
    await tx.insert(LineCheck, {
      ...old,
      id,
      passed: judged.passed,
      results: canonicalText(judged.results.map((result) => ({ ...result }))),
      readCode: judged.readCode,
      intendedCode: judged.intendedCode,
      action: form.action ?? null,
      voidedBy: null,
    });
    return { id, passed: judged.passed };
  }
}
