import { assertRange } from './hopper-event.js';
import type { PreparedHopperPeriod } from './prepare-period.js';

/**
 * How much of an addition belongs to the group: all of it, or between two limits, both included. The addition's own
 * limits hold besides: the lower one is lowered to its lower mass, the upper one to its upper mass.
 */
export type Content = 'whole' | { readonly lowerGrams: number; readonly upperGrams: number };

/**
 * A group of bags by the additions that brought it in: a bag, a dryer shift's bags, all bags on hold. An addition that
 * is not named has nothing of it. A rework bin or a residue is known between limits; a bag that is *one of several
 * candidates* has `{ lowerGrams: 0, … }`.
 */
export type GroupContent = ReadonlyMap<string, Content>;

/** One addition's part of a group, placed in the period; `otherUpperGrams` is the most that it can hold besides. */
export interface GroupPart {
  readonly cutIndex: number;
  readonly lowerGrams: number;
  readonly upperGrams: number;
  readonly otherUpperGrams: number;
}

/**
 * The group of all that these additions brought in.
 * @param additionIds a bag tipped in two parts has two; none at all is a group of nothing
 * @example wholeAdditions(['bag 4711']) // Map { 'bag 4711' → 'whole' }
 */
export function wholeAdditions(additionIds: Iterable<string>): GroupContent {
  return new Map(Array.from(additionIds, (id) => [id, 'whole'] as const));
}

/**
 * The group's parts in the order in which they go into the hopper.
 * @throws RangeError when an addition is not in the period, or the content is no range of whole grams
 * @example placeGroup(prepareHopperPeriod({ capacityGrams: null, events: [] }), new Map()) // []
 */
export function placeGroup(prepared: PreparedHopperPeriod, group: GroupContent): readonly GroupPart[] {
  const parts = Array.from(group, ([additionId, content]) => placePart(prepared, additionId, content));
  return parts.sort((a, b) => a.cutIndex - b.cutIndex);
}

function placePart(prepared: PreparedHopperPeriod, additionId: string, content: Content): GroupPart {
  const cutIndex = prepared.cutIndexByAdditionId.get(additionId);
  const cut = cutIndex === undefined ? undefined : prepared.cuts[cutIndex];
  if (cutIndex === undefined || cut === undefined) throw new RangeError(`addition ${additionId} is not in the period`);
  // Of a bag that belongs to the group whole, nothing is something else, however heavy it was.
  if (content === 'whole') {
    return { cutIndex, lowerGrams: cut.lowerGrams, upperGrams: cut.upperGrams, otherUpperGrams: 0 };
  }
  assertRange(content.lowerGrams, content.upperGrams, additionId);
  const lowerGrams = Math.min(content.lowerGrams, cut.lowerGrams);
  const upperGrams = Math.min(content.upperGrams, cut.upperGrams);
  return { cutIndex, lowerGrams, upperGrams, otherUpperGrams: cut.upperGrams - lowerGrams };
}
