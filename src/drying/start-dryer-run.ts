import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { dryerOf, gradeOf } from '../plant/plant-facts.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { DryerRun } from './dryer-run.entity.js';
import type { StartDryerRunForm } from './dryer-run.form.js';
import { lastRunOfDryer } from './dryer-runs.js';
import { takeDocumentNumber } from './take-document-number.js';

/**
 * A dryer begins to make a grade.
 * Refusals: `dryer-has-open-run`, `time-before-last-run-end`; not found: dryer, grade.
 */
@Injectable()
export class StartDryerRun {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: StartDryerRunForm): Promise<{ id: string; number: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.startedAt ?? null, change.recordedAt, reason);
      const { siteId } = asked.actor;
      const dryer = await dryerOf(tx, form.dryerId);
      await gradeOf(tx, form.gradeId);
      // Taken before the look at the open run: of two starts at once the second waits here, and then sees the first.
      const number = await takeDocumentNumber(tx, siteId, 'dryer-run', change.recordedAt);
      await refuseBesideAnother(tx, dryer, occurredAt);
      const run = { id: this.ids.next(), number, dryerId: form.dryerId, gradeId: form.gradeId };
      await tx.insert(DryerRun, { ...run, siteId, startedAt: occurredAt, voidedBy: null });
      return {
        answer: { id: run.id, number },
        entry: {
          action: 'start-dryer-run',
          subject: { kind: 'dryer-run', id: run.id },
          touches: [{ kind: 'dryer', id: form.dryerId }],
          after: { number, dryerId: form.dryerId, gradeId: form.gradeId, startedAt: occurredAt },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

async function refuseBesideAnother(tx: Tx, dryer: { id: string; code: string }, startedAt: string): Promise<void> {
  const last = await lastRunOfDryer(tx, dryer.id);
  if (last === null) return;
  if (last.endedAt === null) throw new Refusal('dryer-has-open-run', { dryer: dryer.code, run: last.number });
  if (startedAt < last.endedAt) {
    throw new Refusal('time-before-last-run-end', { run: last.number, endedAt: last.endedAt, startedAt });
  }
}
