import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { Ids } from '../platform/ids.js';
import { leaveResultsChanged } from './results-changed.js';
import { Sample } from './sample.entity.js';
import type { CorrectSampleForm } from './sample.form.js';
import { findSample } from './samples.js';

/**
 * A sample was not taken, or was entered for the wrong thing: its results stand for nothing any more. The right one
 * is taken anew, under its own number.
 * Refusals: `already-corrected`; not found: sample.
 */
@Injectable()
export class CorrectSample {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: CorrectSampleForm): Promise<{ id: string; number: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const sample = await findSample(tx, asked.actor.siteId, form.sample);
      await voidFact(tx, Sample, sample.id, change);
      await leaveResultsChanged(tx, sample, { id: this.ids.next(), at: change.recordedAt });
      return {
        answer: { id: sample.id, number: sample.number },
        entry: {
          action: 'correct-sample',
          subject: { kind: 'sample', id: sample.id },
          after: { why: 'did-not-occur' },
          reason: form.reason,
        },
      };
    });
  }
}
