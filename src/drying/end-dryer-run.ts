import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { DryerRunEnd } from './dryer-run-end.entity.js';
import type { EndDryerRunForm } from './dryer-run.form.js';
import { findDryerRun, type DryerRunRow } from './dryer-runs.js';

/**
 * A dryer run ends. Its last bag may be weighed a little later.
 * Refusals: `dryer-run-ended`, `time-before-run`, `bags-begun-later`; not found: dryer-run.
 */
@Injectable()
export class EndDryerRun {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: EndDryerRunForm): Promise<{ id: string; number: string; endedAt: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.endedAt ?? null, change.recordedAt, reason);
      const run = await findDryerRun(tx, asked.actor.siteId, form.run);
      await refuseThisEnd(tx, run, occurredAt);
      await this.end(tx, run, occurredAt);
      return {
        answer: { id: run.id, number: run.number, endedAt: occurredAt },
        entry: {
          action: 'end-dryer-run',
          subject: { kind: 'dryer-run', id: run.id },
          touches: [{ kind: 'dryer', id: run.dryerId }],
          after: { endedAt: occurredAt },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  /** Two ends at once: one row only may stand. */
  private async end(tx: Tx, run: DryerRunRow, endedAt: string): Promise<void> {
    try {
      await tx.insert(DryerRunEnd, { id: this.ids.next(), dryerRunId: run.id, endedAt, voidedBy: null });
    } catch (error) {
      if (isTakenKey(error)) throw new Refusal('dryer-run-ended', { run: run.number, endedAt });
      throw error;
    }
  }
}

async function refuseThisEnd(tx: Tx, run: DryerRunRow, endedAt: string): Promise<void> {
  if (run.endedAt !== null) throw new Refusal('dryer-run-ended', { run: run.number, endedAt: run.endedAt });
  if (endedAt < run.startedAt) throw new Refusal('time-before-run', { run: run.number, startedAt: run.startedAt });
  const [later] = await tx.sql<{ number: string }>`
    SELECT "number" FROM "bulk_bag" WHERE "dryer_run_id" = ${run.id} AND "voided_by" IS NULL
      AND "fill_started_at" >= ${endedAt} ORDER BY "fill_started_at", "id" LIMIT 1`;
  if (later !== undefined) throw new Refusal('bags-begun-later', { run: run.number, bag: later.number, endedAt });
}
