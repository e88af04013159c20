import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SentenceFacts } from '../platform/refusal.js';
import { blindCountsOf, type BlindCounts } from './blind-counts.js';
import { loadedOn } from './deliveries.js';
import type { DeliveryRow, LineProgress, VehicleCheckRow } from './delivery-rows.js';
import { progressOf } from './line-progress.js';
import { lastVehicleCheck } from './take-delivery.js';
import { unfitUnits, type UnfitUnit } from './units-on.js';

/** What is to be done next with a delivery; `next-<step>` says it. */
export type NextStep =
  | 'check'
  | 'mend-vehicle'
  | 'take-off'
  | 'load'
  | 'count'
  | 'count-again'
  | 'close'
  | 'stop-at-gate'
  | 'leave'
  | 'nothing';

/** A delivery at the dock: how far it is and what stands in its way. */
export interface DockDelivery {
  readonly delivery: DeliveryRow;
  readonly lines: readonly LineProgress[];
  readonly check: VehicleCheckRow | null;
  readonly unfit: readonly UnfitUnit[];
  readonly counts: BlindCounts;
  readonly step: NextStep;
}

/** Several deliveries at once: the standings of all that is on any of them are computed in one pass. */
export async function dockDeliveries(
  from: ReadFrom,
  deliveries: readonly DeliveryRow[],
): Promise<readonly DockDelivery[]> {
  const open = deliveries.filter(({ status }) => status === 'loading' || status === 'closed');
  const loaded = [];
  for (const { id } of open) loaded.push(...(await loadedOn(from, id)));
  const unfit = await unfitUnits(from, loaded);
  const docked: DockDelivery[] = [];
  for (const delivery of deliveries) {
    const ownIds = new Set(
      loaded.filter((row) => row.deliveryId === delivery.id).map((row) => row.palletId ?? row.bagId),
    );
    const facts = {
      delivery,
      lines: await progressOf(from, delivery.id),
      check: await lastVehicleCheck(from, delivery.id),
      unfit: unfit.filter(({ id }) => ownIds.has(id)),
      counts: await blindCountsOf(from, delivery.id, delivery.loadedCount),
    };
    docked.push({ ...facts, step: nextStep(facts) });
  }
  return docked;
}

/** The first thing in the way; a load that is short may be counted and closed with a reason all the same. */
function nextStep({ delivery, lines, check, unfit, counts }: Omit<DockDelivery, 'step'>): NextStep {
  if (delivery.status === 'left' || delivery.status === 'cancelled') return 'nothing';
  if (delivery.status === 'closed') return unfit.length > 0 ? 'stop-at-gate' : 'leave';
  if (check === null) return 'check';
  if (!check.passed) return 'mend-vehicle';
  if (unfit.length > 0) return 'take-off';
  if (lines.some((line) => line.leftCount > 0) && counts.last === null) return 'load';
  if (counts.last === null) return 'count';
  return counts.agrees ? 'close' : 'count-again';
}

/** A scan that was refused on a delivery. */
export interface RefusedScanRow {
  readonly id: string;
  readonly scanned: string;
  readonly code: string;
  readonly facts: SentenceFacts;
  readonly refusedAt: Instant;
}

/** The latest first. */
export async function refusedScansOf(from: ReadFrom, deliveryId: string): Promise<readonly RefusedScanRow[]> {
  const rows = await from.sql<Omit<RefusedScanRow, 'facts'> & { facts: string }>`
    SELECT "id", "scanned", "code", "facts", "refused_at" AS "refusedAt" FROM "refused_scan"
    WHERE "delivery_id" = ${deliveryId} AND "voided_by" IS NULL ORDER BY "id" DESC LIMIT 50`;
  return rows.map(({ facts, ...row }) => ({ ...row, facts: JSON.parse(facts) as SentenceFacts }));
}
