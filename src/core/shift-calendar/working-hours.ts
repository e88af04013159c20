import { type ShiftPattern, minutesIntoProductionDay } from './shift-pattern.js';

const minutesOfDay = 1440;

/**
 * The minutes on the clock that each shift lasts, by its code: what is planned, without any change of the clocks.
 *
 * @throws RangeError when a time is not `HH:mm`
 * @example clockMinutesOfShifts(twoByTwelve) // Map { 'D' => 720, 'N' => 720 }
 */
export function clockMinutesOfShifts({ productionDayStart, shifts }: ShiftPattern): ReadonlyMap<string, number> {
  const starts = shifts.map(({ startTime }) => minutesIntoProductionDay(productionDayStart, startTime));
  return new Map(shifts.map(({ code }, index) => [code, (starts[index + 1] ?? minutesOfDay) - (starts[index] ?? 0)]));
}

/**
 * The hours a week that a crew works on average over its whole cycle, breaks included and clock changes left out.
 *
 * @throws RangeError when the pattern keeps no rota, or no such crew is in it
 * @example averageWeeklyHours(fourOnFourOff, 'T1') // 42
 */
export function averageWeeklyHours(pattern: ShiftPattern, crew: string): number {
  const cycle = pattern.rota?.crews.find((one) => one.crew === crew);
  if (cycle === undefined) throw new RangeError(`No crew ${crew} in the rota`);
  const lengths = clockMinutesOfShifts(pattern);
  const minutes = cycle.shiftCodes.reduce((sum, code) => sum + (code === null ? 0 : (lengths.get(code) ?? 0)), 0);
  return ((minutes / 60) * 7) / cycle.shiftCodes.length;
}
