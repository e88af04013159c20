import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { issuePalletLabel } from './pallet-label-paper.js';
import { findPallet } from './pallet-list.js';

/**
 * A label is issued for a pallet as it is now: the first is lost, or a lot was corrected.
 * Refusals: `pallet-taken-apart`.
 */
@Injectable()
export class LabelPallet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pallet: string): Promise<{ readonly paperId: string }> {
    return this.changes.run(asked, { pallet }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const found = await findPallet(tx, siteId, pallet);
      if (found.status === 'taken-apart') throw new Refusal('pallet-taken-apart', { pallet: found.sscc });
      const draft = { nextId: () => this.ids.next(), siteId, recordedAt: change.recordedAt, personId };
      const paperId = await issuePalletLabel(tx, draft, found.id);
      return {
        answer: { paperId },
        entry: {
          action: 'label-pallet',
          subject: { kind: 'pallet', id: found.id },
          touches: [{ kind: 'paper', id: paperId }],
          after: { sscc: found.sscc },
        },
      };
    });
  }
}
