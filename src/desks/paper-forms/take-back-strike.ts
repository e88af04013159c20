import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { EntryHappening } from '../../journal/entry-happening.entity.js';
import { RecordChange } from '../../journal/record-change.js';
import { Refusal } from '../../platform/refusal.js';
import { strikeAction } from './form-rows.js';
import { findPaperForm } from './paper-forms.js';
import { refuseNoSuchRow } from './row-asked.js';
import type { RowStruck } from './strike-paper-row.js';

/**
 * A row was struck in error: it is blank again and may be keyed in, its number may be on a pallet. The entry that struck it stays
 * in the journal.
 * Refusals: `paper-row-not-struck`, `paper-row-not-there`.
 */
@Injectable()
export class TakeBackStrike {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, { sheet, row, reason }: RowStruck): Promise<RowStruck> {
    return this.changes.run(asked, { sheet, row, reason }, async (tx, change) => {
      const { id, facts, rows } = await findPaperForm(tx, asked.actor.siteId, sheet);
      refuseNoSuchRow(facts, row);
      const strike = rows[row - 1]?.entries.find(({ action }) => action === strikeAction);
      const where = { entryId: strike?.entryId ?? '', voidedBy: null };
      const changed = await tx.update(EntryHappening, where, { voidedBy: change.entryId });
      if (changed !== 1) throw new Refusal('paper-row-not-struck', { sheet: facts.number, row });
      return {
        answer: { sheet: facts.number, row, reason },
        entry: {
          action: 'take-back-strike',
          subject: { kind: 'paper', id },
          after: { sheet: facts.number, row, sscc: facts.ssccs[row - 1] ?? null },
          reason,
        },
      };
    });
  }
}
