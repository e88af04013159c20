import { type CalendarDay, dayNumberOf } from './calendar-day.js';

/** A wall-clock time to the minute, `HH:mm`, 00:00 to 23:59. */
export type ClockMinute = string;

/** A shift as the plant names it; it lasts until the next one starts. */
export interface ShiftDefinition {
  /** Short and unique within the pattern: what is printed and stored. */
  readonly code: string;
  readonly name: string;
  readonly startTime: ClockMinute;
}

/** A crew and the shifts it works, one entry per production day, over and over; `null` is a day off. */
export interface CrewCycle {
  readonly crew: string;
  readonly shiftCodes: readonly (string | null)[];
}

/** Who works when. On a day on which every crew is off, or on a shift that no crew has, nobody works. */
export interface Rota {
  /** The production day that the first entry of every crew's cycle stands for. */
  readonly startsOn: CalendarDay;
  readonly crews: readonly CrewCycle[];
}

/**
 * How a plant divides its days: 3×8, 2×12, with crews or without.
 *
 * Production day D begins when the clock of the plant shows `productionDayStart` on the calendar day D and ends when D
 * + 1 begins; its first shift starts with it, the others follow in order. The shifts cover the whole day: hours in
 * which nobody ever works are a shift of their own that no crew has. The time zone is not part of the pattern.
 */
export interface ShiftPattern {
  readonly productionDayStart: ClockMinute;
  readonly shifts: readonly ShiftDefinition[];
  /** `null` where crews are not planned here. */
  readonly rota: Rota | null;
}

const minutesOfDay = 1440;

/**
 * The minutes on the clock from the start of the production day to a time, 0 to 1439.
 *
 * @throws RangeError when one of them is not a time `HH:mm`
 * @example minutesIntoProductionDay('06:00', '02:30') // 1230: half past two belongs to the night before
 */
export function minutesIntoProductionDay(productionDayStart: ClockMinute, time: ClockMinute): number {
  return (minutesOf(time) - minutesOf(productionDayStart) + minutesOfDay) % minutesOfDay;
}

/**
 * The crew's shift on a production day: the code, or `null` on a day off.
 *
 * @throws RangeError when the day is none, or the cycle is empty
 * @example shiftOfCrew({ crew: 'Red', shiftCodes: ['D', null] }, '2026-01-01', '2025-12-30') // 'D'
 */
export function shiftOfCrew(cycle: CrewCycle, startsOn: CalendarDay, productionOn: CalendarDay): string | null {
  const length = cycle.shiftCodes.length;
  if (length === 0) throw new RangeError(`The cycle of crew ${cycle.crew} is empty`);
  const dayCount = dayNumberOf(productionOn) - dayNumberOf(startsOn);
  return cycle.shiftCodes[((dayCount % length) + length) % length] ?? null;
}

/**
 * The crew that works a shift of a production day, or `null` where nobody does, or no rota is kept.
 *
 * @throws RangeError when the day is none
 * @example crewOn(pattern, '2026-01-05', 'N') // 'T3'
 */
export function crewOn(pattern: ShiftPattern, productionOn: CalendarDay, shiftCode: string): string | null {
  const { rota } = pattern;
  if (rota === null) return null;
  const atWork = rota.crews.find((cycle) => shiftOfCrew(cycle, rota.startsOn, productionOn) === shiftCode);
  return atWork?.crew ?? null;
}

/**
 * A crew's cycle from the letters in which rotas are usually written: each letter is a shift code, `o` a day off.
 *
 * @example cycleOfLetters('T1', 'DDo') // { crew: 'T1', shiftCodes: ['D', 'D', null] }
 */
export function cycleOfLetters(crew: string, letters: string): CrewCycle {
  return { crew, shiftCodes: Array.from(letters, (letter) => (letter === 'o' ? null : letter)) };
}

function minutesOf(time: ClockMinute): number {
  if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(time)) throw new RangeError(`Not a time of the form HH:mm: ${time}`);
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
}
