import { leaveReachJob } from '../open-points/reach-job.js';
import { Injectable } from '@nestjs/common';
import { findBag, type BagRow } from '../drying/bulk-bags.js';
import { latenessReason } from '../drying/lateness-reason.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { settleAsked, type SettledAsk } from '../journal/settle-asked.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { pointAtBroken, refuseBroken, type BrokenRule } from './broken-rules.js';
import { leaveLevelJob } from './level-job.js';
import { putOff, refuseOffBeforeOpen } from './put-tip.js';
import { refuseSameOrUnknown } from '../people/second-person.js';
import { takePeriodAt } from './take-period.js';
import { TipCandidate } from './tip-candidate.entity.js';
import { offOf } from './tip-bag.js';
import { Tip } from './tip.entity.js';
import type { TipOneOfSeveralForm } from './tip.form.js';
import { tipWitness } from './tip-witness.js';
import { brokenByTipping, refuseUntippable, type AtHopper } from './tipping-rules.js';

export interface UnreadTipAnswer {
  readonly id: string;
  readonly periodId: string;
  readonly candidateIds: readonly string[];
  /** The mean of what the candidates hold. */
  readonly netGrams: number;
  readonly openedAt: Instant;
  readonly offAt: Instant | null;
  readonly broken: readonly string[];
}

/**
 * A bag is tipped whose number nobody can read: it was one of several. Two people say so. The bags stay as they are, and
 * quality is asked which it was (`SettleCandidate`).
 * Refusals: `candidates-same`, `second-person-same`, and all of `TipBag` for each candidate.
 */
@Injectable()
export class TipOneOfSeveral {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: TipOneOfSeveralForm): Promise<UnreadTipAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const stated = { statedAt: form.openedAt ?? null, reason: latenessReason(form), happened: form.happened };
      const settled = settleAsked(asked, stated, change.recordedAt);
      const answer = await this.tip(tx, asked, form, { settled, change });
      const { occurredAt, statedAt, reason } = settled;
      return {
        answer,
        entry: {
          action: 'tip-one-of-several',
          subject: { kind: 'tip', id: answer.id },
          touches: [
            { kind: 'hopper', id: form.hopperId },
            { kind: 'hopper-period', id: answer.periodId },
            ...answer.candidateIds.map((id) => ({ kind: 'bulk-bag', id })),
          ],
          after: {
            ...{ candidateIds: answer.candidateIds, netGrams: answer.netGrams, openedAt: occurredAt },
            ...{ offAt: answer.offAt, secondPersonId: form.secondPersonId, broken: answer.broken },
          },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async tip(
    tx: Tx,
    asked: Asked,
    form: TipOneOfSeveralForm,
    { settled, change }: { readonly settled: SettledAsk; readonly change: Change },
  ): Promise<UnreadTipAnswer> {
    const { actor } = asked;
    const { siteId } = actor;
    const nextId = (): string => this.ids.next();
    const at = settled.occurredAt;
    const { hopper, period } = await takePeriodAt(tx, { siteId, hopperId: form.hopperId, at, nextId });
    await refuseSameOrUnknown(tx, actor, form.secondPersonId);
    const bags = await candidateBags(tx, siteId, form);
    const { hasHappened, isLate } = settled;
    const broken = await brokenByAny(tx, bags, { hopper, at });
    refuseBroken(broken, hasHappened);
    const id = nextId();
    const off = offOf(asked, form, { at, id: nextId(), change });
    refuseOffBeforeOpen(at, off?.offAt ?? null);
    const netGrams = Math.round(bags.reduce((sum, bag) => sum + bag.remainingGrams, 0) / bags.length);
    await tx.insert(Tip, {
      ...{ id, siteId, periodId: period.id, source: 'one-of-several', bagId: null, binId: null, netGrams },
      ...{ openedAt: at, identifiedBy: form.identifiedBy ?? 'witness', secondPersonId: form.secondPersonId },
      ...{ hasHappened, isLate, voidedBy: null },
    });
    await tx.insert(
      TipCandidate,
      bags.map((bag) => ({ id: nextId(), tipId: id, bagId: bag.id, voidedBy: null })),
    );
    if (off !== null) await putOff(tx, id, off);
    const subject = { kind: 'tip', id };
    const facts = { hopper: hopper.code, bags: bags.map(({ number }) => number).join(', '), at };
    const point = { id: nextId(), siteId, cause: 'tip-of-unread-bag', facts, subject, at: change.recordedAt };
    await raisePoint(tx, { ...point, role: 'quality-officer' });
    const who = await tipWitness(tx, asked, { broken, hopper, at });
    await pointAtBroken(tx, broken, { nextId, siteId, subject, facts: who, at: change.recordedAt });
    await leaveLevelJob(tx, { id: nextId(), periodId: period.id, at: change.recordedAt });
    if (isLate || hasHappened) await leaveReachJob(tx, { id: nextId(), siteId, holdId: null, at: change.recordedAt });
    return {
      ...{ id, periodId: period.id, candidateIds: bags.map((bag) => bag.id), netGrams, openedAt: at },
      ...{ offAt: off?.offAt ?? null, broken: broken.map(({ code }) => code) },
    };
  }
}

async function candidateBags(tx: Tx, siteId: string, form: TipOneOfSeveralForm): Promise<readonly BagRow[]> {
  const bags = new Map<string, BagRow>();
  for (const candidate of form.candidates) {
    const bag = await findBag(tx, siteId, candidate.bag);
    await refuseUntippable(tx, bag);
    bags.set(bag.id, bag);
  }
  if (bags.size < 2) throw new Refusal('candidates-same', { bag: [...bags.values()][0]?.number ?? null });
  return [...bags.values()];
}

async function brokenByAny(tx: Tx, bags: readonly BagRow[], place: AtHopper): Promise<readonly BrokenRule[]> {
  const broken: BrokenRule[] = [];
  for (const bag of bags) broken.push(...(await brokenByTipping(tx, bag, place)));
  return broken;
}
