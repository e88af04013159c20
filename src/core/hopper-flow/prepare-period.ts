import { assertHopperPeriod, type Addition, type HopperPeriod } from './hopper-event.js';
import { levelCourse } from './level-course.js';

/** Where, and by how many grams, the records cannot be true: a tip is missing, late or wrong. */
export interface Contradiction {
  readonly eventIndex: number;
  readonly eventId: string;
  readonly byGrams: number;
}

/** An event between which exits may be merged. */
export interface Cut {
  readonly eventIndex: number;
  readonly kind: 'addition' | 'ceiling';
  readonly lowerGrams: number;
  readonly upperGrams: number;
  /** The most that can be inside right after it; Infinity where nothing says so. */
  readonly ceilingGrams: number;
  /** The most that can be inside right before it. */
  readonly levelUpperBeforeGrams: number;
}

/**
 * A hopper period checked and laid out for many questions. Made by `prepareHopperPeriod`; its fields are for this
 * folder only.
 */
export interface PreparedHopperPeriod {
  readonly period: HopperPeriod;
  readonly contradiction: Contradiction | null;
  readonly exitIndexById: ReadonlyMap<string, number>;
  readonly cuts: readonly Cut[];
  readonly cutIndexByAdditionId: ReadonlyMap<string, number>;
  /** Grams of all exits before each event, one entry more than there are events. */
  readonly exitLowerGramsBefore: readonly number[];
  readonly exitUpperGramsBefore: readonly number[];
}

/**
 * Checks a hopper period and lays it out, once, for all bounds that are asked of it.
 * The contradiction is that of the level check (the first by position): it makes every bound of the period doubtful,
 * because a missing tip shows only when what it replaced has run out, at the latest one hopper-full later.
 * @throws RangeError when a mass is not whole grams in order or an id stands twice
 * @example prepareHopperPeriod({ capacityGrams: null, events: [] }).contradiction // null
 */
export function prepareHopperPeriod(period: HopperPeriod): PreparedHopperPeriod {
  assertHopperPeriod(period);
  const course = levelCourse(period);
  const exitIndexById = new Map<string, number>();
  const cutIndexByAdditionId = new Map<string, number>();
  const cuts: Cut[] = [];
  const exitLowerGramsBefore = [0];
  const exitUpperGramsBefore = [0];
  let lowerGrams = 0;
  let upperGrams = 0;
  period.events.forEach((event, eventIndex) => {
    const levelUpperBeforeGrams = course.points[eventIndex - 1]?.upperGrams ?? 0;
    if (event.kind === 'exit') {
      exitIndexById.set(event.id, eventIndex);
      lowerGrams += event.mass.lowerGrams;
      upperGrams += event.mass.upperGrams;
    } else if (event.kind === 'addition') {
      cutIndexByAdditionId.set(event.id, cuts.length);
      cuts.push(additionCut(event, eventIndex, levelUpperBeforeGrams, period.capacityGrams));
    } else {
      const nothing = { lowerGrams: 0, upperGrams: 0 };
      cuts.push({ eventIndex, kind: 'ceiling', ...nothing, ceilingGrams: event.upperGrams, levelUpperBeforeGrams });
    }
    exitLowerGramsBefore.push(lowerGrams);
    exitUpperGramsBefore.push(upperGrams);
  });
  const finding = course.findings[0];
  const contradiction = finding ? pick(finding) : null;
  const prepared = { period, contradiction, exitIndexById, cuts, cutIndexByAdditionId };
  return { ...prepared, exitLowerGramsBefore, exitUpperGramsBefore };
}

function additionCut(
  event: Addition,
  eventIndex: number,
  levelUpperBeforeGrams: number,
  capacityGrams: number | null,
): Cut {
  const { lowerGrams, upperGrams } = event.mass;
  const ceilingGrams = capacityGrams ?? Infinity;
  return { eventIndex, kind: 'addition', lowerGrams, upperGrams, ceilingGrams, levelUpperBeforeGrams };
}

function pick({ eventIndex, eventId, byGrams }: Contradiction): Contradiction {
  return { eventIndex, eventId, byGrams };
}
