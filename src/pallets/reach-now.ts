import type { PartRow } from '../disposition/narrowings.js';
import type { HoldRow } from '../disposition/standings.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groundOf, isNothing } from './hold-ground.js';
import { narrowedOf, type StandingPart } from './narrowed-holds.js';
import { readStandingFacts, targetOfPallet, type StandingFacts } from './standing-facts.js';

/** Whether a hold reaches a pallet: it does, does again after it was taken out, or is narrowed so that it does not. */
export type ReachNow = 'held' | 'again' | 'out';

/** How a hold reaches pallets now, or would if these parts were taken out of it as well. */
export async function reachNow(
  from: ReadFrom,
  hold: HoldRow,
  palletIds: readonly string[],
  further: readonly Omit<PartRow, 'id'>[] = [],
): Promise<ReadonlyMap<string, ReachNow>> {
  const known = withParts(await readStandingFacts(from, palletIds), hold, further);
  return new Map(
    [...known.pallets].map(([palletId, facts]) => {
      const target = targetOfPallet(palletId, facts);
      const narrowed = narrowedOf(hold, target, known);
      if (narrowed === 'out' || isNothing(groundOf(hold, target, known))) return [palletId, 'out'];
      return [palletId, narrowed ?? 'held'];
    }),
  );
}

function withParts(known: StandingFacts, hold: HoldRow, further: readonly Omit<PartRow, 'id'>[]): StandingFacts {
  if (further.length === 0) return known;
  const bags = new Set(further.flatMap(({ unitKind, unitId }) => (unitKind === 'bulk-bag' ? [unitId] : [])));
  const parts = further.map((part): StandingPart => ({ ...part, id: '', free: part.ground.packs }));
  const standings = [...known.standings].map(([bagId, standing]) => {
    const holds = bags.has(bagId) ? standing.holds.filter(({ id }) => id !== hold.id) : standing.holds;
    return [bagId, { ...standing, holds }] as const;
  });
  return {
    ...known,
    standings: new Map(standings),
    parts: new Map(known.parts).set(hold.id, [...(known.parts.get(hold.id) ?? []), ...parts]),
  };
}
