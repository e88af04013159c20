import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { lockRun } from '../packing/run-states.js';
import { formatOf, lineOf } from '../plant/plant-facts.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { Changeover } from './changeover.entity.js';
import type { OpenChangeoverForm } from './changeover.form.js';
import { openChangeoverOf } from './changeovers.js';

/**
 * A line begins to be changed over to another format. Until its first four rungs are done no run of another format starts
 * on it.
 * Refusals: `line-without-run`, `changeover-open-already`, `changeover-to-same-format`.
 */
@Injectable()
export class OpenChangeover {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: OpenChangeoverForm): Promise<{ readonly id: string; readonly fromRunId: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const line = await lineOf(tx, form.lineId);
      if (line.siteId !== siteId) throw new NotFound('packing-line', form.lineId);
      const format = await formatOf(tx, form.formatId);
      if (format.siteId !== siteId) throw new NotFound('pack-format', form.formatId);
      const run = await lastRunOf(tx, line.id);
      if (run === null) throw new Refusal('line-without-run', { line: line.code });
      await lockRun(tx, run.id);
      const open = await openChangeoverOf(tx, line.id);
      if (open !== null) throw new Refusal('changeover-open-already', { line: line.code, format: open.toFormatName });
      if (run.formatId === format.id) throw new Refusal('changeover-to-same-format', { format: format.name });
      const id = this.ids.next();
      const openedAt = change.recordedAt;
      await tx.insert(Changeover, {
        ...{ id, siteId, lineId: line.id, fromRunId: run.id, toFormatId: format.id, openedAt },
      });
      return {
        answer: { id, fromRunId: run.id },
        entry: {
          action: 'open-changeover',
          subject: { kind: 'changeover', id },
          touches: [
            { kind: 'packing-line', id: line.id },
            { kind: 'packing-run', id: run.id },
          ],
          after: { fromRunId: run.id, toFormatId: format.id },
        },
      };
    });
  }
}

async function lastRunOf(tx: Tx, lineId: string): Promise<{ readonly id: string; readonly formatId: string } | null> {
  const [row] = await tx.sql<{ id: string; formatId: string }>`
    SELECT "id", "format_id" AS "formatId" FROM "packing_run" WHERE "line_id" = ${lineId} AND "voided_by" IS NULL
    ORDER BY "started_at" DESC, "id" DESC LIMIT 1`;
  return row ?? null;
}
