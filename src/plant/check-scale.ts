import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { ofSite } from './of-site.js';
import { scaleStandingAt } from './plant-facts.js';
import { ScaleCheck } from './scale-check.entity.js';
import { nextCheckDueAt } from './next-check-due.js';
import { leaveLooksAtScale } from './scale-job.js';
import type { CheckScaleForm } from './scale.form.js';

export interface ScaleChecked {
  readonly id: string;
  readonly passed: boolean;
  readonly dueAt: string;
}

/**
 * A scale was checked with known weights. It passes when the largest deviation is within its permissible error, exactly
 * at the limit too. A failed check becomes an open point for quality once it is recorded.
 * Refusals: `scale-check-there-already`, and those of a time that is set back.
 */
@Injectable()
export class CheckScale {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: CheckScaleForm): Promise<ScaleChecked> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.checkedAt ?? null, change.recordedAt, reason);
      const standing = await scaleStandingAt(tx, form.scaleId, occurredAt);
      const scale = ofSite(asked.actor, 'scale', standing.scale);
      const { deviationMilligrams } = form;
      const passed = Math.abs(deviationMilligrams) <= scale.maximumPermissibleErrorMilligrams;
      const id = this.ids.next();
      const row = { id, scaleId: scale.id, checkedAt: occurredAt, deviationMilligrams, passed };
      try {
        await tx.insert(ScaleCheck, { ...row, personId: asked.actor.personId });
      } catch (error) {
        if (isTakenKey(error)) throw new Refusal('scale-check-there-already', { scale: scale.code, at: occurredAt });
        throw error;
      }
      const dueAt = nextCheckDueAt(occurredAt, scale.checkEveryHours);
      const look = { siteId: scale.siteId, scaleId: scale.id, at: [change.recordedAt, dueAt] };
      await leaveLooksAtScale(tx, () => this.ids.next(), look);
      return {
        answer: { id, passed, dueAt },
        entry: {
          action: 'check-scale',
          subject: { kind: 'scale', id: scale.id },
          before: { lastCheckedAt: standing.lastCheckedAt },
          after: { checkId: id, deviationMilligrams, passed },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}
