import { packsIn, shared, united, without, type RunRange } from '../packing/run-ranges.js';
import type { PalletStatus } from '../pallets/pallet-rows.js';

/** Where suspect packs are. What came back or was destroyed is apart from what is away. */
export const suspectPlaces = [
  ...(['away', 'on-vehicle', 'on-dock', 'in-store', 'came-back', 'destroyed'] as const),
  ...(['split', 'loose'] as const),
] as const;
export type SuspectPlace = (typeof suspectPlaces)[number];

/** Suspect packs at one place. */
export interface PacksAtPlace {
  readonly place: SuspectPlace;
  readonly packCount: number;
  /** Packs times the mean net of their run. */
  readonly milligrams: number;
}

/** The packs of a pallet, by their runs' counts. */
export interface PlacedPacks {
  readonly place: SuspectPlace;
  /** False: after a split nobody knows whether it holds any of them. */
  readonly isCertain: boolean;
  readonly ranges: readonly RunRange[];
}

/**
 * Packs by where they are, each counted once, so that the places add up to all of them; places without a pack are left
 * out. What is on pallets that came of a split is at their place where all of them are at one, else at `split`: on
 * one of them, nobody knows which. What is on no pallet is `loose`: on belts and tables, on the pallet that is being
 * built, or removed.
 */
export function packsByPlace(
  ranges: readonly RunRange[],
  pallets: readonly PlacedPacks[],
  meanMilligrams: ReadonlyMap<string, number>,
): readonly PacksAtPlace[] {
  const uncertain = [...new Set(pallets.filter(({ isCertain }) => !isCertain).map(({ place }) => place))];
  const [only, ...others] = uncertain;
  const ofSplit: SuspectPlace = only === undefined || others.length > 0 ? 'split' : only;
  const taken: PacksAtPlace[] = [];
  let left = ranges;
  for (const isCertain of [true, false]) {
    for (const place of suspectPlaces) {
      const there = pallets.filter((one) => one.isCertain === isCertain && one.place === place);
      const packs = shared(left, united(there.flatMap((one) => one.ranges)));
      left = without(left, packs);
      taken.push(atPlace(isCertain ? place : ofSplit, packs, meanMilligrams));
    }
  }
  taken.push(atPlace('loose', left, meanMilligrams));
  return suspectPlaces.flatMap((place) => joined(taken.filter((one) => one.place === place)));
}

/** The place of a pallet, by its state and the kind of the place that it stands at. */
export function placeOfPallet(status: PalletStatus, placeKind: string | null): SuspectPlace {
  if (status === 'dispatched') return 'away';
  if (status === 'loaded') return 'on-vehicle';
  if (status === 'returned') return 'came-back';
  if (status === 'destroyed') return 'destroyed';
  return placeKind === 'dock' ? 'on-dock' : 'in-store';
}

function atPlace(
  place: SuspectPlace,
  ranges: readonly RunRange[],
  meanMilligrams: ReadonlyMap<string, number>,
): PacksAtPlace {
  const milligrams = ranges.reduce((sum, range) => sum + packsIn([range]) * (meanMilligrams.get(range.runId) ?? 0), 0);
  return { place, packCount: packsIn(ranges), milligrams };
}

function joined(parts: readonly PacksAtPlace[]): readonly PacksAtPlace[] {
  const [first] = parts;
  const packCount = parts.reduce((sum, part) => sum + part.packCount, 0);
  if (first === undefined || packCount === 0) return [];
  return [{ ...first, packCount, milligrams: parts.reduce((sum, part) => sum + part.milligrams, 0) }];
}
