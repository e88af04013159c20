import { deliveryOf } from '../dispatch/deliveries.js';
import { openHolds, openHoldsOnKind, type HoldRow } from '../disposition/standings.js';
import { meanNetsOf } from '../fill-weight/mean-nets.js';
import type { LineCheckRow } from '../line-checks/line-checks.js';
import { suspectPacks, type SuspectPacks } from '../line-checks/suspect-packs.js';
import { packsIn, shared, united, without, type RunRange } from '../packing/run-ranges.js';
import { palletsOf, palletsOfRanges } from '../pallets/pallet-list.js';
import { packsHeld, timedPacks } from '../pallets/timed-packs.js';
import type { PalletStatus } from '../pallets/pallet-rows.js';
import { placeOf } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { packsByPlace, placeOfPallet, type PacksAtPlace, type PlacedPacks } from './suspect-places.js';

/** A pallet that holds suspect packs, or may, and where it is. */
export interface SuspectPallet {
  readonly palletId: string;
  readonly sscc: string;
  readonly status: PalletStatus;
  readonly place: PlacedPacks['place'];
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
  /** All of it by where it is: the packs of the places add up to it. */
  readonly places: readonly PacksAtPlace[];
  /** What nobody holds yet, likewise. */
  readonly placesNotHeld: readonly PacksAtPlace[];
  /** Some of it was never weighed: the nominal quantity stands for its mean. */
  readonly hasAssumed: boolean;
  /** The open holds that cover some of it. */
  readonly holds: readonly HoldRow[];
  readonly notHeld: readonly RunRange[];
}

export async function suspectsOfCheck(from: ReadFrom, failed: LineCheckRow, now: string): Promise<Suspects> {
  const packs = await suspectPacks(from, failed, now);
  const ranges = packs.ranges.map(({ runId, fromCount, toCount }) => ({ runId, fromCount, toCount }));
  const placed = await suspectPallets(from, ranges);
  const runIds = [...new Set(ranges.map(({ runId }) => runId))];
  const { holds, notHeld } = await heldOf(from, failed, ranges);
  const means = await meanNetsOf(from, runIds);
  const meanMilligrams = new Map([...means].map(([runId, mean]) => [runId, mean.meanMilligrams]));
  const onPallets = placed.map(({ pallet, ranges: own }) => ({ ...pallet, ranges: own }));
  const places = packsByPlace(ranges, onPallets, meanMilligrams);
  return {
    ...packs,
    pallets: placed.map(({ pallet }) => pallet),
    loosePackCount: places.find(({ place }) => place === 'loose')?.packCount ?? 0,
    places,
    placesNotHeld: packsByPlace(notHeld, onPallets, meanMilligrams),
    hasAssumed: [...means.values()].some(({ basis }) => basis === 'assumed'),
    ...{ holds, notHeld },
  };
}

async function heldOf(
  from: ReadFrom,
  failed: LineCheckRow,
  ranges: readonly RunRange[],
): Promise<Pick<Suspects, 'holds' | 'notHeld'>> {
  const scopes = [...new Set(ranges.map(({ runId }) => runId))].map((id) => ({ kind: 'packing-run', id }) as const);
  const ofShifts = await openHoldsOnKind(from, 'packing-shift');
  const open = [...(await openHolds(from, scopes)), ...ofShifts.filter(({ scopeId }) => scopeId === failed.lineId)];
  const timed = await timedPacks(from, open);
  const covers = (hold: HoldRow): readonly RunRange[] => shared(ranges, packsHeld(hold, timed));
  const holds = open.filter((hold) => covers(hold).length > 0);
  return { holds, notHeld: without(ranges, holds.flatMap(covers)) };
}

interface PlacedPallet {
  readonly pallet: SuspectPallet;
  readonly ranges: readonly RunRange[];
}

async function suspectPallets(from: ReadFrom, ranges: readonly RunRange[]): Promise<readonly PlacedPallet[]> {
  if (ranges.length === 0) return [];
  const placed = groupBy(await palletsOfRanges(from, ranges), (row) => row.palletId);
  const rows = await palletsOf(from, [...placed.keys()]);
  const found = new Map<string, Whereabouts>();
  const pallets: PlacedPallet[] = [];
  for (const { id, sscc, status, placeId, packCount } of rows) {
    const own = placed.get(id) ?? [];
    const isCertain = own.every((row) => row.isCertain);
    const key = `${status} ${placeId ?? ''}`;
    const at = found.get(key) ?? (await whereaboutsOf(from, status, placeId));
    found.set(key, at);
    const units = united(own);
    const pallet = { palletId: id, sscc, status, ...at, packCount, suspectPackCount: packsIn(units), isCertain };
    pallets.push({ pallet, ranges: units });
  }
  return pallets;
}

type Whereabouts = Pick<SuspectPallet, 'place' | 'whereabouts'>;

async function whereaboutsOf(from: ReadFrom, status: PalletStatus, placeId: string | null): Promise<Whereabouts> {
  if (placeId === null) return { place: placeOfPallet(status, null), whereabouts: null };
  if (status === 'loaded' || status === 'dispatched') {
    const delivery = await deliveryOf(from, placeId);
    return { place: placeOfPallet(status, null), whereabouts: delivery.noteNumber ?? delivery.orderNumber };
  }
  const { code, kind } = await placeOf(from, placeId);
  return { place: placeOfPallet(status, kind), whereabouts: code };
}
