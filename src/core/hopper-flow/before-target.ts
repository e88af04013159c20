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
  const walk = new WalkElsewhere(prepared, parts);
  const afterCut: BeforeTarget[] = [];
  while (walk.pourBefore(untilIndex)) afterCut.push(walk.known());
  return (eventIndex) => {
    const cutIndex = (prepared.cutCountBefore[eventIndex] ?? 0) - 1;
    const after = afterCut[cutIndex - firstCut];
    const cut = prepared.cuts[cutIndex];
    if (after === undefined || cut === undefined) throw new RangeError(`event ${eventIndex} was not followed`);
    return leaveElsewhere(after, exitGrams(prepared, cut.eventIndex + 1, eventIndex));
  };
}

/**
 * The same before one event alone: nothing is kept of the way there.
 * @param parts in order, not empty
 * @param eventIndex after the group's first addition
 * @throws RangeError when the event does not lie there
 * @example followUntil(period, placeGroup(period, wholeAdditions(['bag'])), 1).leftUpperGrams // 0, as above
 */
export function followUntil(
  prepared: PreparedHopperPeriod,
  parts: readonly GroupPart[],
  eventIndex: number,
): BeforeTarget {
  const walk = new WalkElsewhere(prepared, parts);
  let pouredCount = 0;
  while (walk.pourBefore(eventIndex)) pouredCount += 1;
  if (pouredCount === 0) throw new RangeError(`event ${eventIndex} does not lie after the group's first addition`);
  walk.leaveUntil(eventIndex);
  return walk.known();
}

/** Mutable on purpose, for speed; lives inside one walk from a group's first addition onwards. */
class WalkElsewhere {
  private pouredLowerGrams = 0;
  private pouredUpperGrams = 0;
  private leftLowerGrams = 0;
  private leftUpperGrams = 0;
  private mustHaveLeftGrams: number;
  private cutIndex: number;
  private nextPart = 0;
  /** The event from which on nothing has left yet. */
  private fromIndex: number;

  constructor(
    private readonly prepared: PreparedHopperPeriod,
    private readonly parts: readonly GroupPart[],
  ) {
    this.cutIndex = parts[0]?.cutIndex ?? 0;
    const first = prepared.cuts[this.cutIndex];
    // Nothing of the group was poured before; what can be inside then is all besides it.
    this.mustHaveLeftGrams = -(first?.levelUpperBeforeGrams ?? 0);
    this.fromIndex = first?.eventIndex ?? 0;
  }

  /** Goes on past the next cut, if that lies before an event; answers whether it does. */
  pourBefore(untilIndex: number): boolean {
    const cut = this.prepared.cuts[this.cutIndex];
    if (cut === undefined || cut.eventIndex >= untilIndex) return false;
    this.leaveUntil(cut.eventIndex);
    const part = this.parts[this.nextPart]?.cutIndex === this.cutIndex ? this.parts[this.nextPart] : undefined;
    if (part !== undefined) {
      this.nextPart += 1;
      this.pouredLowerGrams += part.lowerGrams;
      this.pouredUpperGrams += part.upperGrams;
    }
    this.mustHaveLeftGrams = Math.max(
      this.mustHaveLeftGrams - (part === undefined ? cut.upperGrams : part.otherUpperGrams),
      this.pouredLowerGrams - cut.ceilingGrams,
    );
    this.leftLowerGrams = Math.max(this.leftLowerGrams, this.mustHaveLeftGrams);
    this.cutIndex += 1;
    this.fromIndex = cut.eventIndex + 1;
    return true;
  }

  leaveUntil(eventIndex: number): void {
    const { exitLowerGramsBefore: lower, exitUpperGramsBefore: upper } = this.prepared;
    this.mustHaveLeftGrams += (lower[eventIndex] ?? 0) - (lower[this.fromIndex] ?? 0);
    this.leftLowerGrams = Math.max(this.leftLowerGrams, this.mustHaveLeftGrams);
    const leftUpperGrams = this.leftUpperGrams + (upper[eventIndex] ?? 0) - (upper[this.fromIndex] ?? 0);
    this.leftUpperGrams = Math.min(leftUpperGrams, this.pouredUpperGrams);
  }

  known(): BeforeTarget {
    const { pouredLowerGrams, pouredUpperGrams, leftLowerGrams, leftUpperGrams, mustHaveLeftGrams } = this;
    return { pouredLowerGrams, pouredUpperGrams, leftLowerGrams, leftUpperGrams, mustHaveLeftGrams };
  }
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
 * The same for any group that one addition alone brought in, up to one event, in a single walk backwards for all of them:
 * what must have left of a bag grows by what leaves and shrinks by what else is poured, whichever the bag, so that only the
 * highest value from its tip to the event is needed.
 * @param eventIndex the target's first exit
 * @returns for the one part of such a group, in before that event, what is known of it there
 * @throws RangeError from the answer, when the part does not lie before the event
 * @example
 * const [bag] = placeGroup(period, wholeAdditions(['bag']))
 * followEachElsewhere(period, 1)(bag).leftUpperGrams // 0, as above
 */
export function followEachElsewhere(
  prepared: PreparedHopperPeriod,
  eventIndex: number,
): (part: GroupPart) => BeforeTarget {
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
  return ({ cutIndex, lowerGrams, upperGrams, otherUpperGrams }) => {
    const cut = prepared.cuts[cutIndex];
    if (cut === undefined || cutIndex >= cutCount)
      throw new RangeError(`cut ${cutIndex} does not lie before the event`);
    const besidesGrams = cut.levelUpperBeforeGrams + otherUpperGrams;
    const startAnew = (grown: number, anew: number) => Math.max(grown - besidesGrams, lowerGrams + anew);
    return {
      pouredLowerGrams: lowerGrams,
      pouredUpperGrams: upperGrams,
      leftLowerGrams: Math.max(0, startAnew(highestGrowth[cutIndex] ?? 0, highestFromCeiling[cutIndex] ?? -Infinity)),
      leftUpperGrams: Math.min(upperGrams, exitGrams(prepared, cut.eventIndex, eventIndex).upperGrams),
      mustHaveLeftGrams: startAnew(growth[cutIndex] ?? 0, fromCeiling[cutIndex] ?? -Infinity),
    };
  };
}
