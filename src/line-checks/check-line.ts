import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { Ids } from '../platform/ids.js';
import { planAt } from './check-plans.js';
import type { CheckLineForm } from './line-check.form.js';
import { recordCheck, type CheckAnswer } from './record-check.js';

/**
 * Somebody checked a line as a plan asks. A failed check is always taken, opens a point for quality and keeps the plan due
 * until a good one. A good one that somebody else entered a moment ago is not taken twice. What was kept on a
 * device or on paper is taken whatever the rules say, and opens a point where it breaks one.
 * Refusals: `check-plan-ended`, `check-there-already`, `check-needs-action`, `check-needs-second-person`,
 * `second-person-same`, `no-run-to-read-code-of`, those of the time and of the count; as a bad form a reading that
 * cannot be meant.
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
      const { answer, entry } = await recordCheck(
        { tx, change, nextId: this.nextId },
        { plan, actor: asked.actor, checkedBy, isByMachine: false, at: occurredAt, hasHappened, form },
      );
      return { answer, entry: { ...entry, reason, occurredAt, statedAt } };
    });
  }
}
