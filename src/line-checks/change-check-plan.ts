import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { insertVersion, settleRuleBeginning } from '../plant/valid-from.js';
import type { CheckPlanAnswer } from './add-check-plan.js';
import { CheckPlan } from './check-plan.entity.js';
import type { ChangeCheckPlanForm } from './check-plan.form.js';
import { versionsOfPlan } from './check-plans.js';
import { planContent } from './plan-content.js';

/**
 * A plan says something else from now on, or from a later instant on: a new version of all it says. Line, format and
 * kind stay; what was checked by the earlier version stays checked.
 * Refusals: `check-plan-ended`, `valid-from-not-later`, `valid-from-in-the-past`, those of what a plan asks for.
 */
@Injectable()
export class ChangeCheckPlan {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, planId: string, form: ChangeCheckPlanForm): Promise<CheckPlanAnswer> {
    return this.changes.run(asked, { planId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const last = (await versionsOfPlan(tx, planId)).at(-1);
      if (last?.siteId !== siteId) throw new NotFound('check-plan', planId);
      if (!last.isInForce) throw new Refusal('check-plan-ended', { station: last.station, endedAt: last.validFrom });
      const { lineId, formatId, kind } = last;
      const content = planContent(kind, form);
      const stated = { validFrom: form.validFrom ?? null, reason: null, now: change.recordedAt };
      const validFrom = settleRuleBeginning({ ...stated, latest: last.validFrom });
      const id = this.ids.next();
      const kept = { ...content, isInForce: true, validFrom };
      await insertVersion(tx, CheckPlan, { id, planId, siteId, lineId, formatId, kind, ...kept, personId });
      return {
        answer: { planId, id, validFrom },
        entry: {
          action: 'change-check-plan',
          subject: { kind: 'check-plan', id: planId },
          touches: [{ kind: 'packing-line', id: lineId }],
          before: { planVersionId: last.id, validFrom: last.validFrom },
          after: { planVersionId: id, ...kept },
        },
      };
    });
  }
}
