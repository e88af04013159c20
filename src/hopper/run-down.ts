import { formatKilograms } from '../core/units/grams.js';
import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Instant } from '../platform/clock.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { readHopperPeriod } from './hopper-periods.js';
import { doubtAbout } from './hopper-level.js';
import type { RunDownForm } from './hopper.form.js';

import { leaveLevelJob } from './level-job.js';
import { LevelSeen } from './level-seen.entity.js';
import { takePeriodAt } from './take-period.js';

export interface RunDownAnswer {
  readonly id: string;
  readonly periodId: string;
  readonly seenAt: Instant;
  /** The records say otherwise by more than the scales explain; a point is open. */
  readonly isQuestioned: boolean;
}

/**
 * One person saw the hopper run down to a few kilograms. It is a level that was seen: it cuts nothing, but at most so
 * much of all that is older goes on. Recorded also where the records say otherwise; then a point is opened.
 * Refusals: `before-first-period`, those of the time.
 */
@Injectable()
export class RunDown {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, hopperId: string, form: RunDownForm): Promise<RunDownAnswer> {
    return this.changes.run(asked, { hopperId, ...form }, async (tx, change) => {
      const settled = settleOccurredAt(form.seenAt ?? null, change.recordedAt, form.reason ?? null);
      const { siteId } = asked.actor;
      const { occurredAt: seenAt, statedAt } = settled;
      const nextId = (): string => this.ids.next();
      const { hopper, period } = await takePeriodAt(tx, { siteId, hopperId, at: seenAt, nextId });
      const [id, periodId] = [nextId(), period.id];
      const limits = { lowerGrams: 0, upperGrams: form.atMostGrams };
      const isLate = settled.lateMinutes > 0;
      await tx.insert(LevelSeen, { id, periodId, how: 'run-down', ...limits, seenAt, isLate, voidedBy: null });
      const doubtGrams = doubtAbout(await readHopperPeriod(tx, periodId), id);
      if (doubtGrams > 0) {
        const facts = { hopper: hopper.code, kilograms: formatKilograms(doubtGrams, { thousands: true }), at: seenAt };
        const subject = { kind: 'level-seen', id };
        const point = { id: nextId(), siteId, cause: 'run-down-questioned', facts, subject, at: change.recordedAt };
        await raisePoint(tx, { ...point, role: 'line-lead' });
      }
      await leaveLevelJob(tx, { id: nextId(), periodId, at: change.recordedAt });
      return {
        answer: { id, periodId, seenAt, isQuestioned: doubtGrams > 0 },
        entry: {
          action: 'run-down',
          subject: { kind: 'hopper', id: hopperId },
          touches: [{ kind: 'hopper-period', id: periodId }],
          after: { level: id, atMostGrams: form.atMostGrams, doubtGrams },
          reason: form.reason ?? null,
          occurredAt: seenAt,
          statedAt,
        },
      };
    });
  }
}
