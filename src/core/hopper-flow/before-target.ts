import type { GroupPart } from './group-content.js';
import type { PreparedHopperPeriod } from './prepare-period.js';
import { exitGrams } from './target-steps.js';

/**
 * What is known of a group before the target's first exit, while all that leaves leaves elsewhere. (In the note's
 * letters: M's lower and upper value; bL and bU, which are sL and sU too; and M − level at least.)
 */
export interface BeforeTarget {
  readonly pouredLowerGrams: number;
  readonly pouredUpperGrams: number;
  readonly leftLowerGrams: number;
  readonly leftUpperGrams: number;
  /** What was poured less what can still be inside; see six-number-pass. May be negative. */
  readonly mustHaveLeftGrams: number;
}

/**
 * Follows a group until just before an event, with everything leaving elsewhere. The answers for earlier events come
 * for free, so one call serves all targets that start by then.
 * @param parts in order, not empty
 * @param untilIndex event index up to which answers are wanted
 * @returns from an event index (after the group's first addition, at most `untilIndex`) to what is known before it
 * @throws RangeError from the answer, when the event does not lie there
 * @example
 * // 100 kg in a bag, of which nothing has left yet before the packs of event 1
 * followElsewhere(period, placeGroup(period, wholeAdditions(['bag'])), 1)(1).leftUpperGrams // 0
 */
export function followElsewhere(
  prepared: PreparedHopperPeriod,
  parts: readonly GroupPart[],
  untilIndex: number,
): (eventIndex: number) => BeforeTarget {
  const firstCut = parts[0]?.cutIndex ?? 0;
  const afterCut: BeforeTarget[] = [];
  let known: BeforeTarget = {
    ...{ pouredLowerGrams: 0, pouredUpperGrams: 0, leftLowerGrams: 0, leftUpperGrams: 0 },
    // Nothing of the group was poured before; what can be inside then is all besides it.
    mustHaveLeftGrams: -(prepared.cuts[firstCut]?.levelUpperBeforeGrams ?? 0),
  };
  let from = prepared.cuts[firstCut]?.eventIndex ?? 0;
  let nextPart = 0;
  for (let cutIndex = firstCut; cutIndex < prepared.cuts.length; cutIndex += 1) {
    const cut = prepared.cuts[cutIndex];
    if (cut === undefined || cut.eventIndex >= untilIndex) break;
    known = leaveElsewhere(known, exitGrams(prepared, from, cut.eventIndex));
    const part = parts[nextPart]?.cutIndex === cutIndex ? parts[nextPart++] : undefined;
    const pouredLowerGrams = known.pouredLowerGrams + (part?.lowerGrams ?? 0);
    const mustHaveLeftGrams = Math.max(
      known.mustHaveLeftGrams - (part ? part.otherUpperGrams : cut.upperGrams),
      pouredLowerGrams - cut.ceilingGrams,
    );
    known = {
      pouredLowerGrams,
      pouredUpperGrams: known.pouredUpperGrams + (part?.upperGrams ?? 0),
      leftLowerGrams: Math.max(known.leftLowerGrams, mustHaveLeftGrams),
      leftUpperGrams: known.leftUpperGrams,
      mustHaveLeftGrams,
    };
    afterCut.push(known);
    from = cut.eventIndex + 1;
  }
  return (eventIndex) => {
    const cutIndex = (prepared.cutCountBefore[eventIndex] ?? 0) - 1;
    const after = afterCut[cutIndex - firstCut];
    const cut = prepared.cuts[cutIndex];
    if (after === undefined || cut === undefined) throw new RangeError(`event ${eventIndex} was not followed`);
    return leaveElsewhere(after, exitGrams(prepared, cut.eventIndex + 1, eventIndex));
  };
}

function leaveElsewhere(
  known: BeforeTarget,
  exits: { readonly lowerGrams: number; readonly upperGrams: number },
): BeforeTarget {
  const mustHaveLeftGrams = known.mustHaveLeftGrams + exits.lowerGrams;
  return {
    pouredLowerGrams: known.pouredLowerGrams,
    pouredUpperGrams: known.pouredUpperGrams,
    leftLowerGrams: Math.max(known.leftLowerGrams, mustHaveLeftGrams),
    leftUpperGrams: Math.min(known.leftUpperGrams + exits.upperGrams, known.pouredUpperGrams),
    mustHaveLeftGrams,
  };
}

/**
 * The same for every addition on its own, up to one event, in a single walk backwards: what must have left of a bag
 * grows by what leaves and shrinks by what else is poured, whichever the bag, so that only the highest value from its
 * tip to the event is needed.
 * @param eventIndex the target's first exit
 * @returns for the cut of a whole addition before that event, what is known of it there; to be asked for such cuts only
 * @throws RangeError from the answer, when the cut does not lie before the event
 * @example followEachElsewhere(period, 1)(0).leftUpperGrams // 0, as above
 */
export function followEachElsewhere(
  prepared: PreparedHopperPeriod,
  eventIndex: number,
): (cutIndex: number) => BeforeTarget {
  const cutCount = prepared.cutCountBefore[eventIndex] ?? 0;
  const [growth, highestGrowth, fromCeiling, highestFromCeiling] = [[0], [0], [0], [0]];
  // Growth from after a cut to the event, and the highest on the way; the same started anew at the tightest ceiling.
  let [toEvent, highest, toEventAnew, highestAnew] = [0, -Infinity, -Infinity, -Infinity];
  let until = eventIndex;
  for (let cutIndex = cutCount - 1; cutIndex >= 0; cutIndex -= 1) {
    const cut = prepared.cuts[cutIndex];
    if (cut === undefined) break;
    const exits = exitGrams(prepared, cut.eventIndex + 1, until).lowerGrams;
    // `highest` is counted from after the exits; right after the cut itself nothing has grown yet.
    toEvent += exits;
    highest = Math.max(0, exits + Math.max(0, highest));
    toEventAnew = Math.max(toEventAnew, toEvent - cut.ceilingGrams);
    highestAnew = Math.max(highestAnew, highest - cut.ceilingGrams);
    [growth[cutIndex], highestGrowth[cutIndex]] = [toEvent, highest];
    [fromCeiling[cutIndex], highestFromCeiling[cutIndex]] = [toEventAnew, highestAnew];
    toEvent -= cut.upperGrams;
    highest -= cut.upperGrams;
    until = cut.eventIndex;
  }
  return (cutIndex) => {
    const cut = prepared.cuts[cutIndex];
    if (cut === undefined || cutIndex >= cutCount)
      throw new RangeError(`cut ${cutIndex} does not lie before the event`);
    const { lowerGrams, upperGrams, levelUpperBeforeGrams } = cut;
    const startAnew = (grown: number, anew: number) => Math.max(grown - levelUpperBeforeGrams, lowerGrams + anew);
    return {
      pouredLowerGrams: lowerGrams,
      pouredUpperGrams: upperGrams,
      leftLowerGrams: Math.max(0, startAnew(highestGrowth[cutIndex] ?? 0, highestFromCeiling[cutIndex] ?? -Infinity)),
      leftUpperGrams: Math.min(upperGrams, exitGrams(prepared, cut.eventIndex, eventIndex).upperGrams),
      mustHaveLeftGrams: startAnew(growth[cutIndex] ?? 0, fromCeiling[cutIndex] ?? -Infinity),
    };
  };
}
