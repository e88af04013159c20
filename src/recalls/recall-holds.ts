import { openHolds, type HoldRow, type HoldScope } from '../disposition/standings.js';
import { packsHeld, timedPacks, type TimedPacks } from '../pallets/timed-packs.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { reachOfScopes } from './recall-reach.js';
import { scopesOf, type RecallRow } from './recalls.js';

/** A hold that a recall proposes. */
export interface ProposedHold {
  readonly scope: HoldScope;
  /** For a part of a run: from this pack on, up to before `toCount`. */
  readonly fromCount: number | null;
  readonly toCount: number | null;
  /** The hold that covers just this already; null: none does. */
  readonly heldBy: string | null;
  readonly heldById: string | null;
}

/** The holds that would block what a recall covers: its bags and lots as such, else the packs of its runs. */
export async function proposedHolds(from: ReadFrom, recall: RecallRow): Promise<readonly ProposedHold[]> {
  const wanted: Wanted[] = [];
  const whole = { fromCount: null, toCount: null };
  for (const scope of await scopesOf(from, recall.id)) {
    if (scope.scopeKind === 'lot') wanted.push({ scope: { kind: 'lot', id: scope.scopeId }, ...whole });
    else {
      const reach = await reachOfScopes(from, recall.siteId, [scope], recall.sureness);
      wanted.push(...reach.bags.map(({ id }) => ({ scope: { kind: 'bulk-bag', id } as const, ...whole })));
      // A hold on a bag covers the packs that it may be in; without a bag the packs are held themselves.
      if (reach.bags.length > 0) continue;
      wanted.push(
        ...reach.ranges.map(({ runId, fromCount, toCount }) => {
          return { scope: { kind: 'packing-run', id: runId } as const, fromCount, toCount };
        }),
      );
    }
  }
  const held = await openHolds(
    from,
    wanted.map(({ scope }) => scope),
  );
  const timed = await timedPacks(from, held);
  return wanted.map((one) => {
    const hold = held.find((row) => covers(row, one, timed));
    return { ...one, heldBy: hold?.number ?? null, heldById: hold?.id ?? null };
  });
}

type Wanted = Omit<ProposedHold, 'heldBy' | 'heldById'>;

/** Of a run a hold covers what its counts say now, those of its minutes too; of anything else all of it. */
function covers(hold: HoldRow, { scope, fromCount, toCount }: Wanted, timed: TimedPacks): boolean {
  if (hold.scopeKind !== scope.kind || hold.scopeId !== scope.id) return false;
  if (hold.scopeKind !== 'packing-run') return true;
  const [from, to] = [fromCount ?? 0, toCount ?? Number.MAX_SAFE_INTEGER];
  return packsHeld(hold, timed).some((own) => own.fromCount <= from && (own.toCount === null || own.toCount >= to));
}
