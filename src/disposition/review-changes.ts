import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { ChangeReview } from './change-review.entity.js';
import type { ReviewChangesForm } from './change-review.form.js';

/**
 * Quality has looked at late entries and corrections, so that they leave the list. The entries stay as they are.
 * Refusals: `change-looked-at-already`; not found: journal-entry.
 */
@Injectable()
export class ReviewChanges {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: ReviewChangesForm): Promise<{ readonly count: number }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const { note = null } = form;
      const entries = await entriesOf(tx, siteId, [...new Set(form.entryIds)]);
      for (const { entryId, sequence } of entries) {
        const review = { id: this.ids.next(), siteId, sequence, entryId, note, personId };
        await keep(tx, { ...review, reviewedAt: change.recordedAt });
      }
      return {
        answer: { count: entries.length },
        entry: {
          action: 'review-changes',
          subject: { kind: 'site', id: siteId },
          after: { sequences: entries.map(({ sequence }) => sequence) },
          reason: note,
        },
      };
    });
  }
}

async function entriesOf(
  tx: Tx,
  siteId: string,
  entryIds: readonly string[],
): Promise<readonly { readonly entryId: string; readonly sequence: number }[]> {
  const rows = await inChunks(
    entryIds,
    (chunk) => tx.sql<{ entryId: string; sequence: number | string }>`
      SELECT "id" AS "entryId", "sequence" FROM "journal_entry" WHERE "site_id" = ${siteId} AND "id" IN (${() => chunk})`,
  );
  const unknown = entryIds.find((id) => !rows.some((row) => row.entryId === id));
  if (unknown !== undefined) throw new NotFound('journal-entry', unknown);
  return rows
    .map(({ entryId, sequence }) => ({ entryId, sequence: toWhole(sequence) }))
    .sort((one, other) => one.sequence - other.sequence);
}

/** Two officers at once: one look is enough, and the second is told. */
async function keep(tx: Tx, review: ChangeReview): Promise<void> {
  try {
    await tx.insert(ChangeReview, review);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('change-looked-at-already', { sequence: review.sequence });
    throw error;
  }
}
