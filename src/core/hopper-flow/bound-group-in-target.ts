import { placeGroup, wholeAdditions, type GroupContent, type GroupPart } from './group-content.js';
import type { Contradiction, PreparedHopperPeriod } from './prepare-period.js';
import { passSixNumbers } from './six-number-pass.js';
import { mergeExits, placeTarget, type Target, type TargetSteps } from './target-steps.js';

/** Least and most grams of a group in a target, however the hopper flows. 0 ≤ least ≤ most, whole grams. */
export interface Bounds {
  readonly leastGrams: number;
  readonly mostGrams: number;
  /** Not null: the records cannot be true. Least is then 0, and most does not rest on levels; both are doubtful. */
  readonly contradiction: Contradiction | null;
}

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
  return bound(period, placeGroup(period, group), layOut(period, target));
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
  return groups.map((group) => bound(period, placeGroup(period, group), layout));
}

/**
 * The same for one group in several targets (where did this bag go?): the group is placed once.
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
  const parts = placeGroup(period, group);
  return targets.map((target) => bound(period, parts, layOut(period, target)));
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
  return Array.from(period.cutIndexByAdditionId.keys(), (additionId) => ({
    additionId,
    ...bound(period, placeGroup(period, wholeAdditions([additionId])), layout),
  }));
}

interface TargetLayout {
  /** Only what surely belongs to the target. */
  readonly certain: TargetSteps;
  /** All that may belong to it; the same object where there is no doubt. */
  readonly possible: TargetSteps;
}

function layOut(period: PreparedHopperPeriod, target: Target): TargetLayout {
  const possible = placeTarget(period, target, 'with-maybe');
  const certain = placeTarget(period, target, 'without-maybe');
  const possibleSteps = mergeExits(period, possible);
  const certainSteps = certain.length === possible.length ? possibleSteps : mergeExits(period, certain);
  return { certain: certainSteps, possible: possibleSteps };
}

function bound(period: PreparedHopperPeriod, parts: readonly GroupPart[], layout: TargetLayout): Bounds {
  if (period.contradiction) return boundDisbelieved(parts, layout, period.contradiction);
  const wide = passSixNumbers(layout.possible, parts, 'believed');
  const narrow = layout.certain === layout.possible ? wide : passSixNumbers(layout.certain, parts, 'believed');
  for (const [pass, { steps }] of [
    [wide, layout.possible],
    [narrow, layout.certain],
  ] as const) {
    if (pass.contradictedByGrams === 0) continue;
    const contradiction = contradictionAt(period, steps, pass.contradictedAtStep, pass.contradictedByGrams);
    return boundDisbelieved(parts, layout, contradiction);
  }
  return { leastGrams: narrow.leastGrams, mostGrams: wide.mostGrams, contradiction: null };
}

function boundDisbelieved(parts: readonly GroupPart[], layout: TargetLayout, contradiction: Contradiction): Bounds {
  return { leastGrams: 0, mostGrams: passSixNumbers(layout.possible, parts, 'disbelieved').mostGrams, contradiction };
}

/**
 * Where exits were merged, the next cut (or the period's last event) is the first place that is known to be too late.
 */
function contradictionAt(
  { period }: PreparedHopperPeriod,
  steps: TargetSteps['steps'],
  stepIndex: number,
  byGrams: number,
): Contradiction {
  const next = steps.slice(stepIndex).find((step) => step.kind === 'cut');
  const eventIndex = next?.kind === 'cut' ? next.cut.eventIndex : period.events.length - 1;
  return { eventIndex, eventId: period.events[eventIndex]?.id ?? '', byGrams };
}
