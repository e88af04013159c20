import { Injectable } from '@nestjs/common';
import { isLateForReach, leaveReachJob } from '../open-points/reach-job.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import type { Asked } from '../journal/entry-draft.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { leaveCountedJob } from './counted-job.js';
import type { CountPacksForm } from './packing-run.form.js';
import { PackCount } from './pack-count.entity.js';
import { refuseCountThatDoesNotFit } from './count-neighbours.js';
import { findRun, runOf } from './packing-runs.js';
import { followCounts, lockRun } from './run-states.js';

/** A count to be recorded. `packCount` is the run's cumulative count of accepted packs. */
export interface CountDraft {
  readonly id: string;
  readonly runId: string;
  readonly packCount: number;
  readonly countedAt: Instant;
  readonly occasion: PackCount['occasion'];
}

/**
 * Records a run's count with what it was read for: a tip, a pallet, a stop. Leaves the job `packs-counted`
 * ({ runId, lineId }), which looks at the hopper's level. A count of a closed run is taken when it is of a time before
 * the close: facts may be late.
 *
 * @throws {Refusal} `run-is-closed`, `count-before-start`, `count-goes-back`
 */
export async function recordCount(tx: Tx, draft: CountDraft): Promise<void> {
  await addCount(tx, draft);
  const { lineId } = await runOf(tx, draft.runId);
  await leaveCountedJob(tx, { id: draft.id, runId: draft.runId, lineId, at: draft.countedAt });
}

/** The same without the job: for lists of counts. */
async function addCount(tx: Tx, draft: CountDraft): Promise<void> {
  const { runId, packCount, countedAt } = draft;
  await lockRun(tx, runId);
  const run = await runOf(tx, runId);
  if (run.closedAt !== null && countedAt > run.closedAt) {
    throw new Refusal('run-is-closed', { run: run.number, closedAt: run.closedAt });
  }
  if (countedAt < run.startedAt) {
    throw new Refusal('count-before-start', { run: run.number, startedAt: run.startedAt });
  }
  await refuseCountThatDoesNotFit(tx, { runId, packCount, at: countedAt });
  await tx.insert(PackCount, { ...draft, voidedBy: null });
  await followCounts(tx, runId);
}

export interface CountAnswer {
  readonly runId: string;
  readonly countIds: readonly string[];
  /** The run's count after all of them. */
  readonly packCount: number;
}

/**
 * Accepted packs are counted: one count by hand, or a list of them from a device. All of a list or none.
 * Refusals: `run-is-closed`, `count-before-start`, `count-goes-back`, those of the time.
 */
@Injectable()
export class CountPacks {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, run: string, form: CountPacksForm): Promise<CountAnswer> {
    return this.changes.run(asked, { run, ...form }, async (tx, change) => {
      const { id: runId, lineId, number } = await findRun(tx, asked.actor.siteId, run);
      const readings = readingsOf(form);
      const occasion = form.occasion ?? (asked.actor.personId === null ? 'minute' : 'other');
      const settled = readings.map(({ packCount, countedAt }) => {
        const stated = { statedAt: countedAt ?? null, reason: form.reason ?? null };
        const { occurredAt, reason, lateMinutes } = settleAsked(asked, stated, change.recordedAt);
        return {
          reason,
          lateMinutes,
          count: { id: this.ids.next(), runId, packCount, countedAt: occurredAt, occasion },
        };
      });
      const drafts = settled.map(({ count }) => count);
      for (const draft of drafts) await addCount(tx, draft);
      const last = drafts[drafts.length - 1];
      if (last === undefined) throw new RangeError('a list of counts without any');
      await leaveCountedJob(tx, { id: last.id, runId, lineId, at: change.recordedAt });
      if (settled.some(isLateForReach)) {
        const { siteId } = asked.actor;
        await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      }
      const after = await runOf(tx, runId);
      return {
        answer: { runId, countIds: drafts.map((draft) => draft.id), packCount: after.packCount },
        entry: {
          action: 'count-packs',
          subject: { kind: 'packing-run', id: runId },
          touches: [{ kind: 'packing-line', id: lineId }],
          after: {
            run: number,
            counts: drafts.map(({ packCount, countedAt }) => ({ packCount, countedAt })),
            occasion,
          },
          reason: settled[0]?.reason ?? null,
          occurredAt: last.countedAt,
        },
      };
    });
  }
}

function readingsOf(form: CountPacksForm): readonly { packCount: number; countedAt?: string | null | undefined }[] {
  const one = form.packCount ?? null;
  const list = form.counts ?? null;
  if (one !== null && list !== null) throw new BadForm([{ field: 'counts', code: 'count-or-counts', facts: {} }]);
  if (list !== null) return list;
  if (one === null) throw new BadForm([{ field: 'packCount', code: 'field-missing', facts: {} }]);
  return [{ packCount: one, countedAt: form.countedAt }];
}
