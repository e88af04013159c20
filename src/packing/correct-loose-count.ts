import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import { Ids } from '../platform/ids.js';
import type { CorrectLooseCountForm } from './correction.form.js';
import { neededValue, takeFactOnRun } from './fact-on-run.js';
import { LooseCount } from './loose-count.entity.js';
import { refuseMoreLooseThanPacked } from './loose-packs.js';

export interface CorrectLooseCountAnswer {
  readonly runId: string;
  /** The count that stands in its place; null: it did not occur. */
  readonly looseCountId: string | null;
}

/**
 * Loose packs were counted wrongly, or not at all.
 * Refusals: `already-corrected`, `more-loose-than-packed`.
 */
@Injectable()
export class CorrectLooseCount {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, looseCountId: string, form: CorrectLooseCountForm): Promise<CorrectLooseCountAnswer> {
    return this.changes.run(asked, { looseCountId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const what = { siteId: asked.actor.siteId, kind: 'loose-count', id: looseCountId };
      const { fact: old, run } = await takeFactOnRun(tx, LooseCount, what);
      await voidFact(tx, LooseCount, looseCountId, change);
      const packCount = form.why === 'incorrect-data' ? neededValue('loosePackCount', form.loosePackCount) : null;
      const newId = packCount === null ? null : this.ids.next();
      if (newId !== null && packCount !== null) {
        refuseMoreLooseThanPacked(packCount, run.packCount);
        await tx.insert(LooseCount, { id: newId, runId: run.id, packCount, countedAt: old.countedAt });
      }
      return {
        answer: { runId: run.id, looseCountId: newId },
        entry: {
          action: 'correct-loose-count',
          subject: { kind: 'packing-run', id: run.id },
          before: { id: looseCountId, loosePackCount: old.packCount },
          after: { id: newId, loosePackCount: packCount, why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}
