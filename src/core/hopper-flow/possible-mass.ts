import { boundGroupInTargets } from './bound-group-in-target.js';
import { placeGroup, type GroupContent } from './group-content.js';
import type { PreparedHopperPeriod } from './prepare-period.js';
import { exitsIn } from './target-steps.js';

/**
 * The recorded grams of all exits of a period that may hold something of a group: what would have to be recalled if the
 * group were bad. Exits before its first addition cannot hold it; after that all may, until it cannot be inside any more. By
 * the bounds themselves, so never more than they allow and never less.
 * @param isCounted which exits count: packs, say, and not what was thrown away; all where left out
 * @returns whole grams, 0 for a group of nothing
 * @throws RangeError when an addition is not in the period
 * @example
 * const period = prepareHopperPeriod({ capacityGrams: null, events: [
 *   { kind: 'exit', id: 'early', mass: exactMass(0) },
 *   { kind: 'addition', id: 'bag', mass: exactMass(1000) },
 *   { kind: 'exit', id: 'packs', mass: exactMass(700) } ] });
 * possibleMass(period, wholeAdditions(['bag'])) // 700
 */
export function possibleMass(
  prepared: PreparedHopperPeriod,
  group: GroupContent,
  isCounted: (exitId: string) => boolean = () => true,
): number {
  const [first] = placeGroup(prepared, group);
  const cut = first === undefined ? undefined : prepared.cuts[first.cutIndex];
  if (cut === undefined) return 0;
  const exits = prepared.period.events
    .slice(cut.eventIndex + 1)
    .flatMap((event) => (event.kind === 'exit' ? [event] : []));
  const isPossibleFrom = (place: number): boolean => {
    const target = exitsIn(exits.slice(place).map(({ id }) => id));
    return (boundGroupInTargets(prepared, group, [target])[0]?.mostGrams ?? 0) > 0;
  };
  const end = endOfPossible(exits.length, isPossibleFrom);
  return exits.slice(0, end).reduce((sum, { id, mass }) => (isCounted(id) ? sum + mass.grams : sum), 0);
}

/** What is possible from some place on is possible from each place before it; mostly it is so to the very end. */
function endOfPossible(count: number, isPossibleFrom: (place: number) => boolean): number {
  if (count === 0 || isPossibleFrom(count - 1)) return count;
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (isPossibleFrom(middle)) low = middle + 1;
    else high = middle;
  }
  return low;
}
