import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { BagMove } from './bag-move.entity.js';
import { BagState } from './bag-state.entity.js';
import { BagWeighing } from './bag-weighing.entity.js';
import type { CorrectBagForm } from './bag.form.js';
import { BulkBag } from './bulk-bag.entity.js';
import { findBag } from './bulk-bags.js';

/**
 * A bag was recorded that does not exist (started twice, or by mistake). Its numbers are never used again.
 * Refusals: `bag-in-use`; not found: bulk-bag.
 */
@Injectable()
export class CorrectBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: CorrectBagForm): Promise<{ id: string; number: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { id, number, status, netGrams } = await findBag(tx, asked.actor.siteId, form.bag);
      const isUntouched = status === 'filling' || status === 'full';
      // The state row is rebuildable; taking it away, guarded by its status, is what keeps a tip at the same moment out.
      const isGone = isUntouched && (await tx.remove(BagState, { bagId: id, status })) === 1;
      if (!isGone) throw new Refusal('bag-in-use', { bag: number, status });
      await voidFact(tx, BulkBag, id, change);
      const weighings = await tx.find(BagWeighing, { bagId: id, voidedBy: null });
      for (const weighing of weighings) await voidFact(tx, BagWeighing, weighing.id, change);
      const moves = await tx.find(BagMove, { bagId: id, voidedBy: null });
      for (const made of moves) await voidFact(tx, BagMove, made.id, change);
      await leaveReachJob(tx, { id: this.ids.next(), siteId: asked.actor.siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { id, number },
        entry: {
          action: 'correct-bag',
          subject: { kind: 'bulk-bag', id },
          before: { status, netGrams },
          after: { why: 'did-not-occur' },
          reason: form.reason,
        },
      };
    });
  }
}
