import { Injectable } from '@nestjs/common';
import type { Asked, Subject } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { addRemoval, type RemovalAnswer } from './add-removal.js';
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
      const lateReason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.removedAt ?? null, change.recordedAt, lateReason);
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
      });
      return {
        answer,
        entry: {
          action: 'remove-sugar',
          subject: { kind: 'removal', id: answer.id },
          touches: touchedBy(answer),
          after: { ...answer },
          reason: lateReason,
          occurredAt,
          statedAt,
        },
      };
    });
  }
}

/** The things beside itself that a removal's entry speaks of. */
export function touchedBy({ runId, hopperId }: Pick<RemovalAnswer, 'runId' | 'hopperId'>): readonly Subject[] {
  return [
    ...(runId === null ? [] : [{ kind: 'packing-run', id: runId }]),
    ...(hopperId === null ? [] : [{ kind: 'hopper', id: hopperId }]),
  ];
}
