import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { millisecondsBetween, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { LineRestart } from './line-restart.entity.js';
import type { StartLineAgainForm } from './line-stop.form.js';
import type { RunRow, StopRow } from './packing-run-rows.js';
import { runOf, stopsOf } from './packing-runs.js';
import { refuseOutsideRun } from './run-at.js';
import { lockRun } from './run-states.js';

export interface RestartAnswer {
  readonly id: string;
  readonly stopId: string;
  readonly runId: string;
  readonly startedAgainAt: Instant;
  /** Whole minutes that the line stood. */
  readonly minutes: number;
}

/**
 * A line that stood runs again.
 * Refusals: `line-runs-already`, `restart-before-stop`, `line-stood-then` (the next stop began before),
 * `run-is-closed`, those of the time.
 */
@Injectable()
export class StartLineAgain {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, stopId: string, form: StartLineAgainForm): Promise<RestartAnswer> {
    return this.changes.run(asked, { stopId, ...form }, async (tx, change) => {
      const { runId } = await runOfStop(tx, asked.actor.siteId, stopId);
      await lockRun(tx, runId);
      const run = await runOf(tx, runId);
      const stated = { statedAt: form.startedAgainAt ?? null, reason: form.reason ?? null };
      const settled = settleAsked(asked, stated, change.recordedAt);
      const at = settled.occurredAt;
      refuseOutsideRun(run, at);
      const stop = refuseWrongRestart(run, await stopsOf(tx, [runId]), stopId, at);
      const id = this.ids.next();
      await tx.insert(LineRestart, { id, stopId, startedAgainAt: at });
      const minutes = Math.floor(millisecondsBetween(stop.stoppedAt, at) / 60_000);
      return {
        answer: { id, stopId, runId, startedAgainAt: at, minutes },
        entry: {
          action: 'start-line-again',
          subject: { kind: 'packing-run', id: runId },
          touches: [{ kind: 'packing-line', id: run.lineId }],
          after: { id, stopId, startedAgainAt: at, minutes },
          reason: settled.reason,
          occurredAt: at,
          statedAt: settled.statedAt,
        },
      };
    });
  }
}

/** @throws {NotFound} `line-stop` */
async function runOfStop(from: ReadFrom, siteId: string, stopId: string): Promise<{ runId: string }> {
  const [row] = await from.sql<{ runId: string }>`
    SELECT s."run_id" AS "runId" FROM "line_stop" s JOIN "packing_run" r ON r."id" = s."run_id"
    WHERE s."id" = ${stopId} AND r."site_id" = ${siteId} AND s."voided_by" IS NULL`;
  if (row === undefined) throw new NotFound('line-stop', stopId);
  return row;
}

function refuseWrongRestart(run: RunRow, stops: readonly StopRow[], stopId: string, at: Instant): StopRow {
  const stop = stops.find((one) => one.id === stopId);
  if (stop === undefined) throw new NotFound('line-stop', stopId);
  if (stop.startedAgainAt !== null) {
    throw new Refusal('line-runs-already', { line: run.lineCode, startedAgainAt: stop.startedAgainAt });
  }
  if (at < stop.stoppedAt) throw new Refusal('restart-before-stop', { stoppedAt: stop.stoppedAt });
  const next = stops.find((one) => one.id !== stopId && one.stoppedAt >= stop.stoppedAt && one.stoppedAt < at);
  if (next !== undefined) {
    const { reason, stoppedAt, startedAgainAt } = next;
    throw new Refusal('line-stood-then', { line: run.lineCode, reason, stoppedAt, startedAgainAt });
  }
  return stop;
}
