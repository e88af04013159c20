import type { Cut, PreparedHopperPeriod } from './prepare-period.js';

/** Whether an exit belongs to the target: surely, perhaps (a printed minute with a doubtful clock), or not. */
export type Membership = 'in' | 'maybe' | 'out';

/** A target by its exits; an exit that is not named is out. */
export type Target = ReadonlyMap<string, Membership>;

/** A cut of the period, or neighbouring exits on the same side merged into one. */
export type Step =
  | { readonly kind: 'cut'; readonly cut: Cut }
  | { readonly kind: 'exits'; readonly isInTarget: boolean; readonly lowerGrams: number; readonly upperGrams: number };

/** The period as one target sees it. */
export interface TargetSteps {
  readonly steps: readonly Step[];
  /** For each cut of the period, where it stands among the steps. */
  readonly stepIndexByCut: readonly number[];
  /** Steps from here on cannot change the answer: no exit of the target and no ceiling follows. */
  readonly endIndex: number;
  /** The step after the target's last exit; 0 where it has none. */
  readonly targetEndIndex: number;
}

/**
 * The target of exits that surely belong to it.
 * @param exitIds none at all is a target of nothing
 * @example exitsIn(['pallet 12']) // Map { 'pallet 12' → 'in' }
 */
export function exitsIn(exitIds: Iterable<string>): Target {
  return new Map(Array.from(exitIds, (id) => [id, 'in'] as const));
}

/**
 * Where the target's exits stand in the period, in order, counting the doubtful ones or not.
 * @throws RangeError when an exit is not in the period
 * @example placeTarget(prepareHopperPeriod({ capacityGrams: null, events: [] }), new Map(), 'with-maybe') // []
 */
export function placeTarget(
  prepared: PreparedHopperPeriod,
  target: Target,
  doubt: 'with-maybe' | 'without-maybe',
): readonly number[] {
  const indexes: number[] = [];
  for (const [exitId, membership] of target) {
    const index = prepared.exitIndexById.get(exitId);
    if (index === undefined) throw new RangeError(`exit ${exitId} is not in the period`);
    if (membership === 'in' || (membership === 'maybe' && doubt === 'with-maybe')) indexes.push(index);
  }
  return indexes.sort((a, b) => a - b);
}

/**
 * Merges the exits between two cuts into runs inside and outside of the target. Only neighbours on the same side are
 * merged: then the result is the same to the gram also where masses have limits. (Merging across sides is exact for
 * masses without doubt only.)
 * @param targetIndexes event indexes of the target's exits, ascending
 * @example mergeExits(prepareHopperPeriod({ capacityGrams: null, events: [] }), []).steps // []
 */
export function mergeExits(prepared: PreparedHopperPeriod, targetIndexes: readonly number[]): TargetSteps {
  const { cuts, exitLowerGramsBefore: lower, exitUpperGramsBefore: upper } = prepared;
  const steps: Step[] = [];
  const stepIndexByCut: number[] = [];
  let endIndex = 0;
  let targetEndIndex = 0;
  const pushExits = (isInTarget: boolean, from: number, to: number): void => {
    const lowerGrams = (lower[to] ?? 0) - (lower[from] ?? 0);
    const upperGrams = (upper[to] ?? 0) - (upper[from] ?? 0);
    if (upperGrams > 0) steps.push({ kind: 'exits', isInTarget, lowerGrams, upperGrams });
    if (isInTarget) endIndex = targetEndIndex = steps.length;
  };
  let next = 0;
  const pushExitsUntil = (start: number, end: number): void => {
    let from = start;
    while (from < end) {
      let to = from;
      while (targetIndexes[next] === to && to < end) [next, to] = [next + 1, to + 1];
      const isInTarget = to > from;
      if (!isInTarget) to = Math.min(targetIndexes[next] ?? end, end);
      pushExits(isInTarget, from, to);
      from = to;
    }
  };
  let start = 0;
  for (const cut of cuts) {
    pushExitsUntil(start, cut.eventIndex);
    stepIndexByCut.push(steps.length);
    steps.push({ kind: 'cut', cut });
    if (cut.ceilingGrams !== Infinity) endIndex = steps.length;
    start = cut.eventIndex + 1;
  }
  pushExitsUntil(start, prepared.period.events.length);
  return { steps, stepIndexByCut, endIndex, targetEndIndex };
}
