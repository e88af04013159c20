import { Injectable } from '@nestjs/common';
import type { Asked, Change, Subject } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked } from '../journal/settle-asked.js';
import { isLateForReach, leaveReachJob } from '../open-points/reach-job.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { addRemoval, failedScaleOf, type RemovalAnswer } from './add-removal.js';
import type { RemoveSugarForm } from './removal.form.js';

/**
 * Sugar leaves a line or a hopper otherwise than in accepted packs: rejects, samples, sweepings. From a line without
 * an open run, or straight from a hopper, samples and sweepings only.
 * Refusals: `never-rework`, `no-run-then`, `line-without-hopper`, `scale-has-failed`, those of the time.
 */
@Injectable()
export class RemoveSugar {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: RemoveSugarForm): Promise<RemovalAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const stated = { statedAt: form.removedAt ?? null, reason: form.reason ?? null };
      const settled = settleAsked(asked, stated, change.recordedAt);
      const { occurredAt, statedAt, reason, hasHappened } = settled;
      const answer = await addRemoval(tx, {
        id: this.ids.next(),
        siteId: asked.actor.siteId,
        kind: form.kind,
        lineId: form.lineId ?? null,
        hopperId: form.hopperId ?? null,
        packCount: form.packCount ?? null,
        netGrams: form.netGrams ?? null,
        scaleId: form.scaleId ?? null,
        reason: form.removalReason,
        fate: form.fate,
        removedAt: occurredAt,
        hasHappened,
      });
      if (hasHappened) await this.pointAtFailedScale(tx, answer, change);
      if (isLateForReach(settled)) {
        const { siteId } = answer;
        await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      }
      return {
        answer,
        entry: {
          action: 'remove-sugar',
          subject: { kind: 'removal', id: answer.id },
          touches: touchedBy(answer),
          after: { ...answer },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  /** It happened, so it stands; what a scale that had failed its check has shown is for quality to look at. */
  private async pointAtFailedScale(tx: Tx, removal: RemovalAnswer, { recordedAt: at }: Change): Promise<void> {
    const scale = await failedScaleOf(tx, removal);
    if (scale === null) return;
    const { siteId } = removal;
    const point = { id: this.ids.next(), siteId, cause: 'happened-scale-has-failed', facts: { scale }, at } as const;
    await raisePoint(tx, { ...point, subject: { kind: 'removal', id: removal.id }, role: 'quality-officer' });
  }
}

/** The things beside itself that a removal's entry speaks of. */
export function touchedBy({ runId, hopperId }: Pick<RemovalAnswer, 'runId' | 'hopperId'>): readonly Subject[] {
  return [
    ...(runId === null ? [] : [{ kind: 'packing-run', id: runId }]),
    ...(hopperId === null ? [] : [{ kind: 'hopper', id: hopperId }]),
  ];
}
