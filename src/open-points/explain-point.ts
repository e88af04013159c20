import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Actor } from '../platform/actor.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { endPoint } from './end-point.js';
import type { ExplainPointForm } from './open-point.form.js';
import { openPointOf, type PointRow } from './open-points.js';

/** Whom a point concerns answers it; these two may always. */
const answersAll = ['quality-officer', 'plant-manager'] as const;

/**
 * Somebody says why a point stays as it is. That its cause is gone is for the rules to see, not for people to say.
 * Refusals: `point-ended-already`, `point-is-for-another`.
 */
@Injectable()
export class ExplainPoint {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pointId: string, form: ExplainPointForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { pointId, ...form }, async (tx, change) => {
      const point = await openPointOf(tx, asked.actor.siteId, pointId);
      if (!mayAnswer(asked.actor, point)) throw new Refusal('point-is-for-another', { role: point.role });
      const ended = await endPoint(tx, {
        id: this.ids.next(),
        pointId,
        how: 'explained',
        explanation: form.explanation,
        personId: asked.actor.personId,
        endedAt: change.recordedAt,
      });
      if (!ended) throw new Refusal('point-ended-already', { how: point.how ?? 'ended' });
      return {
        answer: { id: pointId },
        entry: {
          action: 'explain-point',
          subject: { kind: 'open-point', id: pointId },
          touches: [{ kind: point.subjectKind, id: point.subjectId }],
          after: { cause: point.cause, how: 'explained' },
          reason: form.explanation,
        },
      };
    });
  }
}

export function mayAnswer(actor: Actor, point: PointRow): boolean {
  if (answersAll.some((role) => actor.roles.includes(role))) return true;
  if (point.personId !== null) return point.personId === actor.personId;
  return actor.roles.some((role) => role === point.role);
}
