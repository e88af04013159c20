import { Injectable } from '@nestjs/common';
import { openHolds } from '../disposition/standings.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { refuseContradiction, voidFact } from '../journal/void-fact.js';
import { leaveReachJob } from '../open-points/reach-job.js';
import { refuseSameOrUnknown } from '../people/second-person.js';
import type { HopperRow } from '../plant/plant-rows.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { BadForm, NotFound, Refusal } from '../platform/refusal.js';
import { pointAtBroken } from './broken-rules.js';
import { nameOf } from './end-tip.js';
import { doubtAbout } from './hopper-level.js';
import { currentPeriod, periodOf, type PeriodRow } from './hopper-period-rows.js';
import { HopperPeriod } from './hopper-period.entity.js';
import { readHopperPeriod } from './hopper-periods.js';
import { HopperState } from './hopper-state.entity.js';
import type { CorrectEmptyForm } from './hopper.form.js';
import { leaveLevelJob } from './level-job.js';
import { LevelSeen } from './level-seen.entity.js';
import { moveTip } from './move-tip.js';
import { emptyId } from './period-events.js';
import { questioned, residueUpperOf } from './prove-empty.js';
import { ProvenEmpty } from './proven-empty.entity.js';
import { takeHopper } from './take-period.js';
import { tipsOfPeriod } from './tips.js';

export interface CorrectEmptyAnswer {
  /** The period that the empty ended, or was said to end. */
  readonly endedPeriodId: string;
  /** The empty that stands in its place; null: it did not occur. */
  readonly id: string | null;
  /** The period that the hopper is in now. */
  readonly periodId: string;
  readonly provenAt: Instant | null;
  /** By how many grams the records say otherwise. */
  readonly doubtGrams: number;
}

/** A proven empty with the period that it ended and the one that it began. */
interface Taken {
  readonly hopper: HopperRow;
  readonly ended: PeriodRow;
  readonly begun: PeriodRow;
  readonly empty: ProvenEmpty;
}

/** When the hopper was truly empty, and what stuck. */
interface Right {
  readonly provenAt: Instant;
  readonly residueGrams: number;
  readonly residueUpperGrams: number;
}

/**
 * The last proven empty of a hopper did not occur, or it was at another time or left another residue. Tips and levels go
 * to the period in which they then were. One before the last is corrected after those that came later: they rest on it.
 * Refusals: `already-corrected`, `empty-went-on`, `period-on-hold`, `empty-as-it-was`, `limits-out-of-order`,
 * `second-person-same`, `already-proven-empty`, `bag-across-empty`, those of the time.
 */
@Injectable()
export class CorrectEmpty {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  /** @param endedPeriodId the period that the empty ended */
  execute(asked: Asked, endedPeriodId: string, form: CorrectEmptyForm): Promise<CorrectEmptyAnswer> {
    return this.changes.run(asked, { endedPeriodId, ...form }, async (tx, change) => {
      refuseContradiction(form);
      const taken = await take(tx, asked.actor.siteId, endedPeriodId);
      const right = form.why === 'did-not-occur' ? null : await rightOf(tx, asked, { taken, form, change });
      await voidFact(tx, ProvenEmpty, taken.empty.id, change);
      await voidFact(tx, HopperPeriod, taken.begun.id, change);
      const answer =
        right === null ? await this.withdraw(tx, taken, change) : await this.move(tx, asked, { taken, right, change });
      for (const periodId of new Set([answer.endedPeriodId, answer.periodId])) {
        await leaveLevelJob(tx, { id: this.ids.next(), periodId, at: change.recordedAt });
      }
      const { siteId } = asked.actor;
      await leaveReachJob(tx, { id: this.ids.next(), siteId, holdId: null, at: change.recordedAt });
      const { empty, hopper, begun } = taken;
      const touched = [endedPeriodId, begun.id, answer.periodId];
      return {
        answer,
        entry: {
          action: 'correct-empty',
          subject: { kind: 'hopper', id: hopper.id },
          touches: touched.map((id) => ({ kind: 'hopper-period', id })),
          before: { empty: empty.id, provenAt: empty.provenAt, residueGrams: empty.residueGrams },
          after: {
            ...{ why: form.why, empty: answer.id, provenAt: answer.provenAt, doubtGrams: answer.doubtGrams },
            ...{ residueGrams: right?.residueGrams ?? null, secondPersonId: form.secondPersonId ?? null },
          },
          reason: form.reason,
        },
      };
    });
  }

  /** It was none: all that was recorded after it belongs to the period before. */
  private async withdraw(tx: Tx, { hopper, ended, begun }: Taken, change: Change): Promise<CorrectEmptyAnswer> {
    await tx.update(HopperState, { hopperId: hopper.id }, { periodId: ended.id });
    await this.moveRecords(tx, { from: begun.id, to: ended.id, isOf: () => true, change });
    return { endedPeriodId: ended.id, id: null, periodId: ended.id, provenAt: null, doubtGrams: 0 };
  }

  private async move(
    tx: Tx,
    { actor }: Asked,
    { taken, right, change }: { readonly taken: Taken; readonly right: Right; readonly change: Change },
  ): Promise<CorrectEmptyAnswer> {
    const { hopper, ended, begun, empty } = taken;
    const { provenAt, residueGrams, residueUpperGrams } = right;
    const [id, periodId] = [this.ids.next(), this.ids.next()];
    const { how, secondPersonId } = empty;
    await tx.insert(ProvenEmpty, {
      ...{ id, periodId: ended.id, how, residueGrams, residueUpperGrams, secondPersonId, provenAt, voidedBy: null },
    });
    await tx.insert(HopperPeriod, {
      ...{ id: periodId, hopperId: hopper.id, number: begun.number, startedAt: provenAt, residueLowerGrams: 0 },
      ...{ previousPeriodId: residueUpperGrams === 0 ? null : ended.id, residueUpperGrams, voidedBy: null },
    });
    await tx.update(HopperState, { hopperId: hopper.id }, { periodId });
    const isLater = (at: Instant): boolean => at >= provenAt;
    await this.moveRecords(tx, { from: ended.id, to: periodId, isOf: isLater, change });
    await this.moveRecords(tx, { from: begun.id, to: periodId, isOf: isLater, change });
    await this.moveRecords(tx, { from: begun.id, to: ended.id, isOf: (at) => !isLater(at), change });
    await refuseAcross(tx, hopper, ended.id, provenAt);
    const doubtGrams = doubtAbout(await readHopperPeriod(tx, ended.id), emptyId);
    const subject = { kind: 'hopper-period', id: ended.id };
    const point = { nextId: () => this.ids.next(), siteId: actor.siteId, subject, at: change.recordedAt };
    await pointAtBroken(tx, questioned(hopper, doubtGrams), point);
    return { endedPeriodId: ended.id, id, periodId, provenAt, doubtGrams };
  }

  private async moveRecords(
    tx: Tx,
    move: {
      readonly from: string;
      readonly to: string;
      readonly isOf: (at: Instant) => boolean;
      readonly change: Change;
    },
  ): Promise<void> {
    const { from, to: periodId, isOf, change } = move;
    const nextId = (): string => this.ids.next();
    for (const tip of (await tipsOfPeriod(tx, from)).filter(({ openedAt }) => isOf(openedAt))) {
      const { openedAt, offAt, isLate } = tip;
      await moveTip(tx, tip, { periodId, openedAt, offAt, isLate }, { change, nextId });
    }
    for (const level of await tx.find(LevelSeen, { periodId: from, voidedBy: null })) {
      if (!isOf(level.seenAt)) continue;
      await voidFact(tx, LevelSeen, level.id, change);
      await tx.insert(LevelSeen, { ...level, id: nextId(), periodId, voidedBy: null });
    }
  }
}

/** @throws {Refusal} `already-corrected`, `empty-went-on`, `period-on-hold` */
async function take(tx: Tx, siteId: string, endedPeriodId: string): Promise<Taken> {
  const { hopperId } = await periodOf(tx, endedPeriodId);
  const hopper = await takeHopper(tx, siteId, hopperId);
  const ended = await periodOf(tx, endedPeriodId);
  const [empty] = await tx.find(ProvenEmpty, { periodId: endedPeriodId, voidedBy: null });
  if (empty === undefined) throw new Refusal('already-corrected', { id: endedPeriodId });
  const begun = await currentPeriod(tx, hopperId);
  if (begun === null) throw new NotFound('hopper-period', endedPeriodId);
  if (begun.number !== ended.number + 1) {
    throw new Refusal('empty-went-on', { hopper: hopper.code, at: begun.startedAt });
  }
  const [hold] = await openHolds(tx, [{ kind: 'hopper-period', id: begun.id }]);
  if (hold !== undefined) throw new Refusal('period-on-hold', { hold: hold.number, hopper: hopper.code });
  return { hopper, ended, begun, empty };
}

/** @throws {Refusal} `empty-as-it-was`, `limits-out-of-order`, `second-person-same`, `already-proven-empty` */
async function rightOf(
  tx: Tx,
  { actor }: Asked,
  { taken, form, change }: { readonly taken: Taken; readonly form: CorrectEmptyForm; readonly change: Change },
): Promise<Right> {
  const { empty, ended, hopper } = taken;
  if (form.secondPersonId == null) throw new BadForm([{ field: 'secondPersonId', code: 'field-missing', facts: {} }]);
  await refuseSameOrUnknown(tx, actor, form.secondPersonId);
  const provenAt =
    form.provenAt == null ? empty.provenAt : settleOccurredAt(form.provenAt, change.recordedAt, form.reason).occurredAt;
  const isOtherResidue = form.residueGrams != null || form.residueUpperGrams != null;
  const residue = {
    residueGrams: form.residueGrams ?? empty.residueGrams,
    residueUpperGrams: form.residueUpperGrams ?? (form.residueGrams == null ? empty.residueUpperGrams : null),
  };
  if (provenAt === empty.provenAt && !isOtherResidue) throw new Refusal('empty-as-it-was', { hopper: hopper.code });
  if (provenAt <= ended.startedAt) {
    throw new Refusal('already-proven-empty', { hopper: hopper.code, at: ended.startedAt });
  }
  return { provenAt, residueGrams: residue.residueGrams, residueUpperGrams: residueUpperOf(residue) };
}

/** A bag that hung while the hopper was looked into: one of the two times is wrong. */
async function refuseAcross(tx: Tx, hopper: HopperRow, periodId: string, provenAt: Instant): Promise<void> {
  const across = (await tipsOfPeriod(tx, periodId)).find(({ offAt }) => offAt === null || offAt > provenAt);
  if (across === undefined) return;
  throw new Refusal('bag-across-empty', { hopper: hopper.code, bag: nameOf(across), at: across.openedAt });
}
