import { partOf } from '../disposition/hold-part.js';
import { findBag } from '../drying/bulk-bags.js';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import { rangesOfBag } from '../hopper/hopper-links.js';
import { lotRangesOfRuns, rangesOfLot } from '../packing/packing-runs.js';
import { clipped, overlaps, united, type RunRange } from '../packing/run-ranges.js';
import { packCountsOf } from '../pallets/packs-beyond-count.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { reachOfHold } from './hold-reach.js';
import { customersOf } from './pallet-lines.js';
import type { CustomerLine } from './thread.js';

/** Packs with the sugar in them, by their mean. */
export interface PacksAndGrams {
  readonly packCount: number;
  readonly grams: number;
}

/** How far a bag reaches: what a recall of it would cover if it were bad. All that is possible, whatever the hopper did. */
export interface BagReach {
  readonly bagId: string;
  readonly number: string;
  /** The packs that may hold some of it. */
  readonly possible: PacksAndGrams;
  readonly lots: readonly { readonly lotId: string; readonly code: string }[];
  /** All packs of those lots: what food law presumes to be concerned. */
  readonly wholeLots: PacksAndGrams;
  readonly palletCount: number;
  readonly onVehicleCount: number;
  readonly awayCount: number;
  /** Who got such pallets. */
  readonly customers: readonly CustomerLine[];
}

/** @throws {NotFound} `bulk-bag` */
export async function readBagReach(from: ReadFrom, siteId: string, bag: string): Promise<BagReach> {
  const { id: bagId, number } = await findBag(from, siteId, bag);
  const ranges = united(await rangesOfBag(from, bagId));
  const lots = await lotsOf(from, ranges);
  const { possible: pallets } = await reachOfHold(from, { kind: 'bulk-bag', id: bagId, ...partOf({}) });
  const count = (status: string): number => pallets.filter((pallet) => pallet.status === status).length;
  return {
    bagId,
    number,
    possible: await weighed(from, ranges),
    lots,
    wholeLots: await weighed(from, await packsOfLots(from, lots)),
    palletCount: pallets.length,
    onVehicleCount: count('loaded'),
    awayCount: count('dispatched'),
    customers: customersOf(pallets, []),
  };
}

async function lotsOf(from: ReadFrom, ranges: readonly RunRange[]): Promise<BagReach['lots']> {
  const all = await lotRangesOfRuns(from, [...new Set(ranges.map(({ runId }) => runId))]);
  const reached = all.filter((lot) => ranges.some((range) => overlaps(range, lot)));
  const codes = new Map(reached.map(({ lotId, code }) => [lotId, code]));
  return Array.from(codes, ([lotId, code]) => ({ lotId, code }));
}

async function packsOfLots(from: ReadFrom, lots: BagReach['lots']): Promise<readonly RunRange[]> {
  const ranges: RunRange[] = [];
  for (const { lotId } of lots) {
    const own = await rangesOfLot(from, lotId);
    const counted = await packCountsOf(
      from,
      own.map(({ runId }) => ({ runId, fromCount: 0, toCount: 0 })),
    );
    for (const range of own) {
      const whole = { runId: range.runId, fromCount: 0, toCount: counted.get(range.runId) ?? 0 };
      const packs = clipped(whole, range);
      if (packs !== null) ranges.push({ ...packs });
    }
  }
  return united(ranges);
}

async function weighed(from: ReadFrom, ranges: readonly RunRange[]): Promise<PacksAndGrams> {
  const means = await meanNetsOf(from, [...new Set(ranges.map(({ runId }) => runId))]);
  let [packCount, milligrams] = [0, 0];
  for (const { runId, fromCount, toCount } of ranges) {
    packCount += toCount - fromCount;
    milligrams += (toCount - fromCount) * (means.get(runId)?.meanMilligrams ?? 0);
  }
  return { packCount, grams: Math.round(milligrams / 1000) };
}
