import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
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
      } = await takeRunAt(tx, change, {
        siteId: asked.actor.siteId,
        run,
        statedAt: form.countedAt ?? null,
        lateReason: form.reason ?? null,
      });
      refuseMoreLooseThanPacked(form.loosePackCount, form.packCount);
      const count = { id: this.ids.next(), runId: row.id, packCount: form.packCount, countedAt: occurredAt };
      await recordCount(tx, { ...count, occasion: 'handover' });
      const id = this.ids.next();
      await tx.insert(LooseCount, { id, runId: row.id, packCount: form.loosePackCount, countedAt: occurredAt });
      return {
        answer: { id, runId: row.id, loosePackCount: form.loosePackCount, countedAt: occurredAt },
        entry: {
          action: 'count-loose-packs',
          subject: { kind: 'packing-run', id: row.id },
          after: { id, loosePackCount: form.loosePackCount, packCount: form.packCount },
          reason: form.reason ?? null,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}
