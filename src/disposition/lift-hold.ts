import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints } from '../open-points/raise-point.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { HoldLift } from './hold-lift.entity.js';
import type { HoldLifted } from './hold.form.js';
import { findHold } from './holds.js';

/**
 * Quality lifts a hold, and says why. Other holds on the same things stay.
 * Refusals: `hold-already-lifted`; not found: hold.
 */
@Injectable()
export class LiftHold {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: HoldLifted): Promise<{ holdId: string; number: string; liftedAt: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const hold = await findHold(tx, siteId, form.hold);
      const at = change.recordedAt;
      if (hold.liftedAt !== null) throw new Refusal('hold-already-lifted', { hold: hold.number });
      await this.lift(tx, hold, { reason: form.reason, at });
      const subject = { kind: 'hold', id: hold.id };
      const nextId = (): string => this.ids.next();
      await clearPoints(tx, { nextId, siteId, cause: 'hold-without-class', subject, personId, at });
      return {
        answer: { holdId: hold.id, number: hold.number, liftedAt: at },
        entry: {
          action: 'lift-hold',
          subject,
          touches: [{ kind: hold.scopeKind, id: hold.scopeId }],
          after: { liftedAt: at },
          reason: form.reason,
        },
      };
    });
  }

  /** Two lifts at once: one row only may stand. */
  private async lift(
    tx: Tx,
    hold: { readonly id: string; readonly number: string },
    lifted: { readonly reason: string; readonly at: string },
  ): Promise<void> {
    const { reason, at } = lifted;
    try {
      await tx.insert(HoldLift, { id: this.ids.next(), holdId: hold.id, reason, liftedAt: at, voidedBy: null });
    } catch (error) {
      if (isTakenKey(error)) throw new Refusal('hold-already-lifted', { hold: hold.number });
      throw error;
    }
  }
}
