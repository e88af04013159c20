import { hopperOf, linesOfHopper } from '../plant/plant-facts.js';
import type { HopperRow } from '../plant/plant-rows.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { currentPeriod, periodAt, type PeriodRow } from './hopper-period-rows.js';
import { HopperPeriod } from './hopper-period.entity.js';
import { HopperState } from './hopper-state.entity.js';
import { earlierOf } from './record-times.js';

/** Which hopper, and when something happened at it. */
export interface HopperMoment {
  readonly siteId: string;
  readonly hopperId: string;
  readonly at: Instant;
  readonly nextId: () => string;
}

/**
 * Takes a hopper for this unit and answers it: what others would add to it waits.
 *
 * @throws {NotFound} `hopper`, also for one of another site
 */
export async function takeHopper(tx: Tx, siteId: string, hopperId: string): Promise<HopperRow> {
  const hopper = await hopperOf(tx, hopperId);
  if (hopper.siteId !== siteId) throw new NotFound('hopper', hopperId);
  // An update that changes nothing takes the row's lock on both databases.
  if ((await tx.update(HopperState, { hopperId }, { hopperId })) === 0) {
    await tx.sql`INSERT INTO "hopper_state" ("hopper_id", "period_id") VALUES (${hopperId}, ${null}) ON CONFLICT DO NOTHING`;
    await tx.update(HopperState, { hopperId }, { hopperId });
  }
  return hopper;
}

/**
 * Takes a hopper and the period that it was in at an instant. Before anything was recorded of it, its first period is
 * opened: from when it first fed a line, or from that instant, and with nothing inside (sugar that was in it on day one
 * is tipped as a bag of the opening stock).
 *
 * @throws {Refusal} `before-first-period`
 * @throws {NotFound} `hopper`
 */
export async function takePeriodAt(
  tx: Tx,
  moment: HopperMoment,
): Promise<{ readonly hopper: HopperRow; readonly period: PeriodRow }> {
  const { siteId, hopperId, at } = moment;
  const hopper = await takeHopper(tx, siteId, hopperId);
  const current = (await currentPeriod(tx, hopperId)) ?? (await openFirstPeriod(tx, moment));
  const period = await periodAt(tx, hopperId, at);
  if (period === null)
    throw new Refusal('before-first-period', { hopper: hopper.code, startedAt: current.startedAt, at });
  return { hopper, period };
}

async function openFirstPeriod(tx: Tx, { hopperId, at, nextId }: HopperMoment): Promise<PeriodRow> {
  const [first] = await linesOfHopper(tx, hopperId);
  const startedAt = earlierOf(first?.fromAt ?? at, at);
  const id = nextId();
  const residue = { previousPeriodId: null, residueLowerGrams: 0, residueUpperGrams: 0 };
  await tx.insert(HopperPeriod, { id, hopperId, number: 1, startedAt, ...residue, voidedBy: null });
  await tx.update(HopperState, { hopperId }, { periodId: id });
  const period = await currentPeriod(tx, hopperId);
  if (period === null) throw new Error(`the first period of hopper ${hopperId} is not there`);
  return period;
}
