import { type CalendarDay, addDays, dayNumberOf } from './calendar-day.js';
import {
  type CrewCycle,
  type Rota,
  type ShiftPattern,
  minutesIntoProductionDay,
  shiftOfCrew,
} from './shift-pattern.js';

/** What can be wrong with a shift pattern, each a fact that a form can show. */
export type ShiftPatternProblem =
  | 'time-not-of-the-clock'
  | 'no-shifts'
  | 'first-shift-not-at-production-day-start'
  | 'shifts-not-in-order'
  | 'shift-code-empty-or-twice'
  | 'rota-start-not-a-day'
  | 'crew-empty-or-twice'
  | 'cycle-empty'
  | 'cycle-names-unknown-shift'
  | 'two-crews-on-one-shift';

/** Longest span of days in which crews' cycles of different lengths are compared with each other; ten years. */
const longestComparedDays = 3660;

/**
 * Everything that keeps a pattern from being used, in no special order; none for a good pattern.
 *
 * The first shift starts with the production day and the others later, each at its own time; shift codes and crews are
 * unique and not empty; a rota begins on a day of the calendar, names shifts of the pattern only, and never puts two
 * crews on one shift (compared over the common length of all cycles, at most ten years).
 *
 * @example problemsOfShiftPattern({ productionDayStart: '06:00', shifts: [], rota: null }) // ['no-shifts']
 */
export function problemsOfShiftPattern(pattern: ShiftPattern): readonly ShiftPatternProblem[] {
  if (!hasClockTimes(pattern)) return ['time-not-of-the-clock'];
  return [...problemsOfShifts(pattern), ...(pattern.rota === null ? [] : problemsOfRota(pattern, pattern.rota))];
}

/**
 * Refuses a pattern that has a problem.
 *
 * @throws RangeError naming the problems
 * @example assertShiftPattern(pattern) // nothing, when the pattern is good
 */
export function assertShiftPattern(pattern: ShiftPattern): void {
  const problems = problemsOfShiftPattern(pattern);
  if (problems.length > 0) throw new RangeError(`Not a shift pattern: ${problems.join(', ')}`);
}

function hasClockTimes({ productionDayStart, shifts }: ShiftPattern): boolean {
  try {
    shifts.forEach(({ startTime }) => minutesIntoProductionDay(productionDayStart, startTime));
    minutesIntoProductionDay(productionDayStart, productionDayStart);
    return true;
  } catch {
    return false;
  }
}

function problemsOfShifts({ productionDayStart, shifts }: ShiftPattern): readonly ShiftPatternProblem[] {
  if (shifts.length === 0) return ['no-shifts'];
  const problems: ShiftPatternProblem[] = [];
  const starts = shifts.map(({ startTime }) => minutesIntoProductionDay(productionDayStart, startTime));
  if (starts[0] !== 0) problems.push('first-shift-not-at-production-day-start');
  if (starts.some((start, index) => index > 0 && start <= (starts[index - 1] ?? 0)))
    problems.push('shifts-not-in-order');
  if (hasEmptyOrTwice(shifts.map(({ code }) => code))) problems.push('shift-code-empty-or-twice');
  return problems;
}

function problemsOfRota(pattern: ShiftPattern, rota: Rota): readonly ShiftPatternProblem[] {
  if (!isDay(rota.startsOn)) return ['rota-start-not-a-day'];
  if (rota.crews.some(({ shiftCodes }) => shiftCodes.length === 0)) return ['cycle-empty'];
  const problems: ShiftPatternProblem[] = [];
  const known = new Set<string | null>([null, ...pattern.shifts.map(({ code }) => code)]);
  if (hasEmptyOrTwice(rota.crews.map(({ crew }) => crew))) problems.push('crew-empty-or-twice');
  if (rota.crews.some(({ shiftCodes }) => shiftCodes.some((code) => !known.has(code))))
    problems.push('cycle-names-unknown-shift');
  if (hasTwoCrewsOnOneShift(rota)) problems.push('two-crews-on-one-shift');
  return problems;
}

function hasTwoCrewsOnOneShift({ startsOn, crews }: Rota): boolean {
  const days = Math.min(commonLength(crews), longestComparedDays);
  for (let day = 0; day < days; day += 1) {
    const on = addDays(startsOn, day);
    const worked = crews.map((cycle) => shiftOfCrew(cycle, startsOn, on)).filter((code) => code !== null);
    if (new Set(worked).size < worked.length) return true;
  }
  return false;
}

function commonLength(crews: readonly CrewCycle[]): number {
  return crews.reduce((length, { shiftCodes }) => (length / divisor(length, shiftCodes.length)) * shiftCodes.length, 1);
}

/** Greatest common divisor, after Euclid. */
function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}

function hasEmptyOrTwice(texts: readonly string[]): boolean {
  return texts.includes('') || new Set(texts).size < texts.length;
}

function isDay(on: CalendarDay): boolean {
  try {
    dayNumberOf(on);
    return true;
  } catch {
    return false;
  }
}
