import { canonicalText } from '../platform/canonical-text.js';
import { toBoolean } from '../platform/database/stored-values.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { findDelivery } from './deliveries.js';
import type { DeliveryRow, VehicleCheckRow } from './delivery-rows.js';

/**
 * Takes a delivery for this unit: whatever loads, unloads, closes or cancels begins so, one after the other.
 *
 * @throws {Refusal} `delivery-is-closed`, `delivery-has-left`, `delivery-is-cancelled`
 */
export async function takeOpenDelivery(tx: Tx, siteId: string, numberOrId: string): Promise<DeliveryRow> {
  const delivery = await takeDelivery(tx, siteId, numberOrId);
  const facts = { order: delivery.orderNumber, note: delivery.noteNumber };
  if (delivery.status === 'closed') throw new Refusal('delivery-is-closed', facts);
  if (delivery.status === 'left') throw new Refusal('delivery-has-left', facts);
  if (delivery.status === 'cancelled') throw new Refusal('delivery-is-cancelled', facts);
  return delivery;
}

/** The same whatever its state. */
export async function takeDelivery(tx: Tx, siteId: string, numberOrId: string): Promise<DeliveryRow> {
  const { id } = await findDelivery(tx, siteId, numberOrId);
  // An update that changes nothing takes the row's lock on both databases; what is read after it stays true.
  await tx.sql`UPDATE "delivery_state" SET "loaded_count" = "loaded_count" WHERE "delivery_id" = ${id}`;
  return findDelivery(tx, siteId, id);
}

/** The latest check of the vehicle; null: nobody looked yet. */
export async function lastVehicleCheck(from: ReadFrom, deliveryId: string): Promise<VehicleCheckRow | null> {
  const row = onlyRow(
    await from.sql<Omit<VehicleCheckRow, 'answers' | 'passed'> & { answers: string; passed: boolean | number }>`
      SELECT "id", "registration", "haulier_code" AS "haulierCode", "answers", "passed", "checked_at" AS "checkedAt"
      FROM "vehicle_check" WHERE "delivery_id" = ${deliveryId} AND "voided_by" IS NULL
      ORDER BY "checked_at" DESC, "id" DESC LIMIT 1`,
  );
  if (row === null) return null;
  const answers = JSON.parse(row.answers) as VehicleCheckRow['answers'];
  return { ...row, answers, passed: toBoolean(row.passed) };
}

/** The answers as they are kept. */
export function answersText(answers: VehicleCheckRow['answers']): string {
  return canonicalText(answers.map(({ point, isFine }) => ({ point, isFine })));
}

/**
 * A vehicle that nobody checked, or that failed, takes nothing.
 *
 * @throws {Refusal} `vehicle-not-checked`, `vehicle-failed-check`
 */
export async function passedVehicle(from: ReadFrom, delivery: DeliveryRow): Promise<VehicleCheckRow> {
  const check = await lastVehicleCheck(from, delivery.id);
  if (check === null) throw new Refusal('vehicle-not-checked', { order: delivery.orderNumber });
  if (check.passed) return check;
  const failed = check.answers.filter((answer) => !answer.isFine).map((answer) => answer.point);
  throw new Refusal('vehicle-failed-check', { registration: check.registration, points: failed.join(', ') });
}
