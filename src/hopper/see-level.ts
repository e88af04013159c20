import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Instant } from '../platform/clock.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import type { SeeLevelForm } from './hopper.form.js';
import { leaveLevelJob } from './level-job.js';
import { LevelSeen } from './level-seen.entity.js';
import { takePeriodAt } from './take-period.js';

export interface LevelAnswer {
  readonly id: string;
  readonly periodId: string;
  readonly lowerGrams: number;
  readonly upperGrams: number;
  readonly seenAt: Instant;
}

/**
 * A probe, a load cell or a sight glass shows between what limits the level is. It cuts nothing.
 * Refusals: `limits-out-of-order`, `before-first-period`, those of the time.
 */
@Injectable()
export class SeeLevel {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, hopperId: string, form: SeeLevelForm): Promise<LevelAnswer> {
    return this.changes.run(asked, { hopperId, ...form }, async (tx, change) => {
      const settled = settleOccurredAt(form.seenAt ?? null, change.recordedAt, form.reason ?? null);
      const { how, lowerGrams, upperGrams } = form;
      if (lowerGrams > upperGrams) throw new Refusal('limits-out-of-order', { lowerGrams, upperGrams });
      const { siteId } = asked.actor;
      const { occurredAt: seenAt, statedAt } = settled;
      const nextId = (): string => this.ids.next();
      const { period } = await takePeriodAt(tx, { siteId, hopperId, at: seenAt, nextId });
      const id = nextId();
      const periodId = period.id;
      const isLate = settled.lateMinutes > 0;
      await tx.insert(LevelSeen, { id, periodId, how, lowerGrams, upperGrams, seenAt, isLate, voidedBy: null });
      await leaveLevelJob(tx, { id: nextId(), periodId, at: change.recordedAt });
      return {
        answer: { id, periodId, lowerGrams, upperGrams, seenAt },
        entry: {
          action: 'see-level',
          subject: { kind: 'hopper', id: hopperId },
          touches: [{ kind: 'hopper-period', id: periodId }],
          after: { level: id, how, lowerGrams, upperGrams },
          reason: form.reason ?? null,
          occurredAt: seenAt,
          statedAt,
        },
      };
    });
  }
}
