import { leaveReachJob } from '../open-points/reach-job.js';
import { formatKilograms } from '../core/units/grams.js';
import { Injectable } from '@nestjs/common';
import { latenessReason } from '../drying/lateness-reason.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { recordCount } from '../packing/count-packs.js';
import { findRun } from '../packing/packing-runs.js';
import { hopperOfLine } from '../plant/plant-facts.js';
import type { HopperRow } from '../plant/plant-rows.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { pointAtBroken, refuseBroken, type BrokenRule } from './broken-rules.js';
import { nameOf } from './end-tip.js';
import { currentPeriod, type PeriodRow } from './hopper-period-rows.js';
import { HopperPeriod } from './hopper-period.entity.js';
import { readHopperPeriod } from './hopper-periods.js';
import { HopperState } from './hopper-state.entity.js';
import { doubtAbout } from './hopper-level.js';
import type { ProveEmptyForm } from './hopper.form.js';

import { leaveLevelJob } from './level-job.js';
import { emptyId } from './period-events.js';
import { ProvenEmpty } from './proven-empty.entity.js';
import { refuseSameOrUnknown } from '../people/second-person.js';
import { takePeriodAt } from './take-period.js';
import { tipsOfPeriod } from './tips.js';

export interface ProvenEmptyAnswer {
  readonly id: string;
  readonly endedPeriodId: string;
  readonly periodId: string;
  readonly provenAt: Instant;
  /** Nothing was left inside: what was tipped before is in nothing that is packed from here on. */
  readonly isThreadCut: boolean;
  /** By how many grams the records say otherwise, where it was recorded all the same. */
  readonly doubtGrams: number;
}

interface Proof {
  readonly hopper: HopperRow;
  readonly period: PeriodRow;
  readonly provenAt: Instant;
  readonly residueGrams: number;
  readonly residueUpperGrams: number;
}

/**
 * The flow is stopped, the hopper is opened, two people look in and say what sticks: the hopper period ends and the next
 * begins. With a residue of 0 the thread is cut.
 * Refusals: `flow-not-stopped`, `second-person-same`, `limits-out-of-order`, `already-proven-empty`, `bag-hangs`,
 * `records-after-empty`, `run-of-other-hopper`, those of a count and of the time; unless it has happened:
 * `empty-questioned`.
 */
@Injectable()
export class ProveEmpty {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, hopperId: string, form: ProveEmptyForm): Promise<ProvenEmptyAnswer> {
    return this.changes.run(asked, { hopperId, ...form }, async (tx, change) => {
      const reason = latenessReason(form);
      const { occurredAt, statedAt } = settleOccurredAt(form.provenAt ?? null, change.recordedAt, reason);
      if (!form.isFlowStopped) throw new Refusal('flow-not-stopped');
      await refuseSameOrUnknown(tx, asked.actor, form.secondPersonId);
      const proof = await this.takeProof(tx, asked, { hopperId, form, provenAt: occurredAt });
      await this.recordCounts(tx, asked, { proof, form });
      const answer = await this.endPeriod(tx, asked, { proof, form, change });
      return {
        answer,
        entry: {
          action: 'prove-empty',
          subject: { kind: 'hopper', id: hopperId },
          touches: [answer.endedPeriodId, answer.periodId].map((id) => ({ kind: 'hopper-period', id })),
          after: {
            ...{ empty: answer.id, how: form.how, secondPersonId: form.secondPersonId, doubtGrams: answer.doubtGrams },
            ...{ residueGrams: proof.residueGrams, residueUpperGrams: proof.residueUpperGrams },
            counts: (form.counts ?? []).map(({ run, packCount }) => ({ run, packCount })),
          },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  private async takeProof(
    tx: Tx,
    { actor }: Asked,
    of: { readonly hopperId: string; readonly form: ProveEmptyForm; readonly provenAt: Instant },
  ): Promise<Proof> {
    const { hopperId, form, provenAt } = of;
    const { residueGrams } = form;
    const residueUpperGrams = residueUpperOf(form);
    const nextId = (): string => this.ids.next();
    const { hopper } = await takePeriodAt(tx, { siteId: actor.siteId, hopperId, at: provenAt, nextId });
    const period = await currentPeriod(tx, hopperId);
    if (period === null) throw new Error(`hopper ${hopperId} is in no period`);
    if (provenAt <= period.startedAt) {
      throw new Refusal('already-proven-empty', { hopper: hopper.code, at: period.startedAt });
    }
    await refuseLaterRecords(tx, { hopper, period, provenAt });
    return { hopper, period, provenAt, residueGrams, residueUpperGrams };
  }

  /** Where the runs stood: without it nobody knows which packs of the count around it were before and which after. */
  private async recordCounts(
    tx: Tx,
    { actor }: Asked,
    { proof, form }: { readonly proof: Proof; readonly form: ProveEmptyForm },
  ): Promise<void> {
    for (const { run, packCount } of form.counts ?? []) {
      const { id: runId, lineId, number } = await findRun(tx, actor.siteId, run);
      if ((await hopperOfLine(tx, lineId, proof.provenAt)) !== proof.hopper.id) {
        throw new Refusal('run-of-other-hopper', { run: number, hopper: proof.hopper.code });
      }
      await recordCount(tx, { id: this.ids.next(), runId, packCount, countedAt: proof.provenAt, occasion: 'other' });
    }
  }

  private async endPeriod(
    tx: Tx,
    { actor }: Asked,
    { proof, form, change }: { readonly proof: Proof; readonly form: ProveEmptyForm; readonly change: Change },
  ): Promise<ProvenEmptyAnswer> {
    const { hopper, period, provenAt, residueGrams, residueUpperGrams } = proof;
    const [id, periodId] = [this.ids.next(), this.ids.next()];
    const isThreadCut = residueUpperGrams === 0;
    await tx.insert(ProvenEmpty, {
      ...{ id, periodId: period.id, how: form.how, residueGrams, residueUpperGrams },
      ...{ secondPersonId: form.secondPersonId, provenAt, voidedBy: null },
    });
    await tx.insert(HopperPeriod, {
      ...{ id: periodId, hopperId: hopper.id, number: period.number + 1, startedAt: provenAt },
      ...{ previousPeriodId: isThreadCut ? null : period.id, residueLowerGrams: 0, residueUpperGrams, voidedBy: null },
    });
    await tx.update(HopperState, { hopperId: hopper.id }, { periodId });
    const doubtGrams = doubtAbout(await readHopperPeriod(tx, period.id), emptyId);
    const broken = questioned(hopper, doubtGrams);
    refuseBroken(broken, form.happened ?? false);
    const { siteId } = actor;
    const nextId = (): string => this.ids.next();
    const subject = { kind: 'hopper-period', id: period.id };
    await pointAtBroken(tx, broken, { nextId, siteId, subject, at: change.recordedAt });
    await leaveLevelJob(tx, { id: nextId(), periodId: period.id, at: change.recordedAt });
    await leaveReachJob(tx, { id: nextId(), siteId, holdId: null, at: change.recordedAt });
    return { id, endedPeriodId: period.id, periodId, provenAt, isThreadCut, doubtGrams };
  }
}

/**
 * What two people judge by eye may be twice as much. Our own value, no source.
 *
 * @throws {Refusal} `limits-out-of-order`
 */
export function residueUpperOf({
  residueGrams,
  residueUpperGrams,
}: Pick<ProveEmptyForm, 'residueGrams' | 'residueUpperGrams'>): number {
  const upperGrams = residueUpperGrams ?? residueGrams * 2;
  if (upperGrams < residueGrams) throw new Refusal('limits-out-of-order', { lowerGrams: residueGrams, upperGrams });
  return upperGrams;
}

export function questioned(hopper: HopperRow, doubtGrams: number): readonly BrokenRule[] {
  if (doubtGrams === 0) return [];
  return [
    {
      code: 'empty-questioned',
      facts: { hopper: hopper.code, kilograms: formatKilograms(doubtGrams, { thousands: true }) },
    },
  ];
}

async function refuseLaterRecords(
  tx: Tx,
  { hopper, period, provenAt }: Pick<Proof, 'hopper' | 'period' | 'provenAt'>,
): Promise<void> {
  const tips = await tipsOfPeriod(tx, period.id);
  const later = tips.find(({ openedAt, offAt }) => openedAt > provenAt || (offAt ?? openedAt) > provenAt);
  if (later !== undefined) {
    throw new Refusal('records-after-empty', {
      hopper: hopper.code,
      what: nameOf(later),
      at: later.offAt ?? later.openedAt,
    });
  }
  const hanging = tips.find(({ offAt }) => offAt === null);
  if (hanging !== undefined) {
    throw new Refusal('bag-hangs', { hopper: hopper.code, bag: nameOf(hanging), at: hanging.openedAt });
  }
  const levels = await tx.sql<{ seenAt: Instant }>`
    SELECT "seen_at" AS "seenAt" FROM "level_seen" WHERE "period_id" = ${period.id} AND "seen_at" > ${provenAt}
      AND "voided_by" IS NULL ORDER BY "seen_at" LIMIT 1`;
  if (levels[0] !== undefined) {
    throw new Refusal('records-after-empty', { hopper: hopper.code, what: 'level', at: levels[0].seenAt });
  }
}
