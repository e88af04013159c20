import { Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { leaveReachJob } from '../../open-points/reach-job.js';
import { leaveCountedJob } from '../../packing/counted-job.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { runOf } from '../../packing/packing-runs.js';
import type { Instant } from '../../platform/clock.js';
import type { Tx } from '../../platform/database/unit-of-work.js';
import { Ids } from '../../platform/ids.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import { weightsOfRun } from './kept-weights.js';
import { rebuildSummaries } from './rebuild-summaries.js';
import { TareCorrection } from './tare-correction.entity.js';
import type { CorrectTareForm } from './weights.form.js';

export interface TareCorrectionAnswer {
  readonly id: string;
  /** Packs whose net it changes. */
  readonly packCount: number;
}

/**
 * The tare of some packs of a run was wrong: from now on so much is added to each of their nets, and all sums over them
 * are worked out anew. The weights stay as they were received.
 * Refusals: `no-weights-in-range`, `weights-not-readable`, `nothing-to-add`.
 */
@Injectable()
export class CorrectTare {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: CorrectTareForm): Promise<TareCorrectionAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { reason, ...range } = form;
      const run = await runOf(tx, form.runId);
      if (run.siteId !== asked.actor.siteId) throw new NotFound('packing-run', form.runId);
      if (form.addedMilligrams === 0) throw new Refusal('nothing-to-add', {});
      const packCount = await countInRange(tx, run.number, form);
      if (packCount === 0) {
        throw new Refusal('no-weights-in-range', { run: run.number, from: form.fromSequence, to: form.toSequence });
      }
      const id = this.ids.next();
      await tx.insert(TareCorrection, { id, ...range, voidedBy: null });
      await setSummariesAnew(tx, run);
      await lookAgain(tx, { run, at: change.recordedAt, ids: this.ids });
      return {
        answer: { id, packCount },
        entry: {
          action: 'correct-tare',
          subject: { kind: 'packing-run', id: run.id },
          touches: [{ kind: 'pack-weigher', id: form.weigherId }],
          after: { id, ...range, packCount },
          reason,
        },
      };
    });
  }
}

/** @throws {Refusal} `weights-not-readable`: sums over what is gone or damaged cannot be worked out anew */
export async function setSummariesAnew(tx: Tx, run: { readonly id: string; readonly number: string }): Promise<void> {
  if ((await rebuildSummaries(tx, run.id)) === 'unreadable') {
    throw new Refusal('weights-not-readable', { run: run.number });
  }
}

/** What the packs hold has changed: the level of their hopper and open holds are looked at again. */
export async function lookAgain(
  tx: Tx,
  { run, at, ids }: { readonly run: RunRow; readonly at: Instant; readonly ids: Ids },
): Promise<void> {
  await leaveCountedJob(tx, { id: ids.next(), runId: run.id, lineId: run.lineId, at });
  await leaveReachJob(tx, { id: ids.next(), siteId: run.siteId, holdId: null, at });
}

async function countInRange(tx: Tx, run: string, form: CorrectTareForm): Promise<number> {
  const { parts, unreadable } = await weightsOfRun(tx, form.runId);
  if (unreadable.length > 0) throw new Refusal('weights-not-readable', { run });
  let packCount = 0;
  for (const { weigherId, series, columns } of parts) {
    if (weigherId !== form.weigherId || series !== form.series) continue;
    for (const sequence of columns.sequences) {
      if (sequence >= form.fromSequence && sequence <= form.toSequence) packCount += 1;
    }
  }
  return packCount;
}
