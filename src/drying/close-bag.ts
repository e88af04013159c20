import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import type { CloseBagForm } from './bag-fill.form.js';
import { findBag, type BagRow } from './bulk-bags.js';
import { closeFilledBag } from './close-filled-bag.js';
import { latenessReason } from './lateness-reason.js';
import { refuseUnusual, type Unusual } from './usual-weights.js';

export interface ClosedBag {
  readonly id: string;
  readonly number: string;
  readonly sscc: string;
  readonly netGrams: number;
  readonly isDoubtful: boolean;
}

/**
 * Filling ends: the bag is weighed and closed.
 * Refusals: `bag-already-closed`, `time-before-fill-start`, `gross-below-tare`, `net-not-above-zero`, `over-safe-load`;
 * where a person typed the weights also `net-not-usual`, `tare-not-usual`, until they have looked once more; not found:
 * bulk-bag, scale, store-place.
 */
@Injectable()
export class CloseBag {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: CloseBagForm): Promise<ClosedBag> {
    return this.changes.run(asked, form, async (tx, change) => {
      const reason = latenessReason(form);
      const { occurredAt, statedAt } = settleOccurredAt(form.filledAt ?? null, change.recordedAt, reason);
      const bag = await findBag(tx, asked.actor.siteId, form.bag);
      if (bag.status !== 'filling') throw new Refusal('bag-already-closed', { bag: bag.number });
      const { grossGrams, tareGrams, isPresetTare, scaleId } = form;
      const unusual = form.isTyped === true ? await refuseUnusual(tx, bag, form) : null;
      const { netGrams, isDoubtful } = await closeFilledBag(tx, {
        nextId: () => this.ids.next(),
        siteId: bag.siteId,
        bagId: bag.id,
        bagNumber: bag.number,
        fillStartedAt: bag.fillStartedAt,
        grossGrams,
        tareGrams,
        isPresetTare,
        scaleId,
        placeId: form.placeId ?? null,
        filledAt: occurredAt,
        personId: asked.actor.personId,
        hasHappened: form.happened ?? false,
      });
      if (unusual !== null) await this.pointAtUnusual(tx, bag, { ...unusual, at: occurredAt });
      return {
        answer: { id: bag.id, number: bag.number, sscc: bag.sscc, netGrams, isDoubtful },
        entry: {
          action: 'close-bag',
          subject: { kind: 'bulk-bag', id: bag.id },
          touches: [{ kind: 'scale', id: scaleId }],
          after: { grossGrams, tareGrams, netGrams, isPresetTare, scaleId, isDoubtful, filledAt: occurredAt },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  /** Somebody looked once more and says that it is so: it is recorded, and quality hears of it. */
  private async pointAtUnusual(tx: Tx, bag: BagRow, unusual: Unusual & { readonly at: string }): Promise<void> {
    const { id, siteId, number } = bag;
    const facts = { bag: number, ...unusual.facts };
    const subject = { kind: 'bulk-bag', id };
    const role = 'quality-officer';
    await raisePoint(tx, { id: this.ids.next(), siteId, cause: unusual.cause, facts, subject, role, at: unusual.at });
  }
}
