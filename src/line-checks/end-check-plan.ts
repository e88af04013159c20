import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { canonicalText } from '../platform/canonical-text.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { insertVersion, settleRuleBeginning } from '../plant/valid-from.js';
import type { CheckPlanAnswer } from './add-check-plan.js';
import { bringCheckPoints } from './bring-check-points.js';
import { CheckPlan } from './check-plan.entity.js';
import type { EndCheckPlanForm } from './check-plan.form.js';
import { versionsOfPlan } from './check-plans.js';

/**
 * A plan is not in force from now on; its checks stay.
 * Refusals: `check-plan-ended`, `valid-from-not-later`.
 */
@Injectable()
export class EndCheckPlan {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, planId: string, form: EndCheckPlanForm): Promise<CheckPlanAnswer> {
    return this.changes.run(asked, { planId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const last = (await versionsOfPlan(tx, planId)).at(-1);
      if (last?.siteId !== siteId) throw new NotFound('check-plan', planId);
      if (!last.isInForce) throw new Refusal('check-plan-ended', { station: last.station, endedAt: last.validFrom });
      const stated = { validFrom: null, reason: null, now: change.recordedAt, latest: last.validFrom };
      const validFrom = settleRuleBeginning(stated);
      const id = this.ids.next();
      const { lineId, formatId, kind, station, everyMinutes, graceMinutes, needsSecondPerson } = last;
      const content = { station, everyMinutes, graceMinutes, needsSecondPerson };
      await insertVersion(tx, CheckPlan, {
        id,
        planId,
        ...{ siteId, lineId, formatId, kind, ...content },
        events: canonicalText([...last.events]),
        testPieces: canonicalText(last.testPieces.map((piece) => ({ ...piece }))),
        isInForce: false,
        validFrom,
        personId,
      });
      await bringCheckPoints(tx, { nextId: () => this.ids.next(), siteId, planId, personId, at: change.recordedAt });
      return {
        answer: { planId, id, validFrom },
        entry: {
          action: 'end-check-plan',
          subject: { kind: 'check-plan', id: planId },
          touches: [{ kind: 'packing-line', id: lineId }],
          after: { planVersionId: id, isInForce: false, validFrom },
          reason: form.reason,
        },
      };
    });
  }
}
