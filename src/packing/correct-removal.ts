import { Injectable } from '@nestjs/common';
import { leaveReachJob } from '../open-points/reach-job.js';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import { Ids } from '../platform/ids.js';
import type { Instant } from '../platform/clock.js';
import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { addRemoval, type RemovalAnswer, type RemovalDraft } from './add-removal.js';
import type { CorrectRemovalForm } from './correction.form.js';
import { touchedBy } from './remove-sugar.js';
import { Removal } from './removal.entity.js';

export interface CorrectRemovalAnswer {
  readonly id: string;
  /** What stands in its place; null: it did not occur. */
  readonly removal: RemovalAnswer | null;
}

/**
 * A removal was recorded wrongly, or never happened. What the form leaves out stays as it was.
 * Refusals: `already-corrected`, `never-rework`, `no-run-then`, `line-without-hopper`, `scale-has-failed`, `time-ahead`.
 */
@Injectable()
export class CorrectRemoval {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, removalId: string, form: CorrectRemovalForm): Promise<CorrectRemovalAnswer> {
    return this.changes.run(asked, { removalId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const old = await tx.findOne(Removal, { id: removalId, siteId: asked.actor.siteId });
      if (old === null) throw new NotFound('removal', removalId);
      await voidFact(tx, Removal, removalId, change);
      const isWrong = form.why === 'incorrect-data';
      if (isWrong) refuseAsItWas(form, change.recordedAt);
      const removal = isWrong ? await addRemoval(tx, corrected(this.ids.next(), old, form)) : null;
      await leaveReachJob(tx, { id: this.ids.next(), siteId: asked.actor.siteId, holdId: null, at: change.recordedAt });
      return {
        answer: { id: removalId, removal },
        entry: {
          action: 'correct-removal',
          subject: { kind: 'removal', id: removalId },
          touches: [
            ...touchedBy(old),
            ...(removal === null ? [] : [...touchedBy(removal), { kind: 'removal', id: removal.id }]),
          ],
          before: { kind: old.kind, packCount: old.packCount, grams: old.grams, scaleId: old.scaleId, fate: old.fate },
          after: { removal: removal === null ? null : { ...removal }, why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}

/** @throws {BadForm} where nothing is said to be otherwise */
function refuseAsItWas(form: CorrectRemovalForm, now: Instant): void {
  const { kind, packCount, netGrams, scaleId, removalReason, fate, removedAt } = form;
  const given = [kind, packCount, netGrams, scaleId, removalReason, fate, removedAt];
  if (given.every((one) => one === undefined || one === null)) {
    throw new BadForm([{ field: 'why', code: 'correction-without-change', facts: {} }]);
  }
  if (removedAt != null && removedAt > now) throw new Refusal('time-ahead', { stated: removedAt, now });
}

function corrected(id: string, old: Removal, form: CorrectRemovalForm): RemovalDraft {
  const wasWeighed = old.scaleId !== null;
  return {
    id,
    siteId: old.siteId,
    kind: form.kind ?? old.kind,
    lineId: old.lineId,
    hopperId: old.lineId === null ? old.hopperId : null,
    packCount: form.packCount ?? old.packCount,
    netGrams: form.netGrams ?? (wasWeighed ? old.grams : null),
    scaleId: form.scaleId ?? old.scaleId,
    reason: form.removalReason ?? old.reason,
    fate: form.fate ?? old.fate,
    removedAt: form.removedAt ?? old.removedAt,
  };
}
