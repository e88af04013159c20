import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { bagTypeOf } from '../plant/bag-types.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { addBag, refuseOutsideRun } from './add-bag.js';
import type { StartBagForm } from './bag-fill.form.js';
import { BagTypeUse } from './bag-type-use.entity.js';
import { findDryerRun } from './dryer-runs.js';

export interface StartedBag {
  readonly id: string;
  readonly number: string;
  readonly sscc: string;
}

/**
 * A bag hangs under the filler of a dryer and gets its numbers.
 * Refusals: `time-before-run`, `dryer-run-ended`, `safe-load-missing`; not found: dryer-run, bag-type.
 */
@Injectable()
export class StartBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: StartBagForm): Promise<StartedBag> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.startedAt ?? null, change.recordedAt, reason);
      const { siteId } = asked.actor;
      const run = await findDryerRun(tx, siteId, form.run);
      refuseOutsideRun(run, occurredAt);
      const { safeLoadGrams, bagTypeId } = await makeOf(tx, siteId, form);
      const id = this.ids.next();
      const { number, sscc } = await addBag(tx, {
        id,
        siteId,
        origin: 'dryer-run',
        dryerRunId: run.id,
        receiptId: null,
        intendedGradeId: run.gradeId,
        linerLot: form.linerLot ?? null,
        safeLoadGrams,
        fillStartedAt: occurredAt,
        sscc: null,
      });
      if (bagTypeId !== null) await tx.insert(BagTypeUse, { id: this.ids.next(), bagId: id, bagTypeId });
      return {
        answer: { id, number, sscc },
        entry: {
          action: 'start-bag',
          subject: { kind: 'bulk-bag', id },
          touches: [{ kind: 'dryer-run', id: run.id }],
          after: { number, sscc, dryerRunId: run.id, safeLoadGrams, bagTypeId, startedAt: occurredAt },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** What the bag is made to carry: as its maker says, or as its type is known for. */
async function makeOf(
  tx: Tx,
  siteId: string,
  form: StartBagForm,
): Promise<{ readonly safeLoadGrams: number; readonly bagTypeId: string | null }> {
  const bagTypeId = form.bagTypeId ?? null;
  const type = bagTypeId === null ? null : await bagTypeOf(tx, siteId, bagTypeId);
  const safeLoadGrams = form.safeLoadGrams ?? type?.safeLoadGrams ?? null;
  if (safeLoadGrams === null) throw new Refusal('safe-load-missing');
  return { safeLoadGrams, bagTypeId };
}
