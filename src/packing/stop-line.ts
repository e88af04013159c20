import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { recordCount } from './count-packs.js';
import { LineStop } from './line-stop.entity.js';
import type { StopLineForm } from './line-stop.form.js';
import type { RunRow } from './packing-run-rows.js';
import { stopsOf } from './packing-runs.js';
import { takeRunAt } from './run-at.js';

export interface StopAnswer {
  readonly id: string;
  readonly runId: string;
  readonly reason: string;
  readonly stoppedAt: Instant;
}

/**
 * A line stands still, with its reason in one word.
 * Refusals: `line-stood-then`, `line-stopped-since`, `run-is-closed`, `before-run-start`, `count-goes-back`, those of the time.
 */
@Injectable()
export class StopLine {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: StopLineForm): Promise<StopAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { run, occurredAt, statedAt, reason } = await takeRunAt(tx, change, {
        asked,
        run: form.run,
        statedAt: form.stoppedAt ?? null,
        lateReason: form.reason ?? null,
      });
      await refuseWhereLineStood(tx, run, occurredAt);
      if (asked.happening?.how === 'queued') await refuseBeforeOtherStop(tx, run, occurredAt);
      const answer = { id: this.ids.next(), runId: run.id, reason: form.stopReason, stoppedAt: occurredAt };
      await tx.insert(LineStop, answer);
      const packCount = form.packCount ?? null;
      if (packCount !== null) {
        const count = { id: this.ids.next(), runId: run.id, packCount, countedAt: occurredAt };
        await recordCount(tx, { ...count, occasion: 'stop' });
      }
      return {
        answer,
        entry: {
          action: 'stop-line',
          subject: { kind: 'packing-run', id: run.id },
          touches: [{ kind: 'packing-line', id: run.lineId }],
          after: { ...answer, packCount },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

async function refuseWhereLineStood(tx: Tx, run: RunRow, at: Instant): Promise<void> {
  const stood = (await stopsOf(tx, [run.id])).find(
    (stop) => stop.stoppedAt <= at && (stop.startedAgainAt === null || at < stop.startedAgainAt),
  );
  if (stood === undefined) return;
  const { reason, stoppedAt, startedAgainAt } = stood;
  throw new Refusal('line-stood-then', { line: run.lineCode, reason, stoppedAt, startedAgainAt });
}

/**
 * A stop that waited on a device brings no restart with it. Where the line was stopped again since, as others recorded,
 * it would stand for ever beside that one: two people may have entered the same stop, and one of them says which.
 */
async function refuseBeforeOtherStop(tx: Tx, run: RunRow, at: Instant): Promise<void> {
  const since = (await stopsOf(tx, [run.id])).find(({ stoppedAt }) => stoppedAt > at);
  if (since === undefined) return;
  const { reason, stoppedAt, startedAgainAt } = since;
  throw new Refusal('line-stopped-since', { line: run.lineCode, reason, stoppedAt, startedAgainAt });
}
