import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { Clock } from '../../platform/clock.js';
import { strikeAction } from './form-rows.js';
import { findPaperForm } from './paper-forms.js';
import { refuseNoSuchRow } from './row-asked.js';

/** A row that is struck, and why. */
export interface RowStruck {
  readonly sheet: string;
  readonly row: number;
  readonly reason: string;
}

/**
 * A row of a sheet gives no entry: nothing was written on it, it was written in error, the pallet number on it was
 * spoilt. So that a number set aside is accounted for, too.
 * Refusals: `paper-row-keyed`, `paper-row-not-there`.
 */
@Injectable()
export class StrikePaperRow {
  constructor(
    private readonly changes: RecordChange,
    private readonly clock: Clock,
  ) {}

  execute(asked: Asked, { sheet, row, reason }: RowStruck): Promise<RowStruck> {
    const happening = { how: 'paper', at: this.clock.now(), sheet, row, writtenBy: null } as const;
    return this.changes.run({ ...asked, happening }, { sheet, row, reason }, async (tx) => {
      const { id, facts } = await findPaperForm(tx, asked.actor.siteId, sheet);
      refuseNoSuchRow(facts, row);
      return {
        answer: { sheet, row, reason },
        entry: {
          action: strikeAction,
          subject: { kind: 'paper', id },
          after: { sheet, row, sscc: facts.ssccs[row - 1] ?? null },
          reason,
        },
      };
    });
  }
}
