import { partOf, refuseUnusablePart } from '../disposition/hold-part.js';
import type { HoldPart, HoldScope } from '../disposition/standings.js';
import { bagOf } from '../drying/bulk-bags.js';
import { dryerRunOf } from '../drying/dryer-runs.js';
import { periodOf } from '../hopper/hopper-period-rows.js';
import { filmLotOf, lotOf, runOf } from '../packing/packing-runs.js';
import { palletOf } from '../pallets/pallet-list.js';
import { dryerOf, lineOf, shiftAt } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { ReachScope } from './hold-reach.js';

/** @throws {NotFound} when there is no such thing to hold at this site: what is another site's is not there */
export async function refuseUnknownScope(from: ReadFrom, siteId: string, scope: HoldScope): Promise<void> {
  const find = {
    'bulk-bag': bagOf,
    'dryer-run': dryerRunOf,
    'dryer-shift': dryerOf,
    lot: lotOf,
    'packing-run': runOf,
    'packing-shift': lineOf,
    pallet: palletOf,
    'hopper-period': periodOf,
    'film-lot': filmLotOf,
  }[scope.kind];
  const found = await find(from, scope.id);
  if (found.siteId !== siteId) throw new NotFound(scope.kind, scope.id);
}

/**
 * What is to be held, as it is kept. A shift without an end is the whole shift that its time falls in.
 *
 * @throws {NotFound} when there is no such thing to hold
 * @throws {Refusal} `hold-range-not-usable`, `hold-times-not-usable`
 */
export async function settleScope(
  from: ReadFrom,
  siteId: string,
  asked: HoldScope & Partial<HoldPart>,
): Promise<ReachScope> {
  const { kind, id } = asked;
  const part = await partAsked(from, siteId, asked);
  refuseUnusablePart({ kind, id }, part);
  await refuseUnknownScope(from, siteId, { kind, id });
  return { kind, id, ...part };
}

async function partAsked(from: ReadFrom, siteId: string, asked: HoldScope & Partial<HoldPart>): Promise<HoldPart> {
  const part = partOf(asked);
  const isShift = asked.kind === 'dryer-shift' || asked.kind === 'packing-shift';
  if (!isShift || part.fromAt === null || part.untilAt !== null) return part;
  const { startsAt, endsAt } = await shiftAt(from, siteId, part.fromAt);
  return { ...part, fromAt: startsAt, untilAt: endsAt };
}
