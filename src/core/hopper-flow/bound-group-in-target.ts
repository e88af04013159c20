import { followEachElsewhere, followElsewhere, followUntil } from './before-target.js';
import { boundLayout, layOut, tightestWhilePouring, type Bounds } from './bound-layout.js';
import { placeGroup, type GroupContent } from './group-content.js';
import type { PreparedHopperPeriod } from './prepare-period.js';
import type { Target } from './target-steps.js';

/** The bounds of one addition on its own. */
export interface AdditionBounds extends Bounds {
  readonly additionId: string;
}

/**
 * The least and the most of a group of bags that can be in a set of exits, by the six-number pass: exact where masses
 * are exact, and true (never too narrow) for every true mass within the limits. Exits that are *maybe* in the target
 * count as in for most and as out for least. Bounds of several groups in one target do not add up.
 *
 * The period must be in an order that can only widen (`orderForBounds`). Where the records contradict each other,
 * anywhere in the period, nothing is sure: least is 0, most is what can have been poured and have left in this order,
 * whatever the levels say.
 * @returns 0 and 0 for an empty group, an empty target, and bags that went in after the target's last exit
 * @throws RangeError when an addition or exit is not in the period, or a content is no range within its addition
 * @see hopper-bounds.md (compared there with linear programmes; vectors `checks/quality/hopper_bounds.json`)
 * @example
 * const period = prepareHopperPeriod({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'older', mass: exactMass(1_000_000) },
 *   { kind: 'addition', id: 'bag', mass: exactMass(996_000) },
 *   { kind: 'exit', id: 'lot A', mass: exactMass(300_000) },
 *   { kind: 'addition', id: 'next', mass: exactMass(304_000) },
 *   { kind: 'exit', id: 'lot B', mass: exactMass(2_000_000) } ] });
 * boundGroupInTarget(period, wholeAdditions(['bag']), exitsIn(['lot B']))
 * // { leastGrams: 696_000, mostGrams: 996_000, contradiction: null }
 */
export function boundGroupInTarget(period: PreparedHopperPeriod, group: GroupContent, target: Target): Bounds {
  const [bounds] = boundGroupsInTarget(period, [group], target);
  if (bounds === undefined) throw new RangeError('one group has one answer');
  return bounds;
}

/**
 * The same for several groups in one target (which dryer shifts, which bags are in this pallet?): the target is laid
 * out once.
 * @returns one answer for each group, in the same order
 * @throws RangeError as `boundGroupInTarget`
 * @example boundGroupsInTarget(period, [wholeAdditions(['bag']), wholeAdditions([])], exitsIn(['lot A']))
 *   .map(({ mostGrams }) => mostGrams) // [300_000, 0]
 */
export function boundGroupsInTarget(
  period: PreparedHopperPeriod,
  groups: readonly GroupContent[],
  target: Target,
): readonly Bounds[] {
  const layout = layOut(period, target);
  const each = followedOnce(period);
  return groups.map((group) => {
    const parts = placeGroup(period, group);
    const [only] = parts;
    const before = (startIndex: number) =>
      only !== undefined && parts.length === 1 ? each(startIndex)(only) : followUntil(period, parts, startIndex);
    return boundLayout({ period, parts, layout, before, tightestAfter: tightestWhilePouring(period, parts) });
  });
}

/** What single additions are followed by, once for each first exit: one with the target's doubtful exits, one without. */
function followedOnce(period: PreparedHopperPeriod): (startIndex: number) => ReturnType<typeof followEachElsewhere> {
  const known = new Map<number, ReturnType<typeof followEachElsewhere>>();
  return (startIndex) => {
    const each = known.get(startIndex) ?? followEachElsewhere(period, startIndex);
    known.set(startIndex, each);
    return each;
  };
}

/**
 * The same for one group in several targets (where did this bag go?): the group is placed and followed once.
 * @returns one answer for each target, in the same order
 * @throws RangeError as `boundGroupInTarget`
 * @example boundGroupInTargets(period, wholeAdditions(['bag']), [exitsIn(['lot A']), exitsIn(['lot B'])])
 *   .map(({ leastGrams }) => leastGrams) // [0, 696_000]
 */
export function boundGroupInTargets(
  period: PreparedHopperPeriod,
  group: GroupContent,
  targets: readonly Target[],
): readonly Bounds[] {
  return targets.map(boundsOfGroup(period, group));
}

/**
 * The same for targets that are not known beforehand, one after the other.
 * @returns the answer for a target; throws as `boundGroupInTarget`
 * @throws RangeError as `boundGroupInTarget`
 * @example boundsOfGroup(period, wholeAdditions(['bag']))(exitsIn(['lot B'])).leastGrams // 696_000
 */
export function boundsOfGroup(period: PreparedHopperPeriod, group: GroupContent): (target: Target) => Bounds {
  const parts = placeGroup(period, group);
  const before = followElsewhere(period, parts, period.period.events.length);
  const tightestAfter = tightestWhilePouring(period, parts);
  return (target) => boundLayout({ period, parts, layout: layOut(period, target), before, tightestAfter });
}

/**
 * The same for every addition of the period, each on its own, in one target. Each pass starts at its tip and ends when
 * it can no longer be inside.
 * @returns one answer for each addition, in the period's order, those that are ruled out (most 0) included
 * @throws RangeError when an exit is not in the period
 * @example boundEveryAdditionInTarget(period, exitsIn(['lot A'])).map(({ additionId, mostGrams }) => [additionId,
 * mostGrams]) // [['older', 300_000], ['bag', 300_000], ['next', 0]]
 */
export function boundEveryAdditionInTarget(period: PreparedHopperPeriod, target: Target): readonly AdditionBounds[] {
  const layout = layOut(period, target);
  const each = followedOnce(period);
  // What a single addition holds is not poured later; nothing of it is asked for after it.
  const tightestAfter = () => -Infinity;
  return Array.from(period.cutIndexByAdditionId, ([additionId, cutIndex]) => {
    const { lowerGrams = 0, upperGrams = 0 } = period.cuts[cutIndex] ?? {};
    const part = { cutIndex, lowerGrams, upperGrams, otherUpperGrams: 0 };
    const before = (startIndex: number) => each(startIndex)(part);
    return { additionId, ...boundLayout({ period, parts: [part], layout, before, tightestAfter }) };
  });
}
