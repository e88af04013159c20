import type { BagGround } from '../disposition/narrowings.js';
import { openHoldsOnKind } from '../disposition/standings.js';
import { reachOfPeriod, type ReachTarget } from '../hopper/group-reach.js';
import type { LinkWord, SourceLink } from '../hopper/hopper-links.js';
import { periodsInto } from '../hopper/periods-into.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** How what was in a held hopper period reaches some packs, drawn from it or from a later one. */
export interface PeriodReach {
  readonly word: LinkWord;
  /** The bags of that period by which it does, each through the period that the packs were drawn from. */
  readonly bags: readonly BagGround[];
}

/** Packs with the bags that may be in them. */
export interface LinkedTarget extends ReachTarget {
  readonly links: readonly SourceLink[];
}

/**
 * The hopper periods on hold that reach each target, by the same computation that shows a hold's reach: all that was in
 * the period, on through residues and rework until the thread is cut. Only periods before the packs are looked at.
 */
export async function heldPeriodsIn(
  from: ReadFrom,
  targets: readonly LinkedTarget[],
): Promise<readonly ReadonlyMap<string, PeriodReach>[]> {
  const found = targets.map(() => new Map<string, PeriodReach>());
  const held = new Set((await openHoldsOnKind(from, 'hopper-period')).map(({ scopeId }) => scopeId));
  if (held.size === 0) return found;
  const before = await periodsInto(
    from,
    targets.flatMap(({ ranges }) => ranges.map(({ runId }) => runId)),
  );
  for (const periodId of held) {
    if (!before.has(periodId)) continue;
    const reach = await reachOfPeriod(from, periodId);
    const [bagIds, periodIds] = [new Set(reach.bagIds), new Set(reach.periodIds)];
    const bounds = await reach.boundIn(targets);
    targets.forEach(({ links }, place) => {
      const word = bounds[place]?.word ?? 'ruled-out';
      if (word === 'ruled-out') return;
      const own = links.filter((link) => bagIds.has(link.bagId) && periodIds.has(link.periodId));
      found[place]?.set(periodId, { word, bags: own.map(toGround) });
    });
  }
  return found;
}

export function toGround({ bagId, periodId, mostGrams, word }: SourceLink): BagGround {
  return { bagId, periodId, mostGrams, word };
}
