import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { isLateForReach, leaveReachJob } from '../open-points/reach-job.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { recordCount } from './count-packs.js';
import { LooseCount } from './loose-count.entity.js';
import type { CountLoosePacksForm } from './packing-run.form.js';
import { refuseMoreLooseThanPacked } from './loose-packs.js';
import { takeRunAt } from './run-at.js';

export interface LooseCountAnswer {
  readonly id: string;
  readonly runId: string;
  readonly loosePackCount: number;
  readonly countedAt: string;
}

/**
 * At a handover: how many accepted packs lie on belts and tables, on no pallet yet.
 * Refusals: `more-loose-than-packed`, `run-is-closed`, `before-run-start`, `count-goes-back`, those of the time.
 */
@Injectable()
export class CountLoosePacks {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, run: string, form: CountLoosePacksForm): Promise<LooseCountAnswer> {
    return this.changes.run(asked, { run, ...form }, async (tx, change) => {
      const {
        run: row,
        occurredAt,
        statedAt,
        reason,
        lateMinutes,
      } = await takeRunAt(tx, change, {
        asked,
        run,
        statedAt: form.countedAt ?? null,
        lateReason: form.reason ?? null,
      });
      const { loosePackCount, packCount } = form;
      const id = await addLooseCount(tx, () => this.ids.next(), {
        ...{ runId: row.id, loosePackCount, packCount, countedAt: occurredAt },
      });
      if (isLateForReach({ lateMinutes })) {
        const { siteId } = asked.actor;
        await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      }
      return {
        answer: { id, runId: row.id, loosePackCount: form.loosePackCount, countedAt: occurredAt },
        entry: {
          action: 'count-loose-packs',
          subject: { kind: 'packing-run', id: row.id },
          after: { id, loosePackCount: form.loosePackCount, packCount: form.packCount },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** Loose packs counted at a handover, with the run's count read for it. Answers the id of the loose count. */
export async function addLooseCount(
  tx: Tx,
  nextId: () => string,
  counted: {
    readonly runId: string;
    readonly loosePackCount: number;
    readonly packCount: number;
    readonly countedAt: Instant;
  },
): Promise<string> {
  const { runId, loosePackCount, packCount, countedAt } = counted;
  refuseMoreLooseThanPacked(loosePackCount, packCount);
  await recordCount(tx, { id: nextId(), runId, packCount, countedAt, occasion: 'handover' });
  const id = nextId();
  await tx.insert(LooseCount, { id, runId, packCount: loosePackCount, countedAt });
  return id;
}
