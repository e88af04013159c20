import { type CalendarDay, addDays } from './calendar-day.js';
import { type Instant, millisecondsOfInstant } from './instant.js';
import { instantOfLocalTime, localMomentAt } from './local-time.js';
import { type ShiftPattern, crewOn } from './shift-pattern.js';
import { assertShiftPattern } from './shift-pattern-problems.js';
import { type TimeZone } from './time-zone.js';

/** One shift of one production day in real time. */
export interface LocatedShift {
  readonly productionOn: CalendarDay;
  readonly shiftCode: string;
  /** The first instant of the shift. */
  readonly startsAt: Instant;
  /** The first instant that is no longer in it. */
  readonly endsAt: Instant;
  /**
   * What really passes between the two, not what the clock shows: 420 or 540 in a night of eight hours when the clocks
   * change.
   */
  readonly lengthMinutes: number;
  /** `null` where nobody works, or no rota is kept. */
  readonly crew: string | null;
  /** `false` only where a rota is kept and no crew has this shift. */
  readonly isWorked: boolean;
}

/** A production day in real time: half-open, from its first instant to the first of the next. */
export interface ProductionDayBounds {
  readonly startsAt: Instant;
  readonly endsAt: Instant;
}

/**
 * Days asked for lately, per pattern and zone: a shift report asks for the same day thousands of times. Forgotten when
 * full.
 */
const recentDays = new WeakMap<ShiftPattern, Map<string, readonly LocatedShift[]>>();
const recentDaysPerPattern = 1000;

/** The shift found last, per pattern: what is asked next is mostly of the same one, and shifts of a pattern never overlap. */
const latestShifts = new WeakMap<ShiftPattern, { readonly timeZone: TimeZone; readonly shift: LocatedShift }>();

/**
 * The production day and shift that an instant falls in.
 *
 * The first instant of a shift belongs to it, the last to the next. At the plant's clock change the shift keeps its
 * times on the clock and is longer or shorter in fact.
 *
 * @param at an instant, UTC
 * @throws RangeError when the pattern has a problem (`problemsOfShiftPattern`), the zone is unknown or `at` is no
 * instant
 * @example locateShift(threeByEight, 'Europe/Berlin', '2026-10-25T01:30:00.000Z') // night of 2026-10-24, 540 minutes
 */
export function locateShift(pattern: ShiftPattern, timeZone: TimeZone, at: Instant): LocatedShift {
  const latest = latestShifts.get(pattern);
  if (latest?.timeZone === timeZone && holds(latest.shift, at)) return latest.shift;
  const { on } = localMomentAt(timeZone, at);
  const heldOn = (day: CalendarDay): LocatedShift | undefined =>
    shiftsOfDay(pattern, timeZone, day).find((shift) => holds(shift, at));
  // Clocks set back over midnight show yesterday's date on a day that has begun already, so tomorrow is asked too.
  const shift = heldOn(on) ?? heldOn(addDays(on, -1)) ?? heldOn(addDays(on, 1));
  if (shift === undefined) throw new RangeError(`No shift holds ${at} in ${timeZone}`);
  latestShifts.set(pattern, { timeZone, shift });
  return shift;
}

function holds({ startsAt, endsAt }: LocatedShift, at: Instant): boolean {
  return startsAt <= at && at < endsAt;
}

/**
 * The production day that an instant falls in.
 *
 * @throws RangeError as `locateShift`
 * @example productionDayAt(threeByEight, 'Europe/Berlin', '2026-01-01T01:00:00.000Z') // '2025-12-31', when days begin at 06:00
 */
export function productionDayAt(pattern: ShiftPattern, timeZone: TimeZone, at: Instant): CalendarDay {
  return locateShift(pattern, timeZone, at).productionOn;
}

/**
 * The shifts of a production day in order, each ending where the next starts; the last where the next day's first
 * starts.
 *
 * A shift that the clocks jump over entirely is left out, and so is a whole day that a zone leaves out of its calendar.
 *
 * @throws RangeError as `locateShift`, and when `productionOn` is not a day
 * @example shiftsOfDay(threeByEight, 'Europe/Berlin', '2026-03-28').map((shift) => shift.lengthMinutes) // [480, 480, 420]
 */
export function shiftsOfDay(
  pattern: ShiftPattern,
  timeZone: TimeZone,
  productionOn: CalendarDay,
): readonly LocatedShift[] {
  const recent = recentDaysOf(pattern);
  const key = `${timeZone} ${productionOn}`;
  const known = recent.get(key);
  if (known !== undefined) return known;
  if (recent.size >= recentDaysPerPattern) recent.clear();
  const shifts = Object.freeze(shiftsWorkedOut(pattern, timeZone, productionOn));
  recent.set(key, shifts);
  return shifts;
}

/**
 * The first instant of a production day and the first of the next.
 *
 * @throws RangeError as `shiftsOfDay`
 * @example productionDayBounds(threeByEight, 'Europe/Berlin', '2026-10-24') // { startsAt: '2026-10-24T04:00:00.000Z', endsAt: '2026-10-25T05:00:00.000Z' }
 */
export function productionDayBounds(
  pattern: ShiftPattern,
  timeZone: TimeZone,
  productionOn: CalendarDay,
): ProductionDayBounds {
  return {
    startsAt: startOfProductionDay(pattern, timeZone, productionOn),
    endsAt: startOfProductionDay(pattern, timeZone, addDays(productionOn, 1)),
  };
}

function shiftsWorkedOut(pattern: ShiftPattern, timeZone: TimeZone, productionOn: CalendarDay): LocatedShift[] {
  const { endsAt: dayEndsAt } = productionDayBounds(pattern, timeZone, productionOn);
  const starts = pattern.shifts.map(({ startTime }) => {
    const isNextMorning = startTime < pattern.productionDayStart;
    return instantOfLocalTime(timeZone, isNextMorning ? addDays(productionOn, 1) : productionOn, startTime);
  });
  return pattern.shifts
    .map(({ code }, index) => {
      const startsAt = starts[index] ?? dayEndsAt;
      const endsAt = starts[index + 1] ?? dayEndsAt;
      const crew = crewOn(pattern, productionOn, code);
      const lengthMinutes = (millisecondsOfInstant(endsAt) - millisecondsOfInstant(startsAt)) / 60_000;
      const isWorked = crew !== null || pattern.rota === null;
      return { productionOn, shiftCode: code, startsAt, endsAt, lengthMinutes, crew, isWorked };
    })
    .filter(({ lengthMinutes }) => lengthMinutes > 0);
}

function startOfProductionDay(pattern: ShiftPattern, timeZone: TimeZone, productionOn: CalendarDay): Instant {
  return instantOfLocalTime(timeZone, productionOn, pattern.productionDayStart);
}

/** A pattern is looked over once, when it is first used. */
function recentDaysOf(pattern: ShiftPattern): Map<string, readonly LocatedShift[]> {
  const recent = recentDays.get(pattern) ?? new Map<string, readonly LocatedShift[]>();
  if (!recentDays.has(pattern)) {
    assertShiftPattern(pattern);
    recentDays.set(pattern, recent);
  }
  return recent;
}
