import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import { findBag } from '../drying/bulk-bags.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints } from '../open-points/raise-point.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { pointAtBroken } from './broken-rules.js';
import { leaveLevelJob } from './level-job.js';
import { putTip } from './put-tip.js';
import { takePeriodAt } from './take-period.js';
import type { SettleCandidateForm } from './tip.form.js';
import { brokenByTipping, refuseUntippable } from './tipping-rules.js';
import { candidatesOfTip, tipOf, type TipRow } from './tips.js';
import { voidTip } from './void-tip.js';

export interface SettledAnswer {
  /** The record that was corrected. */
  readonly correctedId: string;
  /** The tip that stands in its place. */
  readonly id: string;
  readonly bagId: string;
}

/**
 * Which of several bags it was that was tipped.
 * Refusals: `tip-has-no-candidates`, `not-a-candidate`, `bag-already-tipped`, `bag-loaded`.
 */
@Injectable()
export class SettleCandidate {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, tipId: string, form: SettleCandidateForm): Promise<SettledAnswer> {
    return this.changes.run(asked, { tipId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const nextId = (): string => this.ids.next();
      const found = await tipOf(tx, siteId, tipId);
      const moment = { siteId, hopperId: found.hopperId, at: found.openedAt, nextId };
      await takePeriodAt(tx, moment);
      const tip = await tipOf(tx, siteId, tipId);
      const bagIds = await candidatesOfTip(tx, tipId);
      const { id, bagId } = await this.settle(tx, change, { tip, bagIds, form });
      const subject = { kind: 'tip', id: tipId };
      const cause = 'tip-of-unread-bag';
      await clearPoints(tx, { nextId, siteId, cause, subject, personId, at: change.recordedAt });
      return {
        answer: { correctedId: tipId, id, bagId },
        entry: {
          action: 'settle-candidate',
          subject,
          touches: [
            { kind: 'tip', id },
            { kind: 'hopper', id: tip.hopperId },
            ...bagIds.map((candidateId) => ({ kind: 'bulk-bag', id: candidateId })),
          ],
          before: { candidateIds: bagIds, netGrams: tip.netGrams },
          after: { tip: id, bagId },
          reason: form.reason,
        },
      };
    });
  }

  private async settle(
    tx: Tx,
    change: Change,
    of: { readonly tip: TipRow; readonly bagIds: readonly string[]; readonly form: SettleCandidateForm },
  ): Promise<{ readonly id: string; readonly bagId: string }> {
    const { tip, bagIds, form } = of;
    const nextId = (): string => this.ids.next();
    if (tip.source !== 'one-of-several') throw new Refusal('tip-has-no-candidates');
    const bag = await findBag(tx, tip.siteId, form.bag);
    if (!bagIds.includes(bag.id)) throw new Refusal('not-a-candidate', { bag: bag.number });
    await refuseUntippable(tx, bag);
    await voidTip(tx, tip, change);
    const id = nextId();
    const { siteId, periodId, hopperId, openedAt, identifiedBy, secondPersonId, hasHappened, isLate, offAt } = tip;
    const off = offAt === null ? null : { id: nextId(), offAt, restGrams: 0, weighingId: null, placeId: null };
    await putTip(tx, {
      ...{ id, siteId, periodId, hopperId, bag, openedAt, identifiedBy, secondPersonId, hasHappened, isLate, off },
      recordedAt: change.recordedAt,
    });
    const { hopper } = await takePeriodAt(tx, { siteId, hopperId, at: openedAt, nextId });
    const broken = await brokenByTipping(tx, bag, { hopper, at: openedAt });
    const by = { nextId, siteId, subject: { kind: 'bulk-bag', id: bag.id }, at: change.recordedAt };
    await pointAtBroken(tx, broken, by);
    await leaveLevelJob(tx, { id: nextId(), periodId, at: change.recordedAt });
    await leaveReachJob(tx, { id: nextId(), siteId, holdId: null, at: change.recordedAt });
    return { id, bagId: bag.id };
  }
}
