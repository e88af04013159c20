import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import type { CorrectCountForm } from './correction.form.js';
import { recordCount } from './count-packs.js';
import { leaveCountedJob } from './counted-job.js';
import { neededValue, takeFactOnRun } from './fact-on-run.js';
import { LooseCount } from './loose-count.entity.js';
import { PackCount } from './pack-count.entity.js';
import { PackingRunClose } from './packing-run-close.entity.js';
import { PackingRunState } from './packing-run-state.entity.js';
import type { RunRow } from './packing-run-rows.js';
import { openRunOfLine } from './packing-runs.js';
import { followCounts } from './run-states.js';

export interface CorrectCountAnswer {
  readonly runId: string;
  /** The count that stands in its place; null: it did not occur. */
  readonly countId: string | null;
  /** The run is open again, since its close did not occur. */
  readonly isOpenAgain: boolean;
}

/**
 * A count was wrong, or was never read. The last count of a closed run carries its close with it: corrected, the run
 * closes with the right count; where it did not occur, the run is open again.
 * Refusals: `already-corrected`, `start-count-stays`, `count-of-a-change`, `count-goes-back`, `line-has-open-run`.
 */
@Injectable()
export class CorrectCount {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, countId: string, form: CorrectCountForm): Promise<CorrectCountAnswer> {
    return this.changes.run(asked, { countId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const what = { siteId: asked.actor.siteId, kind: 'pack-count', id: countId };
      const { fact: count, run } = await takeFactOnRun(tx, PackCount, what);
      await refuseWhatIsCorrectedElsewhere(tx, run, count);
      await voidFact(tx, PackCount, countId, change);
      const isClose = count.occasion === 'close' && run.closedAt === count.countedAt;
      const right = form.why === 'incorrect-data' ? neededValue('packCount', form.packCount) : null;
      if (isClose) await this.correctClose(tx, change, run, right);
      const newId = right === null ? null : await this.replace(tx, count, right);
      if (newId === null) {
        await followCounts(tx, run.id);
        const look = { id: this.ids.next(), runId: run.id, lineId: run.lineId, at: change.recordedAt };
        await leaveCountedJob(tx, look);
      }
      const { siteId } = asked.actor;
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      const answer = { runId: run.id, countId: newId, isOpenAgain: isClose && right === null };
      return {
        answer,
        entry: {
          action: 'correct-count',
          subject: { kind: 'packing-run', id: run.id },
          before: { id: countId, packCount: count.packCount, countedAt: count.countedAt },
          after: { ...answer, packCount: right, why: form.why },
          reason: form.reason,
        },
      };
    });
  }

  private async replace(tx: Tx, count: PackCount, packCount: number): Promise<string> {
    const { runId, countedAt, occasion } = count;
    const id = this.ids.next();
    await recordCount(tx, { id, runId, packCount, countedAt, occasion });
    return id;
  }

  private async correctClose(tx: Tx, change: Change, run: RunRow, packCount: number | null): Promise<void> {
    const close = await tx.findOne(PackingRunClose, { runId: run.id, voidedBy: null });
    if (close === null) throw new RangeError(`run ${run.number} is not closed`);
    const { closedAt } = close;
    await voidFact(tx, PackingRunClose, close.id, change);
    if (packCount !== null) {
      await tx.insert(PackingRunClose, { id: this.ids.next(), runId: run.id, packCount, closedAt });
      return;
    }
    for (const loose of await tx.find(LooseCount, { runId: run.id, countedAt: closedAt, voidedBy: null })) {
      await voidFact(tx, LooseCount, loose.id, change);
    }
    const other = await openRunOfLine(tx, run.lineId);
    if (other !== null) throw new Refusal('line-has-open-run', { line: run.lineCode, run: other.number });
    await tx.update(PackingRunState, { runId: run.id, openLineId: null }, { openLineId: run.lineId });
  }
}

/** @throws {Refusal} `start-count-stays`, `count-of-a-change` */
async function refuseWhatIsCorrectedElsewhere(tx: Tx, run: RunRow, count: PackCount): Promise<void> {
  if (count.occasion === 'start') throw new Refusal('start-count-stays', { run: run.number });
  const { runId, countedAt, packCount } = count;
  const changes = await tx.sql`
    SELECT "id" FROM "coder_change"
      WHERE "run_id" = ${runId} AND "changed_at" = ${countedAt} AND "first_pack" = ${packCount} AND "voided_by" IS NULL
    UNION ALL SELECT "id" FROM "film_use"
      WHERE "run_id" = ${runId} AND "fitted_at" = ${countedAt} AND "first_pack" = ${packCount} AND "voided_by" IS NULL`;
  const isOfChange = count.occasion === 'coder-change' || count.occasion === 'film-change';
  if (isOfChange && changes.length > 0) throw new Refusal('count-of-a-change', { occasion: count.occasion });
}
