import type { Cut, PreparedHopperPeriod } from './prepare-period.js';

/** Whether an exit belongs to the target: surely, perhaps (a printed minute with a doubtful clock), or not. */
export type Membership = 'in' | 'maybe' | 'out';

/** A target by its exits; an exit that is not named is out. */
export type Target = ReadonlyMap<string, Membership>;

/** A cut of the period, or neighbouring exits on the same side merged into one. */
export type Step =
  | { readonly kind: 'cut'; readonly cutIndex: number; readonly cut: Cut }
  | { readonly kind: 'exits'; readonly isInTarget: boolean; readonly lowerGrams: number; readonly upperGrams: number };

/** The period as one target sees it: what happens from its first exit to its last. */
export interface TargetSteps {
  readonly steps: readonly Step[];
  /** Event index of the target's first exit, and of the event after its last; both 0 where it has none. */
  readonly startIndex: number;
  readonly endIndex: number;
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
 * merged: then the result is the same to the gram also where masses have limits. (Merging across sides would be exact
 * for masses without doubt only.)
 * @param targetIndexes event indexes of the target's exits, ascending
 * @example mergeExits(prepareHopperPeriod({ capacityGrams: null, events: [] }), []).steps // []
 */
export function mergeExits(prepared: PreparedHopperPeriod, targetIndexes: readonly number[]): TargetSteps {
  const startIndex = targetIndexes[0] ?? 0;
  const endIndex = (targetIndexes.at(-1) ?? -1) + 1;
  const steps: Step[] = [];
  const runs = new RunsOfExits(prepared, targetIndexes, steps);
  let from = startIndex;
  for (let cutIndex = prepared.cutCountBefore[startIndex] ?? 0; ; cutIndex += 1) {
    const cut = prepared.cuts[cutIndex];
    runs.push(from, Math.min(cut?.eventIndex ?? endIndex, endIndex));
    if (cut === undefined || cut.eventIndex >= endIndex) return { steps, startIndex, endIndex };
    steps.push({ kind: 'cut', cutIndex, cut });
    from = cut.eventIndex + 1;
  }
}

class RunsOfExits {
  private next = 0;

  constructor(
    private readonly prepared: PreparedHopperPeriod,
    private readonly targetIndexes: readonly number[],
    private readonly steps: Step[],
  ) {}

  /** Appends the exits of the events from `from` to before `to`, none of which is a cut. */
  push(from: number, to: number): void {
    let start = from;
    while (start < to) {
      const first = this.targetIndexes[this.next] ?? to;
      const isInTarget = first === start;
      const end = isInTarget ? this.endOfTargetRun(start, to) : Math.min(first, to);
      this.steps.push({ kind: 'exits', isInTarget, ...exitGrams(this.prepared, start, end) });
      start = end;
    }
  }

  private endOfTargetRun(start: number, to: number): number {
    let end = start;
    while (end < to && this.targetIndexes[this.next] === end) {
      end += 1;
      this.next += 1;
    }
    return end;
  }
}

/**
 * What leaves in the events from `from` to before `to`, with its limits.
 * @example
 * exitGrams(prepareHopperPeriod({ capacityGrams: null, events: [] }), 0, 0) // { lowerGrams: 0, upperGrams: 0 }
 */
export function exitGrams(
  { exitLowerGramsBefore: lower, exitUpperGramsBefore: upper }: PreparedHopperPeriod,
  from: number,
  to: number,
): { readonly lowerGrams: number; readonly upperGrams: number } {
  return { lowerGrams: (lower[to] ?? 0) - (lower[from] ?? 0), upperGrams: (upper[to] ?? 0) - (upper[from] ?? 0) };
}
