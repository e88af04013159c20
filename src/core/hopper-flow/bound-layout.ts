import type { BeforeTarget } from './before-target.js';
import type { GroupPart } from './group-content.js';
import type { Contradiction, PreparedHopperPeriod } from './prepare-period.js';
import { passSixNumbers, type AfterTarget } from './six-number-pass.js';
import { mergeExits, placeTarget, type Target, type TargetSteps } from './target-steps.js';

/** Least and most grams of a group in a target, however the hopper flows. 0 ≤ least ≤ most, whole grams. */
export interface Bounds {
  readonly leastGrams: number;
  readonly mostGrams: number;
  /** Not null: the records cannot be true. Least is then 0, and most does not rest on levels; both are doubtful. */
  readonly contradiction: Contradiction | null;
}

/** A target laid out for any number of groups. */
export interface TargetLayout {
  /** Only what surely belongs to the target. */
  readonly certain: TargetSteps;
  /** All that may belong to it; the same object where there is no doubt. */
  readonly possible: TargetSteps;
}

/**
 * Lays a target out for the pass, with and without its doubtful exits.
 * @throws RangeError when an exit is not in the period
 * @example layOut(prepareHopperPeriod({ capacityGrams: null, events: [] }), new Map()).possible.steps // []
 */
export function layOut(period: PreparedHopperPeriod, target: Target): TargetLayout {
  const withMaybe = placeTarget(period, target, 'with-maybe');
  const possible = mergeExits(period, withMaybe);
  const certain = hasDoubt(target) ? mergeExits(period, placeTarget(period, target, 'without-maybe')) : possible;
  return { certain, possible };
}

function hasDoubt(target: Target): boolean {
  for (const membership of target.values()) if (membership === 'maybe') return true;
  return false;
}

interface Question {
  readonly period: PreparedHopperPeriod;
  readonly parts: readonly GroupPart[];
  /** What is known of the group before a target that starts at this event, after the group's first addition. */
  readonly before: (startIndex: number) => BeforeTarget;
  /** What ceilings after an event say of the group, of which more is poured after it. */
  readonly tightestAfter: (eventIndex: number) => number;
}

type LeastAndMost = Pick<Bounds, 'leastGrams' | 'mostGrams'>;

/**
 * Most from all exits that may belong to the target, least from those that surely do.
 * @example
 * // a group of nothing
 * boundLayout({ period, parts: [], layout, before, tightestAfter }) // { leastGrams: 0, mostGrams: 0, contradiction: null }
 */
export function boundLayout(question: Question & { readonly layout: TargetLayout }): Bounds {
  const { possible, certain } = question.layout;
  const { contradiction } = question.period;
  if (contradiction) return { leastGrams: 0, mostGrams: boundSteps(question, possible).mostGrams, contradiction };
  const wide = boundSteps(question, possible);
  const narrow = certain === possible ? wide : boundSteps(question, certain);
  return { leastGrams: narrow.leastGrams, mostGrams: wide.mostGrams, contradiction };
}

function boundSteps(question: Question, target: TargetSteps): LeastAndMost {
  const { period, parts, before } = question;
  // What went in after the last of the target cannot be in it.
  const inTime = firstPartFrom(period, parts, target.endIndex);
  const first = parts[0];
  if (first === undefined || inTime === 0) return { leastGrams: 0, mostGrams: 0 };
  const levels = period.contradiction ? 'disbelieved' : 'believed';
  const begun = firstPartFrom(period, parts, target.startIndex);
  if (begun > 0) {
    const start = { target, startStep: 0 };
    const during = begun < inTime ? parts.slice(begun, inTime) : noParts;
    return lookBack(question, target, passSixNumbers(start, before(target.startIndex), during, levels));
  }
  const startStep = target.steps.findIndex((step) => step.kind === 'cut' && step.cutIndex === first.cutIndex);
  const levelBeforeGrams = period.cuts[first.cutIndex]?.levelUpperBeforeGrams ?? 0;
  const nothingYet = { ...nothingPoured, mustHaveLeftGrams: -levelBeforeGrams };
  return lookBack(question, target, passSixNumbers({ target, startStep }, nothingYet, parts.slice(0, inTime), levels));
}

/** The place of the first part that goes in at an event or after it; parts stand in order. */
function firstPartFrom({ cuts }: PreparedHopperPeriod, parts: readonly GroupPart[], eventIndex: number): number {
  let [low, high] = [0, parts.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    const part = parts[middle];
    if (part !== undefined && (cuts[part.cutIndex]?.eventIndex ?? Infinity) < eventIndex) low = middle + 1;
    else high = middle;
  }
  return low;
}

const nothingPoured = { pouredLowerGrams: 0, pouredUpperGrams: 0, leftLowerGrams: 0, leftUpperGrams: 0 };

/**
 * A level seen or a ceiling after the target says how much is no longer inside; what of it cannot have left elsewhere
 * left here. Nothing else that comes later can narrow the answer.
 */
function lookBack(
  { period, parts, tightestAfter }: Question,
  { endIndex }: TargetSteps,
  after: AfterTarget,
): LeastAndMost {
  const { leastGrams, mostGrams, pouredLowerGrams, leftElsewhereUpperGrams } = after;
  if (period.contradiction) return { leastGrams: 0, mostGrams };
  const firstLater = period.cutCountBefore[endIndex] ?? 0;
  const hasLater = (parts.at(-1)?.cutIndex ?? -1) >= firstLater;
  const tightest = hasLater ? tightestAfter(endIndex) : period.tightestLaterCeilingGrams[endIndex];
  const exitsBefore = period.exitUpperGramsBefore[endIndex] ?? 0;
  const seenLater = pouredLowerGrams - leftElsewhereUpperGrams + exitsBefore + (tightest ?? -Infinity);
  return { leastGrams: Math.max(leastGrams, seenLater), mostGrams };
}

const noParts: readonly GroupPart[] = [];

/**
 * As `tightestLaterCeilingGrams`, for a group of which more is poured later, which may then be what is inside. Walks
 * through the period once, at the first question, whatever is asked afterwards.
 * @param parts in order
 * @returns from an event index to the highest of what is poured from there on − (ceiling + exits before it, upper)
 * @example tightestWhilePouring(prepareHopperPeriod({ capacityGrams: null, events: [] }), [])(0) // -Infinity
 */
export function tightestWhilePouring(
  period: PreparedHopperPeriod,
  parts: readonly GroupPart[],
): (eventIndex: number) => number {
  let walked: ReturnType<typeof walkBackwards> | null = null;
  return (eventIndex) => {
    walked ??= walkBackwards(period, parts);
    const cutIndex = period.cutCountBefore[eventIndex] ?? 0;
    return (walked.tightest[cutIndex] ?? -Infinity) - (walked.pouredBefore[cutIndex] ?? 0);
  };
}

/** For each cut: what was poured of the group before it, and the tightest from it on, with all that was poured by then. */
function walkBackwards(
  { cuts, exitUpperGramsBefore }: PreparedHopperPeriod,
  parts: readonly GroupPart[],
): { readonly tightest: Float64Array; readonly pouredBefore: Float64Array } {
  const [tightest, pouredBefore] = [new Float64Array(cuts.length), new Float64Array(cuts.length)];
  let [highest, pouredGrams] = [-Infinity, parts.reduce((sum, { lowerGrams }) => sum + lowerGrams, 0)];
  let nextPart = parts.length - 1;
  for (let cutIndex = cuts.length - 1; cutIndex >= 0; cutIndex -= 1) {
    const cut = cuts[cutIndex];
    if (cut === undefined) break;
    const exitsBefore = exitUpperGramsBefore[cut.eventIndex] ?? 0;
    highest = Math.max(highest, pouredGrams - cut.ceilingGrams - exitsBefore);
    const part = parts[nextPart];
    if (part?.cutIndex === cutIndex) {
      pouredGrams -= part.lowerGrams;
      nextPart -= 1;
    }
    [tightest[cutIndex], pouredBefore[cutIndex]] = [highest, pouredGrams];
  }
  return { tightest, pouredBefore };
}
