import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { contentsOf, findPallet } from './pallet-list.js';
import type { TakeApartForm } from './pallet.form.js';
import { endPallet } from './replace-pallets.js';

export interface TakeApartAnswer {
  readonly id: string;
  readonly packCount: number;
}

/**
 * A pallet is taken down and its packs are loose again; they may be put onto other pallets by their counts.
 * Refusals: `pallet-not-in-store`, `before-it-was-built`.
 */
@Injectable()
export class TakePalletApart {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pallet: string, form: TakeApartForm): Promise<TakeApartAnswer> {
    return this.changes.run(asked, { pallet, ...form }, async (tx, change) => {
      const ended = await findPallet(tx, asked.actor.siteId, pallet);
      const { occurredAt, statedAt } = settleOccurredAt(form.takenApartAt ?? null, change.recordedAt, form.reason);
      const contents = await contentsOf(tx, [ended.id]);
      const id = this.ids.next();
      await endPallet(tx, { pallet: ended, id, reason: form.reason, takenApartAt: occurredAt });
      return {
        answer: { id, packCount: ended.packCount },
        entry: {
          action: 'take-pallet-apart',
          subject: { kind: 'pallet', id: ended.id },
          touches: [...new Set(contents.map((row) => row.runId))].map((runId) => ({ kind: 'packing-run', id: runId })),
          before: { packCount: ended.packCount },
          reason: form.reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}
