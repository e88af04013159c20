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
  readonly latestStartIndex: number;
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
  return { certain, possible, latestStartIndex: Math.max(possible.startIndex, certain.startIndex) };
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
}

type LeastAndMost = Pick<Bounds, 'leastGrams' | 'mostGrams'>;

/**
 * Most from all exits that may belong to the target, least from those that surely do.
 * @example
 * // a group of nothing
 * boundLayout({ period, parts: [], layout, before }) // { leastGrams: 0, mostGrams: 0, contradiction: null }
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
  const eventIndexOf = ({ cutIndex }: GroupPart) => period.cuts[cutIndex]?.eventIndex ?? Infinity;
  // What went in after the last of the target cannot be in it. Parts stand in order, so mostly all of them may be.
  const last = parts.at(-1);
  const areAllInTime = last !== undefined && eventIndexOf(last) < target.endIndex;
  const inTime = areAllInTime ? parts : parts.filter((part) => eventIndexOf(part) < target.endIndex);
  const first = inTime[0];
  if (first === undefined) return { leastGrams: 0, mostGrams: 0 };
  const levels = period.contradiction ? 'disbelieved' : 'believed';
  if (eventIndexOf(first) < target.startIndex) {
    const during = inTime.filter((part) => eventIndexOf(part) > target.startIndex);
    const start = { target, startStep: 0 };
    return lookBack(question, target, passSixNumbers(start, before(target.startIndex), during, levels));
  }
  const startStep = target.steps.findIndex((step) => step.kind === 'cut' && step.cutIndex === first.cutIndex);
  const levelBeforeGrams = period.cuts[first.cutIndex]?.levelUpperBeforeGrams ?? 0;
  const nothingYet = { ...nothingPoured, mustHaveLeftGrams: -levelBeforeGrams };
  return lookBack(question, target, passSixNumbers({ target, startStep }, nothingYet, inTime, levels));
}

const nothingPoured = { pouredLowerGrams: 0, pouredUpperGrams: 0, leftLowerGrams: 0, leftUpperGrams: 0 };

/**
 * A level seen or a ceiling after the target says how much is no longer inside; what of it cannot have left elsewhere
 * left here. Nothing else that comes later can narrow the answer.
 */
function lookBack({ period, parts }: Question, { endIndex }: TargetSteps, after: AfterTarget): LeastAndMost {
  const { leastGrams, mostGrams, pouredLowerGrams, leftElsewhereUpperGrams } = after;
  if (period.contradiction) return { leastGrams: 0, mostGrams };
  const firstLater = period.cutCountBefore[endIndex] ?? 0;
  const hasLater = (parts.at(-1)?.cutIndex ?? -1) >= firstLater;
  const later = hasLater ? parts.filter(({ cutIndex }) => cutIndex >= firstLater) : noParts;
  const tightest =
    later.length > 0 ? tightestWhilePouring(period, later, endIndex) : period.tightestLaterCeilingGrams[endIndex];
  const exitsBefore = period.exitUpperGramsBefore[endIndex] ?? 0;
  const seenLater = pouredLowerGrams - leftElsewhereUpperGrams + exitsBefore + (tightest ?? -Infinity);
  return { leastGrams: Math.max(leastGrams, seenLater), mostGrams };
}

const noParts: readonly GroupPart[] = [];

/** As `tightestLaterCeilingGrams`, for a group of which more is poured later, which may then be what is inside. */
function tightestWhilePouring(period: PreparedHopperPeriod, later: readonly GroupPart[], endIndex: number): number {
  let [tightest, pouredGrams, nextPart] = [-Infinity, 0, 0];
  for (let cutIndex = period.cutCountBefore[endIndex] ?? 0; cutIndex < period.cuts.length; cutIndex += 1) {
    const cut = period.cuts[cutIndex];
    const part = later[nextPart];
    if (cut === undefined) break;
    if (part?.cutIndex === cutIndex) {
      pouredGrams += part.lowerGrams;
      nextPart += 1;
    }
    const exitsBefore = period.exitUpperGramsBefore[cut.eventIndex] ?? 0;
    tightest = Math.max(tightest, pouredGrams - cut.ceilingGrams - exitsBefore);
  }
  return tightest;
}
