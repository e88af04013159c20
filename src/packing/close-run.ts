import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { raisePoint } from '../open-points/raise-point.js';
import { recordCount } from './count-packs.js';
import { LooseCount } from './loose-count.entity.js';
import { followCourse } from './follow-course.js';
import { refuseMoreLooseThanPacked } from './loose-packs.js';
import { PackingRunClose } from './packing-run-close.entity.js';
import { PackingRunState } from './packing-run-state.entity.js';
import type { CloseRunForm } from './packing-run.form.js';
import type { RunRow } from './packing-run-rows.js';
import { lotRanges } from './packing-runs.js';
import { takeRunAt } from './run-at.js';

export interface CloseAnswer {
  readonly id: string;
  readonly runId: string;
  readonly number: string;
  readonly packCount: number;
  readonly loosePackCount: number;
  readonly closedAt: Instant;
  /** Packs for which nobody recorded the code on them. */
  readonly packsWithoutCode: number;
}

/**
 * A run ends with its last count and the packs that lie loose, none or so many.
 * Refusals: `run-is-closed`, `before-run-start`, `run-went-on`, `count-goes-back`, `more-loose-than-packed`, those of
 * the time.
 */
@Injectable()
export class CloseRun {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, run: string, form: CloseRunForm): Promise<CloseAnswer> {
    return this.changes.run(asked, { run, ...form }, async (tx, change) => {
      const taken = await takeRunAt(tx, change, {
        asked,
        run,
        statedAt: form.closedAt ?? null,
        lateReason: form.reason ?? null,
      });
      const answer = await this.close(tx, taken.run, form, taken.occurredAt);
      if (answer.packsWithoutCode > 0) await this.pointToPacksWithoutCode(tx, taken.run, answer, change.recordedAt);
      return {
        answer,
        entry: {
          action: 'close-run',
          subject: { kind: 'packing-run', id: taken.run.id },
          touches: [{ kind: 'packing-line', id: taken.run.lineId }],
          after: { ...answer },
          reason: form.reason ?? null,
          occurredAt: taken.occurredAt,
          statedAt: taken.statedAt,
        },
      };
    });
  }

  private async close(tx: Tx, run: RunRow, form: CloseRunForm, closedAt: Instant): Promise<CloseAnswer> {
    if (run.closedAt !== null) throw new Refusal('run-is-closed', { run: run.number, closedAt: run.closedAt });
    await refuseWhereRunWentOn(tx, run, closedAt);
    refuseMoreLooseThanPacked(form.loosePackCount, form.packCount);
    const [id, runId] = [this.ids.next(), run.id];
    const { packCount, loosePackCount } = form;
    await recordCount(tx, { id: this.ids.next(), runId, packCount, countedAt: closedAt, occasion: 'close' });
    await tx.insert(PackingRunClose, { id, runId, packCount, closedAt });
    await followCourse(tx, runId);
    await tx.insert(LooseCount, { id: this.ids.next(), runId, packCount: loosePackCount, countedAt: closedAt });
    const freed = await tx.update(PackingRunState, { runId, openLineId: run.lineId }, { openLineId: null });
    if (freed !== 1) throw new Refusal('run-is-closed', { run: run.number, closedAt: null });
    const ranges = await lotRanges(tx, runId);
    const packsWithoutCode = ranges[0]?.fromCount ?? packCount;
    return { id, runId, number: run.number, packCount, loosePackCount, closedAt, packsWithoutCode };
  }

  private async pointToPacksWithoutCode(tx: Tx, run: RunRow, answer: CloseAnswer, at: Instant): Promise<void> {
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId: run.siteId,
      cause: 'packs-without-code',
      facts: { run: run.number, line: run.lineCode, packCount: answer.packsWithoutCode },
      subject: { kind: 'packing-run', id: run.id },
      role: 'line-lead',
      at,
    });
  }
}

/** @throws {Refusal} `run-went-on` when something was recorded of the run at a later time */
async function refuseWhereRunWentOn(tx: Tx, run: RunRow, closedAt: Instant): Promise<void> {
  const [last] = await tx.sql<{ at: Instant }>`
    SELECT "counted_at" AS "at" FROM "pack_count"
      WHERE "run_id" = ${run.id} AND "counted_at" > ${closedAt} AND "voided_by" IS NULL
    UNION ALL SELECT "changed_at" FROM "coder_change"
      WHERE "run_id" = ${run.id} AND "changed_at" > ${closedAt} AND "voided_by" IS NULL
    UNION ALL SELECT "fitted_at" FROM "film_use"
      WHERE "run_id" = ${run.id} AND "fitted_at" > ${closedAt} AND "voided_by" IS NULL
    UNION ALL SELECT "stopped_at" FROM "line_stop"
      WHERE "run_id" = ${run.id} AND "stopped_at" > ${closedAt} AND "voided_by" IS NULL
    ORDER BY 1 DESC LIMIT 1`;
  if (last !== undefined) throw new Refusal('run-went-on', { run: run.number, lastAt: last.at });
}
