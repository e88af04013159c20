import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { onlyRow } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { HoldNarrowing } from './hold-narrowing.entity.js';
import type { WidenHoldForm } from './hold.form.js';
import { findHold } from './holds.js';

/**
 * A quality officer takes a narrowing back: the hold reaches again what it reached before it.
 * Refusals: `hold-already-lifted`, `already-corrected`; not found: hold-narrowing.
 */
@Injectable()
export class WidenHold {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: WidenHoldForm): Promise<{ holdId: string; narrowingId: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const row = onlyRow(
        await tx.sql<{ holdId: string }>`
          SELECT n."hold_id" AS "holdId" FROM "hold_narrowing" n JOIN "hold" h ON h."id" = n."hold_id"
          WHERE n."id" = ${form.narrowing} AND h."site_id" = ${asked.actor.siteId}`,
      );
      if (row === null) throw new NotFound('hold-narrowing', form.narrowing);
      const hold = await findHold(tx, asked.actor.siteId, row.holdId);
      if (hold.liftedAt !== null) throw new Refusal('hold-already-lifted', { hold: hold.number });
      await voidFact(tx, HoldNarrowing, form.narrowing, change);
      const { siteId } = asked.actor;
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: hold.id, at: change.recordedAt });
      return {
        answer: { holdId: hold.id, narrowingId: form.narrowing },
        entry: {
          action: 'widen-hold',
          subject: { kind: 'hold', id: hold.id },
          touches: [{ kind: hold.scopeKind, id: hold.scopeId }],
          before: { narrowingId: form.narrowing },
          reason: form.reason,
        },
      };
    });
  }
}
