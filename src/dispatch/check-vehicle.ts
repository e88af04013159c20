import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { clearPoints, raisePoint } from '../open-points/raise-point.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { settleOccurredAt } from '../platform/occurred-at.js';
import { Refusal } from '../platform/refusal.js';
import { ruleSetAt } from '../plant/plant-facts.js';
import type { VehicleCheckRules } from '../plant/rule-kinds.js';
import type { DeliveryRow } from './delivery-rows.js';
import type { CheckAnswerForm, CheckVehicleForm } from './delivery.form.js';
import { answersText, lastVehicleCheck, takeOpenDelivery } from './take-delivery.js';
import { VehicleCheck } from './vehicle-check.entity.js';

/** What is looked at where the house has set nothing of its own (common practice, no source). */
export const usualCheckPoints: VehicleCheckRules['checkPoints'] = [
  { code: 'clean', text: 'The loading space is clean' },
  { code: 'dry', text: 'The loading space is dry, roof and sides are tight' },
  { code: 'no-smell', text: 'There is no foreign smell' },
  { code: 'no-pests', text: 'There is no trace of pests' },
  { code: 'sound', text: 'Floor and walls are sound, nothing sharp sticks out' },
];

export interface CheckAnswer {
  readonly id: string;
  readonly passed: boolean;
  readonly failedPoints: readonly string[];
}

/** The points that are asked at an instant. */
export async function checkPointsAt(
  from: ReadFrom,
  siteId: string,
  at: Instant,
): Promise<VehicleCheckRules['checkPoints']> {
  const rules = await ruleSetAt<VehicleCheckRules>(from, siteId, 'vehicle-check', at);
  return rules?.checkPoints ?? usualCheckPoints;
}

/**
 * The vehicle is looked at before loading. It passes only if every point is fine; one that fails takes nothing.
 * Refusals: `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`, `check-points-missing`, `check-point-unknown`,
 * `other-vehicle-is-loaded`.
 */
@Injectable()
export class CheckVehicle {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, delivery: string, form: CheckVehicleForm): Promise<CheckAnswer> {
    return this.changes.run(asked, { delivery, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const reason = form.reason ?? null;
      const { occurredAt, statedAt } = settleOccurredAt(form.checkedAt ?? null, change.recordedAt, reason);
      const taken = await takeOpenDelivery(tx, siteId, delivery);
      const registration = form.registration.toUpperCase().replaceAll(/\s+/g, ' ');
      await refuseOtherVehicle(tx, taken, registration);
      refuseOddAnswers(await checkPointsAt(tx, siteId, occurredAt), form.answers);
      const failedPoints = form.answers.filter((answer) => !answer.isFine).map((answer) => answer.point);
      const passed = failedPoints.length === 0;
      const id = this.ids.next();
      const { haulierCode } = form;
      await tx.insert(VehicleCheck, {
        id,
        deliveryId: taken.id,
        registration,
        haulierCode,
        answers: answersText(form.answers),
        passed,
        checkedAt: occurredAt,
        voidedBy: null,
      });
      await this.point(tx, { delivery: taken, registration, failedPoints, personId, at: change.recordedAt });
      return {
        answer: { id, passed, failedPoints },
        entry: {
          action: 'check-vehicle',
          subject: { kind: 'delivery', id: taken.id },
          after: { registration, haulierCode, passed, failedPoints },
          reason,
          occurredAt,
          statedAt,
        },
      };
    });
  }

  /** A failed check waits for a clerk until another vehicle, or the same one cleaned, passes. */
  private async point(tx: Tx, checked: CheckedVehicle): Promise<void> {
    const { delivery, failedPoints, registration, at } = checked;
    const common = {
      siteId: delivery.siteId,
      cause: 'vehicle-failed-check',
      subject: { kind: 'delivery', id: delivery.id },
      at,
    };
    if (failedPoints.length === 0) {
      await clearPoints(tx, { ...common, nextId: () => this.ids.next(), personId: checked.personId });
      return;
    }
    const facts = { registration, points: failedPoints.join(', ') };
    await raisePoint(tx, { ...common, id: this.ids.next(), facts, role: 'dispatch-clerk' });
  }
}

interface CheckedVehicle {
  readonly delivery: DeliveryRow;
  readonly registration: string;
  readonly failedPoints: readonly string[];
  readonly personId: string | null;
  readonly at: Instant;
}

async function refuseOtherVehicle(tx: Tx, delivery: DeliveryRow, registration: string): Promise<void> {
  if (delivery.loadedCount === 0) return;
  const last = await lastVehicleCheck(tx, delivery.id);
  if (last === null || last.registration === registration) return;
  throw new Refusal('other-vehicle-is-loaded', { registration: last.registration });
}

function refuseOddAnswers(points: VehicleCheckRules['checkPoints'], answers: readonly CheckAnswerForm[]): void {
  const answered = answers.map((answer) => answer.point);
  const missing = points.filter(({ code }) => !answered.includes(code)).map(({ code }) => code);
  if (missing.length > 0) throw new Refusal('check-points-missing', { points: missing.join(', ') });
  const codes = points.map(({ code }) => code);
  const odd = answered.find((point, place) => !codes.includes(point) || answered.indexOf(point) !== place);
  if (odd !== undefined) throw new Refusal('check-point-unknown', { point: odd, points: codes.join(', ') });
}
