import { assertHopperPeriod, type HopperEvent, type HopperPeriod } from './hopper-event.js';
import { followLevel } from './level-course.js';

/** Where, and by how many grams, the records cannot be true: a tip is missing, late or wrong. */
export interface Contradiction {
  readonly eventIndex: number;
  readonly eventId: string;
  readonly byGrams: number;
}

/** An event between which exits may be merged: an addition, a level seen, a ceiling. */
export interface Cut {
  readonly eventIndex: number;
  /** What it adds, with its limits; 0 for a level or ceiling. */
  readonly lowerGrams: number;
  readonly upperGrams: number;
  /** The most that can be inside right after it; Infinity where nothing says so. */
  readonly ceilingGrams: number;
  /** The most that can be inside right before it. */
  readonly levelUpperBeforeGrams: number;
}

/** A period checked and laid out for many questions, by `prepareHopperPeriod`; its fields are for this folder only. */
export interface PreparedHopperPeriod {
  readonly period: HopperPeriod;
  readonly contradiction: Contradiction | null;
  readonly exitIndexById: ReadonlyMap<string, number>;
  readonly cuts: readonly Cut[];
  readonly cutIndexByAdditionId: ReadonlyMap<string, number>;
  // The following have one entry for each event, for what comes before it, and one more for the end.
  readonly cutCountBefore: Int32Array;
  readonly exitLowerGramsBefore: Float64Array;
  readonly exitUpperGramsBefore: Float64Array;
  /** Over all ceilings from here on, the highest of −(ceiling + exits before it, upper); −Infinity without any. */
  readonly tightestLaterCeilingGrams: Float64Array;
}

/**
 * Checks a hopper period and lays it out, once, for all bounds that are asked of it.
 * The contradiction is the first finding of the level check, wherever it is: it makes every bound of the period
 * doubtful, because a missing tip shows only when what it replaced has run out, at the latest one hopper-full later.
 * Without one the six numbers of no group can contradict each other: masses within their limits then exist that fit.
 * @throws RangeError when a mass is not whole grams in order or an id stands twice
 * @example prepareHopperPeriod({ capacityGrams: null, events: [] }).contradiction // null
 */
export function prepareHopperPeriod(period: HopperPeriod): PreparedHopperPeriod {
  assertHopperPeriod(period);
  const size = period.events.length;
  const levelUpperGrams = new Float64Array(size);
  const [finding] = followLevel(period, (eventIndex, _, level) => {
    levelUpperGrams[eventIndex] = level.upperGrams;
  });
  const exitIndexById = new Map<string, number>();
  const cutIndexByAdditionId = new Map<string, number>();
  const cuts: Cut[] = [];
  const cutCountBefore = new Int32Array(size + 1);
  const [exitLowerGramsBefore, exitUpperGramsBefore] = [new Float64Array(size + 1), new Float64Array(size + 1)];
  let [lowerGrams, upperGrams] = [0, 0];
  period.events.forEach((event, eventIndex) => {
    if (event.kind === 'exit') {
      exitIndexById.set(event.id, eventIndex);
      lowerGrams += event.mass.lowerGrams;
      upperGrams += event.mass.upperGrams;
    } else {
      if (event.kind === 'addition') cutIndexByAdditionId.set(event.id, cuts.length);
      const levelUpperBeforeGrams = levelUpperGrams[eventIndex - 1] ?? 0;
      cuts.push({ eventIndex, ...limitsOf(event, period.capacityGrams), levelUpperBeforeGrams });
    }
    cutCountBefore[eventIndex + 1] = cuts.length;
    exitLowerGramsBefore[eventIndex + 1] = lowerGrams;
    exitUpperGramsBefore[eventIndex + 1] = upperGrams;
  });
  return {
    ...{
      period,
      exitIndexById,
      cuts,
      cutIndexByAdditionId,
      cutCountBefore,
      exitLowerGramsBefore,
      exitUpperGramsBefore,
    },
    contradiction: finding ? pick(finding) : null,
    tightestLaterCeilingGrams: lookAhead(cuts, exitUpperGramsBefore),
  };
}

function limitsOf(
  event: Exclude<HopperEvent, { kind: 'exit' }>,
  capacityGrams: number | null,
): Pick<Cut, 'lowerGrams' | 'upperGrams' | 'ceilingGrams'> {
  if (event.kind !== 'addition') return { lowerGrams: 0, upperGrams: 0, ceilingGrams: event.upperGrams };
  const { lowerGrams, upperGrams } = event.mass;
  return { lowerGrams, upperGrams, ceilingGrams: capacityGrams ?? Infinity };
}

function lookAhead(cuts: readonly Cut[], exitUpperGramsBefore: Float64Array): Float64Array {
  const tightest = new Float64Array(exitUpperGramsBefore.length);
  let best = -Infinity;
  let upTo = tightest.length - 1;
  for (let cutIndex = cuts.length - 1; cutIndex >= 0; cutIndex -= 1) {
    const { eventIndex = 0, ceilingGrams = Infinity } = cuts[cutIndex] ?? {};
    tightest.fill(best, eventIndex + 1, upTo + 1);
    best = Math.max(best, -ceilingGrams - (exitUpperGramsBefore[eventIndex] ?? 0));
    upTo = eventIndex;
  }
  return tightest.fill(best, 0, upTo + 1);
}

function pick({ eventIndex, eventId, byGrams }: Contradiction): Contradiction {
  return { eventIndex, eventId, byGrams };
}
