import { bagsTakenOut } from '../disposition/narrowings.js';
import type { HoldPart, HoldRow, HoldScope } from '../disposition/standings.js';
import { partOf } from '../disposition/hold-part.js';
import { bagsFilledBetween, bagsOf, type BagRow } from '../drying/bulk-bags.js';
import { reachOfPeriod, reachOfTips } from '../hopper/group-reach.js';
import { periodOf } from '../hopper/hopper-period-rows.js';
import { filmRanges, rangesOfLot } from '../packing/packing-runs.js';
import { spreadOf, spreadsOf } from '../pallets/pallet-spread.js';
import { reachNow } from '../pallets/reach-now.js';
import { packsOfHold } from '../pallets/timed-packs.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { palletLines, palletLinesOfPacks } from './pallet-lines.js';
import type { PalletLine } from './thread.js';

/** A bag that a hold holds as it is, whole or opened. */
export interface ReachedBag {
  readonly bag: BagRow;
  /** Quality took it out of the hold. */
  readonly isOut: boolean;
}

/** What a hold covers now, or would before it is placed. */
export interface HoldReach {
  /** A safety hold covers all of these. */
  readonly possible: readonly PalletLine[];
  /** A quality hold covers these: what is sure and likely. */
  readonly sureAndLikely: readonly PalletLine[];
  /** Of the possible ones: already gone, whose customers must be told. */
  readonly away: readonly PalletLine[];
  readonly packCount: number;
  /** Pallets that quality took out of the hold. */
  readonly takenOut: readonly PalletLine[];
  /** Of the possible ones: taken out once, but something has come to them since. */
  readonly againIds: readonly string[];
  /** Bags that it holds and that are not empty. */
  readonly bags: readonly ReachedBag[];
}

export type ReachScope = HoldScope & HoldPart;

/** The pallets that a hold on this scope covers, wherever they are now; narrowed, where the hold is there already. */
export async function reachOfHold(from: ReadFrom, scope: ReachScope, hold: HoldRow | null = null): Promise<HoldReach> {
  const all = await coveredPallets(from, scope);
  const bags = await bagsOf(from, await bagsOfScope(from, scope));
  const isNarrowed = hold?.isNarrowed === true;
  const ids = all.map(({ palletId }) => palletId);
  const now = isNarrowed ? await reachNow(from, hold, ids) : new Map<string, string>();
  const outBags = hold === null ? undefined : (await bagsTakenOut(from, [hold])).get(hold.id);
  const possible = all.filter(({ palletId }) => now.get(palletId) !== 'out');
  return {
    possible,
    sureAndLikely: possible.filter((pallet) => pallet.word !== 'possible'),
    away: possible.filter((pallet) => pallet.status === 'dispatched'),
    packCount: possible.reduce((sum, pallet) => sum + pallet.packCount, 0),
    takenOut: all.filter(({ palletId }) => now.get(palletId) === 'out'),
    againIds: ids.filter((id) => now.get(id) === 'again'),
    bags: bags.filter(({ status }) => status !== 'empty').map((bag) => ({ bag, isOut: outBags?.has(bag.id) === true })),
  };
}

/** Packs are found by their counts alone; only a hold on sugar has to be followed through the hopper. */
async function coveredPallets(from: ReadFrom, scope: ReachScope): Promise<readonly PalletLine[]> {
  const { kind, id } = scope;
  switch (kind) {
    case 'bulk-bag':
    case 'dryer-run':
    case 'dryer-shift':
      return palletsOfBags(from, await bagsOfScope(from, scope));
    case 'hopper-period':
      return palletsOfPeriod(from, id);
    case 'lot':
      return palletLinesOfPacks(from, await rangesOfLot(from, id));
    case 'film-lot':
      return palletLinesOfPacks(from, await filmRanges(from, id));
    case 'packing-run':
    case 'packing-shift':
      return palletLinesOfPacks(from, await packsOfHold(from, { ...scope, scopeKind: kind, scopeId: id }));
    case 'pallet':
      return palletAndDescendants(from, id);
  }
}

/** After a split its packs may be on others that did not come of it: the hold is on the pallet, not on its packs. */
async function palletAndDescendants(from: ReadFrom, palletId: string): Promise<readonly PalletLine[]> {
  const lines = await palletLinesOfPacks(from, (await spreadOf(from, palletId)).possible);
  const spreads = await spreadsOf(
    from,
    lines.map((line) => line.palletId),
  );
  return lines.filter((line) => {
    return line.palletId === palletId || spreads.get(line.palletId)?.ancestorIds.includes(palletId) === true;
  });
}

async function bagsOfScope(from: ReadFrom, { kind, id, fromAt, untilAt }: ReachScope): Promise<readonly string[]> {
  if (kind === 'bulk-bag') return [id];
  if (kind === 'dryer-shift') {
    return (await bagsFilledBetween(from, id, fromAt ?? '', untilAt ?? '')).map((bag) => bag.id);
  }
  return kind === 'dryer-run' ? bagsOfDryerRun(from, id) : [];
}

async function palletsOfBags(from: ReadFrom, bagIds: readonly string[]): Promise<PalletLine[]> {
  return palletLines(from, await reachOfTips(from, bagIds), []);
}

async function palletsOfPeriod(from: ReadFrom, periodId: string): Promise<PalletLine[]> {
  await periodOf(from, periodId);
  return palletLines(from, await reachOfPeriod(from, periodId), []);
}

export async function bagsOfDryerRun(from: ReadFrom, dryerRunId: string): Promise<readonly string[]> {
  const rows = await from.sql<{ id: string }>`
    SELECT "id" FROM "bulk_bag" WHERE "dryer_run_id" = ${dryerRunId} AND "voided_by" IS NULL ORDER BY "id"`;
  return rows.map((row) => row.id);
}

/** What a hold that is there covers, as its reach is asked for. */
export function scopeOfRow(hold: HoldPart & Pick<HoldRow, 'scopeKind' | 'scopeId'>): ReachScope {
  return { kind: hold.scopeKind, id: hold.scopeId, ...partOf(hold) };
}
