import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { sitePlaceOf } from './add-pallet.js';
import { changePalletState } from './change-pallet-state.js';
import { findPallet } from './pallet-list.js';
import { PalletMove } from './pallet-move.entity.js';
import type { MovePalletForm } from './pallet.form.js';

export interface MoveAnswer {
  readonly id: string;
  readonly placeId: string;
}

/**
 * A pallet is brought to a place in the store.
 * Refusals: `pallet-not-in-store`, `before-it-was-built`.
 */
@Injectable()
export class MovePallet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pallet: string, form: MovePalletForm): Promise<MoveAnswer> {
    return this.changes.run(asked, { pallet, ...form }, async (tx, change) => {
      const moved = await findPallet(tx, asked.actor.siteId, pallet);
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.movedAt ?? null, change.recordedAt, reason);
      const place = await sitePlaceOf(tx, asked.actor.siteId, form.placeId);
      if (occurredAt < moved.builtAt) {
        throw new Refusal('before-it-was-built', { pallet: moved.sscc, builtAt: moved.builtAt });
      }
      // A move that is told late does not undo a later one.
      const isLatest = occurredAt >= moved.changedAt;
      const isDone = await changePalletState(
        tx,
        moved.id,
        { status: ['in-store'] },
        {
          status: 'in-store',
          placeId: isLatest ? place.id : moved.placeId,
          at: isLatest ? occurredAt : moved.changedAt,
        },
      );
      if (!isDone) throw new Refusal('pallet-not-in-store', { pallet: moved.sscc, status: moved.status });
      const id = this.ids.next();
      await tx.insert(PalletMove, { id, palletId: moved.id, placeId: place.id, movedAt: occurredAt, voidedBy: null });
      return {
        answer: { id, placeId: place.id },
        entry: {
          action: 'move-pallet',
          subject: { kind: 'pallet', id: moved.id },
          touches: [{ kind: 'store-place', id: place.id }],
          before: { placeId: moved.placeId },
          after: { placeId: place.id, place: place.code },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}
