import { CheckVehicle, usualCheckPoints } from '../../src/dispatch/check-vehicle.js';
import { CloseDelivery, type CloseAnswer } from '../../src/dispatch/close-delivery.js';
import { CountBlind, type CountAnswer } from '../../src/dispatch/count-blind.js';
import { LoadPallet, type LoadAnswer } from '../../src/dispatch/load-pallet.js';
import { PlanDelivery } from '../../src/dispatch/plan-delivery.js';
import { VehicleLeaves, type LeaveAnswer } from '../../src/dispatch/vehicle-leaves.js';
import type { Plant } from './a-plant.js';
import { asking, type TestHouse } from './house.js';

/** What a test may want otherwise of a delivery; all else is a checked vehicle for 960 packs of the first format. */
export interface DeliveryWishes {
  readonly orderNumber?: string;
  readonly lines?: readonly { readonly formatId?: string; readonly gradeId?: string; readonly orderedCount: number }[];
  /** Points of the check that are not fine; `null`: nobody checked. */
  readonly failedPoints?: readonly string[] | null;
}

let orderCount = 0;

/** A planned delivery whose vehicle passed its check. */
export async function aDelivery(house: TestHouse, plant: Plant, wishes: DeliveryWishes = {}): Promise<string> {
  orderCount += 1;
  const lines = wishes.lines ?? [{ formatId: plant.formatId, orderedCount: 960 }];
  const { id } = await house.get(PlanDelivery).execute(asking(plant.actor), {
    customerId: plant.customerId,
    orderNumber: wishes.orderNumber ?? `ORDER-${orderCount}`,
    plannedOn: '2026-03-12',
    lines: lines.map((line) => ({ ...line })),
  });
  if (wishes.failedPoints !== null) await vehicleChecked(house, plant, id, wishes.failedPoints ?? []);
  return id;
}

export async function vehicleChecked(
  house: TestHouse,
  plant: Plant,
  delivery: string,
  failedPoints: readonly string[] = [],
  registration = 'AQ 123 D',
): Promise<void> {
  await house.get(CheckVehicle).execute(asking(plant.actor), delivery, {
    registration,
    haulierCode: 'H-01',
    answers: usualCheckPoints.map(({ code }) => ({ point: code, isFine: !failedPoints.includes(code) })),
  });
}

/** Scans a pallet onto a delivery. */
export function palletLoaded(house: TestHouse, plant: Plant, delivery: string, pallet: string): Promise<LoadAnswer> {
  return house.get(LoadPallet).execute(asking(plant.actor), delivery, { pallet });
}

/** Gives a count of the units on a vehicle. */
export function unitsCounted(
  house: TestHouse,
  plant: Plant,
  delivery: string,
  unitCount: number,
): Promise<CountAnswer> {
  return house.get(CountBlind).execute(asking(plant.actor), delivery, { unitCount });
}

/** Counts, then closes a delivery; what is short has its reason. */
export async function deliveryClosed(
  house: TestHouse,
  plant: Plant,
  delivery: string,
  { blindCount, ...form }: { readonly blindCount: number; readonly seal?: string; readonly remarks?: string },
): Promise<CloseAnswer> {
  await unitsCounted(house, plant, delivery, blindCount);
  return house.get(CloseDelivery).execute(asking(plant.actor), delivery, {
    seal: 'S123456',
    shortReason: 'test: the rest comes tomorrow',
    ...form,
  });
}

/** The vehicle of a closed delivery goes through the gate. */
export function vehicleLeft(house: TestHouse, plant: Plant, delivery: string): Promise<LeaveAnswer> {
  return house.get(VehicleLeaves).execute(asking(plant.actor), delivery, {});
}
