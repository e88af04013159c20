import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { Ids } from '../../platform/ids.js';
import { Refusal } from '../../platform/refusal.js';
import { ofSite } from '../../plant/of-site.js';
import { lineOf } from '../../plant/plant-facts.js';
import { bringSamplePoint } from './bring-sample-point.js';
import type { EndHandPlanForm } from './hand-plan.form.js';
import { handPlansOf } from './hand-plans.js';
import { HandSamplePlan } from './hand-sample-plan.entity.js';

/**
 * Packs of a line are no longer weighed by hand by plan.
 * Refusals: `no-hand-sample-plan`; not found: line.
 */
@Injectable()
export class EndHandPlan {
  private readonly nextId = (): string => this.ids.next();

  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: EndHandPlanForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const line = ofSite(asked.actor, 'packing-line', await lineOf(tx, form.lineId));
      const formatId = form.formatId ?? null;
      const plan = (await handPlansOf(tx, siteId)).find((one) => one.lineId === line.id && one.formatId === formatId);
      if (plan === undefined) throw new Refusal('no-hand-sample-plan', { line: line.code });
      const { everyMinutes, packCount, graceMinutes } = plan;
      const id = this.nextId();
      const kept = { lineId: line.id, formatId, everyMinutes, packCount, graceMinutes };
      await tx.insert(HandSamplePlan, { id, siteId, ...kept, isInForce: false, setAt: change.recordedAt });
      await bringSamplePoint(tx, { nextId: this.nextId, siteId, lineId: line.id, personId, at: change.recordedAt });
      return {
        answer: { id },
        entry: {
          action: 'end-hand-sample-plan',
          subject: { kind: 'packing-line', id: line.id },
          before: kept,
          reason: form.reason,
        },
      };
    });
  }
}
