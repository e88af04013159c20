import type { HoldScope } from '../disposition/standings.js';
import { reachOfBags } from '../hopper/group-reach.js';
import { periodsOfBag, periodOf } from '../hopper/hopper-period-rows.js';
import { readHopperPeriod } from '../hopper/hopper-periods.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { RunRange } from '../packing/run-ranges.js';
import { palletsOfRanges } from '../pallets/pallet-list.js';
import { palletLines } from './pallet-lines.js';
import { readThread } from './read-thread.js';
import { subjectById } from './subject-by-id.js';
import { threadKinds, type PalletLine } from './thread.js';

/** What a hold would cover now, before it is placed. */
export interface HoldReach {
  /** A safety hold covers all of these. */
  readonly possible: readonly PalletLine[];
  /** A quality hold covers these: what is sure and likely. */
  readonly sureAndLikely: readonly PalletLine[];
  /** Of the possible ones: already gone, whose customers must be told. */
  readonly away: readonly PalletLine[];
  readonly packCount: number;
}

/** The pallets that a hold on this scope would cover, wherever they are now. */
export async function reachOfHold(
  from: ReadFrom,
  siteId: string,
  scope: HoldScope & { readonly range: RunRange | null },
  now: string,
): Promise<HoldReach> {
  const possible = await coveredPallets(from, siteId, scope, now);
  return {
    possible,
    sureAndLikely: possible.filter((pallet) => pallet.word !== 'possible'),
    away: possible.filter((pallet) => pallet.status === 'dispatched'),
    packCount: possible.reduce((sum, pallet) => sum + pallet.packCount, 0),
  };
}

async function coveredPallets(
  from: ReadFrom,
  siteId: string,
  scope: HoldScope & { readonly range: RunRange | null },
  now: string,
): Promise<readonly PalletLine[]> {
  if (scope.kind === 'dryer-run') return palletsOfBags(from, await bagsOfDryerRun(from, scope.id));
  if (scope.kind === 'hopper-period') return palletsOfPeriod(from, scope.id);
  const kind = threadKinds.find((one) => one === scope.kind);
  if (kind === undefined) throw new RangeError(`no thread of a ${scope.kind}`);
  const thread = await readThread(from, siteId, await subjectById(from, kind, scope.id), now);
  if (kind === 'bulk-bag') return thread.pallets;
  const own = thread.pallets.filter((pallet) => pallet.isSubject);
  if (scope.range === null) return own;
  // A part of a run covers the pallets that packs of that part stand on, or may.
  const inPart = new Set((await palletsOfRanges(from, [scope.range])).map(({ palletId }) => palletId));
  return own.filter(({ palletId }) => inPart.has(palletId));
}

async function palletsOfBags(from: ReadFrom, bagIds: readonly string[]): Promise<PalletLine[]> {
  const periodIds = new Set<string>();
  for (const bagId of bagIds) for (const periodId of await periodsOfBag(from, bagId)) periodIds.add(periodId);
  return palletLines(from, await reachOfBags(from, bagIds, [...periodIds]), []);
}

async function palletsOfPeriod(from: ReadFrom, periodId: string): Promise<PalletLine[]> {
  await periodOf(from, periodId);
  const { additions } = await readHopperPeriod(from, periodId);
  const bagIds = [...new Set(additions.flatMap((addition) => addition.bagIds))];
  return palletLines(from, await reachOfBags(from, bagIds, [periodId]), []);
}

async function bagsOfDryerRun(from: ReadFrom, dryerRunId: string): Promise<readonly string[]> {
  const rows = await from.sql<{ id: string }>`
    SELECT "id" FROM "bulk_bag" WHERE "dryer_run_id" = ${dryerRunId} AND "voided_by" IS NULL ORDER BY "id"`;
  return rows.map((row) => row.id);
}
