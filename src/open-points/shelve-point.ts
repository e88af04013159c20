import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { shifted, type Instant } from '../platform/clock.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { mayAnswer } from './explain-point.js';
import type { ShelvePointForm } from './open-point.form.js';
import { openPointIdOf, openPointOf } from './open-points.js';
import { pointClassOf } from './point-classes.js';
import { PointShelf } from './point-shelf.entity.js';

/**
 * Somebody puts the banner of a point aside until a time, for everybody whom it concerns. The point stays open.
 * Refusals: `point-ended-already`, `point-is-for-another`, `point-must-not-wait`.
 */
@Injectable()
export class ShelvePoint {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, pointId: string, form: ShelvePointForm): Promise<{ readonly untilAt: Instant }> {
    return this.changes.run(asked, { pointId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const point = await openPointOf(tx, siteId, pointId);
      if (!mayAnswer(asked.actor, point)) throw new Refusal('point-is-for-another', { role: point.role });
      if (pointClassOf(point.cause) === 'stop') throw new Refusal('point-must-not-wait');
      const subject = { kind: point.subjectKind, id: point.subjectId };
      const open = await openPointIdOf(tx, { siteId, cause: point.cause, subject });
      if (open !== pointId) throw new Refusal('point-ended-already', { how: point.how ?? 'ended' });
      const shelvedAt = change.recordedAt;
      const untilAt = shifted(shelvedAt, form.minutes * 60_000);
      await tx.insert(PointShelf, { id: this.ids.next(), pointId, shelvedAt, untilAt, personId });
      return {
        answer: { untilAt },
        entry: {
          action: 'shelve-point',
          subject: { kind: 'open-point', id: pointId },
          touches: [subject],
          after: { cause: point.cause, untilAt },
        },
      };
    });
  }
}
