import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { descentsOf, findPallet } from './pallet-list.js';
import { PalletContent } from './pallet-content.entity.js';
import { PalletMove } from './pallet-move.entity.js';
import type { PalletRow } from './pallet-rows.js';
import { PalletState } from './pallet-state.entity.js';
import { Pallet } from './pallet.entity.js';
import type { CorrectPalletForm } from './pallet.form.js';

/**
 * A pallet was recorded that is not there (did not occur): its record is made void, its packs are free, its SSCC is never
 * used again. The count that came with it stays, and has its own correction.
 * Refusals: `pallet-not-in-store`, `pallet-has-history`, `already-corrected`.
 */
@Injectable()
export class CorrectPallet {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, pallet: string, form: CorrectPalletForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { pallet, ...form }, async (tx, change) => {
      const wrong = await findPallet(tx, asked.actor.siteId, pallet);
      if (wrong.status !== 'in-store') {
        throw new Refusal('pallet-not-in-store', { pallet: wrong.sscc, status: wrong.status });
      }
      if ((await descentsOf(tx, wrong.id)).length > 0 || (await wasLoaded(tx, wrong))) {
        throw new Refusal('pallet-has-history', { pallet: wrong.sscc });
      }
      const removed = await tx.remove(PalletState, { palletId: wrong.id, status: 'in-store' });
      if (removed !== 1) throw new Refusal('pallet-not-in-store', { pallet: wrong.sscc, status: null });
      for (const row of await tx.find(PalletContent, { palletId: wrong.id, voidedBy: null })) {
        await voidFact(tx, PalletContent, row.id, change);
      }
      for (const row of await tx.find(PalletMove, { palletId: wrong.id, voidedBy: null })) {
        await voidFact(tx, PalletMove, row.id, change);
      }
      await voidFact(tx, Pallet, wrong.id, change);
      return {
        answer: { id: wrong.id },
        entry: {
          action: 'correct-pallet',
          subject: { kind: 'pallet', id: wrong.id },
          before: { sscc: wrong.sscc, packCount: wrong.packCount },
          after: { reason: 'did-not-occur' },
          reason: form.reason,
        },
      };
    });
  }
}

/** It was on a vehicle once: the journal says so without this room knowing deliveries. */
async function wasLoaded(tx: Tx, pallet: PalletRow): Promise<boolean> {
  const rows = await tx.sql`
    SELECT s."sequence" FROM "journal_subject" s
    JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
    WHERE s."kind" = 'pallet' AND s."id" = ${pallet.id} AND e."action" = 'load-pallet' LIMIT 1`;
  return rows.length > 0;
}
