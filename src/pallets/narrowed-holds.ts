import { bagsOf } from '../drying/bulk-bags.js';
import { narrowingsOf, narrowsNow, type PartRow } from '../disposition/narrowings.js';
import { standingsOf, type HoldRow } from '../disposition/standings.js';
import { sourcesOfRanges } from '../hopper/hopper-links.js';
import { countsOf, filmRangesOfRuns, lotRangesOfRuns, rangesOfLot } from '../packing/packing-runs.js';
import type { RunCounts } from '../packing/packing-run-rows.js';
import { certainRange } from '../packing/ranges-in-time.js';
import { clipped, overlaps, shared, united, without, type RunRange } from '../packing/run-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { heldPeriodsIn, type PeriodReach } from './held-periods.js';
import { timedPacks } from './timed-packs.js';
import { followsSugar, groundOf, isNothing, isWithin, type AroundTarget, type HoldTarget } from './hold-ground.js';

/** A part that was taken out of a hold, as it stands now. */
export interface StandingPart extends PartRow {
  /** Of a lot or of minutes: the packs that are still out of the hold; none where more has come to them since. */
  readonly free: readonly RunRange[];
}

/** By hold: what was taken out of it and counts for the class it has now. */
export type StandingParts = ReadonlyMap<string, readonly StandingPart[]>;

/** `out`: taken out of a hold's reach; `again`: it was, but something has come to it since; null: never. */
export type Narrowed = 'out' | 'again' | null;

/** The parts of narrowed holds as they stand now. Nothing is read where no hold is narrowed. */
export async function standingParts(from: ReadFrom, holds: readonly HoldRow[]): Promise<StandingParts> {
  const narrowed = new Map(holds.filter(({ isNarrowed }) => isNarrowed).map((hold) => [hold.id, hold]));
  const parts = new Map<string, StandingPart[]>();
  for (const narrowing of await narrowingsOf(from, [...narrowed.keys()])) {
    const hold = narrowed.get(narrowing.holdId);
    if (hold === undefined || !narrowsNow(hold, narrowing)) continue;
    const own = parts.get(hold.id) ?? [];
    for (const part of narrowing.parts) own.push({ ...part, free: await freeOf(from, hold, part) });
    parts.set(hold.id, own);
  }
  return parts;
}

/** Whether a hold that would reach some packs was narrowed so that it does not. */
export function narrowedOf(
  hold: HoldRow,
  target: HoldTarget,
  known: AroundTarget & { readonly parts: StandingParts },
): Narrowed {
  const parts = known.parts.get(hold.id) ?? [];
  if (parts.length === 0) return null;
  const ground = groundOf(hold, target, known);
  const [palletId] = target.palletIds;
  const own = parts.filter(({ unitKind, unitId }) => unitKind === 'pallet' && unitId === palletId);
  if (own.some((part) => isWithin(ground, part.ground))) return 'out';
  const packs = followsSugar(hold) ? target.possible : ground.packs;
  const free = parts.flatMap((part) => part.free);
  if (packs.length > 0 && without(packs, free).length === 0) return 'out';
  const wasOut = parts.some(({ ground: { packs: then }, unitKind }) =>
    unitKind === 'pallet' ? false : then.some((one) => packs.some((range) => overlaps(one, range))),
  );
  return own.length > 0 || wasOut ? 'again' : null;
}

/** Packs of a lot, or of minutes, as counts say now: only what surely belongs to the minutes. */
export async function rangesOfPart(
  from: ReadFrom,
  { unitKind, unitId, fromAt, untilAt }: Pick<PartRow, 'unitKind' | 'unitId' | 'fromAt' | 'untilAt'>,
): Promise<readonly RunCounts[]> {
  if (unitKind === 'lot') return rangesOfLot(from, unitId);
  if (unitKind !== 'packing-run' || fromAt === null || untilAt === null) return [];
  const counts = await countsOf(from, [unitId]);
  const all = { runId: unitId, fromCount: 0, toCount: counts.at(-1)?.packCount ?? 0 };
  const sure = certainRange(all, counts, { fromAt, untilAt });
  return sure === null ? [] : [sure];
}

/** Packs as a target of their own, with what is known around them, for a hold. */
export async function packsAsTarget(
  from: ReadFrom,
  hold: HoldRow,
  ranges: readonly RunRange[],
): Promise<HoldTarget & AroundTarget> {
  const runIds = [...new Set(ranges.map(({ runId }) => runId))];
  const lots = await lotRangesOfRuns(from, runIds);
  const links = await sourcesOfRanges(from, ranges);
  const [heldPeriods] = await heldPeriodsIn(from, [{ ranges, links }]);
  const bags = await bagsOf(
    from,
    links.map(({ bagId }) => bagId),
  );
  return {
    palletIds: [],
    possible: united(ranges),
    contents: ranges.flatMap((range) =>
      lots.flatMap((lot) => {
        const part = clipped(range, lot);
        return part === null ? [] : [{ ...part, lotId: lot.lotId }];
      }),
    ),
    links,
    heldPeriods: heldPeriods ?? new Map<string, PeriodReach>(),
    film: await filmRangesOfRuns(from, runIds),
    timed: await timedPacks(from, [hold]),
    standings: await standingsOf(from, bags),
  };
}

/** Only packs that were there and still belong to the part; where a hold follows sugar, only while no more of it came. */
async function freeOf(from: ReadFrom, hold: HoldRow, part: PartRow): Promise<readonly RunRange[]> {
  if (part.unitKind === 'bulk-bag' || part.unitKind === 'pallet') return [];
  const free = shared(part.ground.packs, await rangesOfPart(from, part));
  if (free.length === 0 || !followsSugar(hold)) return free;
  const target = await packsAsTarget(from, hold, free);
  const { bags } = groundOf(hold, target, target);
  const now = { packs: [], bags };
  return isNothing(now) || isWithin(now, part.ground) ? free : [];
}
