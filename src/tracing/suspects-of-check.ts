import { deliveryOf } from '../dispatch/deliveries.js';
import { openHolds, openHoldsOnKind, type HoldRow } from '../disposition/standings.js';
import type { LineCheckRow } from '../line-checks/line-checks.js';
import { suspectPacks, type SuspectPacks } from '../line-checks/suspect-packs.js';
import { packsIn, shared, united, without, type RunRange } from '../packing/run-ranges.js';
import { palletsOf, palletsOfRanges } from '../pallets/pallet-list.js';
import { packsHeld, timedPacks } from '../pallets/timed-packs.js';
import type { PalletStatus } from '../pallets/pallet-rows.js';
import { placeOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';

/** A pallet that holds suspect packs, or may, and where it is. */
export interface SuspectPallet {
  readonly palletId: string;
  readonly sscc: string;
  readonly status: PalletStatus;
  /** A store place's code, or a delivery's number; null where nobody said. */
  readonly whereabouts: string | null;
  readonly packCount: number;
  readonly suspectPackCount: number;
  /** False: after a split nobody knows whether it holds any. */
  readonly isCertain: boolean;
}

/** What a failed check makes suspect, where it is, and what of it nobody holds yet. */
export interface Suspects extends SuspectPacks {
  readonly pallets: readonly SuspectPallet[];
  /** Packs that are on no pallet: on belts and tables, on the pallet that is being built, or removed. */
  readonly loosePackCount: number;
  /** The open holds that cover some of it. */
  readonly holds: readonly HoldRow[];
  readonly notHeld: readonly RunRange[];
}

export async function suspectsOfCheck(from: ReadFrom, failed: LineCheckRow, now: string): Promise<Suspects> {
  const packs = await suspectPacks(from, failed, now);
  const ranges = packs.ranges.map(({ runId, fromCount, toCount }) => ({ runId, fromCount, toCount }));
  const pallets = await suspectPallets(from, ranges);
  const scopes = [...new Set(ranges.map(({ runId }) => runId))].map((id) => ({ kind: 'packing-run', id }) as const);
  const ofShifts = await openHoldsOnKind(from, 'packing-shift');
  const open = [...(await openHolds(from, scopes)), ...ofShifts.filter(({ scopeId }) => scopeId === failed.lineId)];
  const timed = await timedPacks(from, open);
  const covers = (hold: HoldRow): readonly RunRange[] => shared(ranges, packsHeld(hold, timed));
  const holds = open.filter((hold) => covers(hold).length > 0);
  const certain = pallets.filter((pallet) => pallet.isCertain);
  return {
    ...packs,
    pallets,
    loosePackCount: packs.packCount - certain.reduce((sum, pallet) => sum + pallet.suspectPackCount, 0),
    holds,
    notHeld: without(ranges, holds.flatMap(covers)),
  };
}

async function suspectPallets(from: ReadFrom, ranges: readonly RunRange[]): Promise<readonly SuspectPallet[]> {
  if (ranges.length === 0) return [];
  const placed = groupBy(await palletsOfRanges(from, ranges), (row) => row.palletId);
  const rows = await palletsOf(from, [...placed.keys()]);
  const named = new Map<string, string>();
  const pallets: SuspectPallet[] = [];
  for (const { id, sscc, status, placeId, packCount } of rows) {
    const own = placed.get(id) ?? [];
    const isCertain = own.every((row) => row.isCertain);
    const whereabouts = placeId === null ? null : (named.get(placeId) ?? (await nameOf(from, status, placeId)));
    if (placeId !== null && whereabouts !== null) named.set(placeId, whereabouts);
    pallets.push({
      palletId: id,
      sscc,
      status,
      whereabouts,
      packCount,
      suspectPackCount: packsIn(united(own)),
      isCertain,
    });
  }
  return pallets;
}

async function nameOf(from: ReadFrom, status: PalletStatus, placeId: string): Promise<string> {
  if (status === 'in-store') return (await placeOf(from, placeId)).code;
  const delivery = await deliveryOf(from, placeId);
  return delivery.noteNumber ?? delivery.orderNumber;
}
