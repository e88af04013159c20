import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { Ids } from '../../platform/ids.js';
import { ofSite } from '../../plant/of-site.js';
import { formatOf, lineOf } from '../../plant/plant-facts.js';
import { leaveLookAtWeighing } from '../look-job.js';
import type { SetHandPlanForm } from './hand-plan.form.js';
import { HandSamplePlan } from './hand-sample-plan.entity.js';

/**
 * How often packs of a line are weighed by hand, and how many: for one format or for all. What was set before no longer holds.
 * Refusals: none; not found: line, format.
 */
@Injectable()
export class SetHandPlan {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetHandPlanForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const line = ofSite(asked.actor, 'packing-line', await lineOf(tx, form.lineId));
      const formatId = form.formatId ?? null;
      if (formatId !== null) ofSite(asked.actor, 'pack-format', await formatOf(tx, formatId));
      const { everyMinutes, packCount, graceMinutes } = form;
      const id = this.ids.next();
      const kept = { lineId: line.id, formatId, everyMinutes, packCount, graceMinutes, isInForce: true };
      await tx.insert(HandSamplePlan, { id, siteId, ...kept, setAt: change.recordedAt });
      await leaveLookAtWeighing(tx, { id: this.ids.next(), at: change.recordedAt });
      return {
        answer: { id },
        entry: { action: 'set-hand-sample-plan', subject: { kind: 'packing-line', id: line.id }, after: kept },
      };
    });
  }
}
