import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints } from '../open-points/raise-point.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { HoldClass } from './hold-class.entity.js';
import type { SetHoldClassForm } from './hold.form.js';
import { findHold } from './holds.js';

/**
 * A quality officer says what a hold is about: a hazard to people, or quality alone.
 * Refusals: `hold-already-lifted`, `hold-class-unchanged`; not found: hold.
 */
@Injectable()
export class SetHoldClass {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SetHoldClassForm): Promise<{ holdId: string; hazard: 'safety' | 'quality' }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const { hazard, reason } = form;
      const hold = await findHold(tx, siteId, form.hold);
      if (hold.liftedAt !== null) throw new Refusal('hold-already-lifted', { hold: hold.number });
      if (hold.hazardSet === hazard) throw new Refusal('hold-class-unchanged', { hold: hold.number, hazard });
      const at = change.recordedAt;
      await tx.insert(HoldClass, { id: this.ids.next(), holdId: hold.id, hazard, reason, setAt: at, voidedBy: null });
      const subject = { kind: 'hold', id: hold.id };
      const nextId = (): string => this.ids.next();
      await clearPoints(tx, { nextId, siteId, cause: 'hold-without-class', subject, personId, at });
      await leaveReachJob(tx, { id: nextId(), siteId, holdId: hold.id, at });
      return {
        answer: { holdId: hold.id, hazard },
        entry: {
          action: 'set-hold-class',
          subject,
          touches: [{ kind: hold.scopeKind, id: hold.scopeId }],
          before: { hazard: hold.hazardSet },
          after: { hazard },
          reason,
        },
      };
    });
  }
}
