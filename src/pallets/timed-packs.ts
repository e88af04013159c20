import type { HoldPart, HoldRow } from '../disposition/standings.js';
import type { RunCounts } from '../packing/packing-run-rows.js';
import { packsOfLineBetween, packsOfRunBetween } from '../packing/packs-in-time.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** By hold: the packs of its shift or of its minutes, as counts say now. */
export type TimedPacks = ReadonlyMap<string, readonly RunCounts[]>;

type OnPacks = HoldPart & { readonly scopeKind: string; readonly scopeId: string };

export async function timedPacks(from: ReadFrom, holds: readonly HoldRow[]): Promise<TimedPacks> {
  const packs = new Map<string, readonly RunCounts[]>();
  for (const hold of holds) {
    if (hold.fromAt !== null && isOnCounts(hold)) packs.set(hold.id, await packsOfHold(from, hold));
  }
  return packs;
}

/** The packs that a hold on a run, a part of it, or a packing shift is on. */
export async function packsOfHold(from: ReadFrom, hold: OnPacks): Promise<readonly RunCounts[]> {
  const { scopeKind, scopeId, fromAt, untilAt } = hold;
  if (fromAt === null || untilAt === null) return [countedOf(hold)];
  const window = { fromAt, untilAt };
  return scopeKind === 'packing-shift'
    ? packsOfLineBetween(from, scopeId, window)
    : packsOfRunBetween(from, scopeId, window);
}

/** The same, where what has a time was read before. */
export function packsHeld(hold: HoldRow, timed: TimedPacks): readonly RunCounts[] {
  return timed.get(hold.id) ?? (hold.scopeKind === 'packing-run' ? [countedOf(hold)] : []);
}

/** Whether a hold is on packs by their runs' counts. */
export function isOnCounts({ scopeKind }: Pick<OnPacks, 'scopeKind'>): boolean {
  return scopeKind === 'packing-run' || scopeKind === 'packing-shift';
}

function countedOf({ scopeId, fromCount, toCount }: OnPacks): RunCounts {
  return { runId: scopeId, fromCount: fromCount ?? 0, toCount };
}
