import type { BagRow } from '../drying/bulk-bags.js';
import { raisePoint } from '../open-points/raise-point.js';
import type { HopperRow } from '../plant/plant-rows.js';
import type { Actor } from '../platform/actor.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { alreadyInMinutes, refusalMetBy } from './refusals-met.js';

/**
 * A bag that was refused is said to be in all the same: quality is told, under the person who says so.
 *
 * @throws {Refusal} `no-refusal-met` where this person met none with this bag here lately
 */
export async function pointAtAlreadyIn(
  tx: Tx,
  { siteId, personId }: Actor,
  of: { readonly bag: BagRow; readonly hopper: HopperRow; readonly nextId: () => string; readonly now: Instant },
): Promise<void> {
  const { bag, hopper, now } = of;
  const met = personId === null ? null : await refusalMetBy(tx, { bagId: bag.id, hopperId: hopper.id, personId, now });
  if (met === null) throw new Refusal('no-refusal-met', { bag: bag.number, minutes: alreadyInMinutes });
  const facts = { bag: bag.number, hopper: hopper.code, rule: met.code };
  const subject = { kind: 'bulk-bag', id: bag.id };
  const point = { id: of.nextId(), siteId, cause: 'already-in', facts, subject, at: now };
  await raisePoint(tx, { ...point, role: 'quality-officer', personId });
}
