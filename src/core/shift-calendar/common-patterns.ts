import { type CalendarDay } from './calendar-day.js';
import { type Rota, type ShiftDefinition, cycleOfLetters } from './shift-pattern.js';

/** Three shifts of eight hours from 06:00: morning, afternoon, night. Common practice, no source. */
export const threeByEightShifts: readonly ShiftDefinition[] = [
  { code: 'M', name: 'Morning', startTime: '06:00' },
  { code: 'A', name: 'Afternoon', startTime: '14:00' },
  { code: 'N', name: 'Night', startTime: '22:00' },
];

/** Two shifts of twelve hours from 06:00: day and night. Common practice, no source. */
export const twoByTwelveShifts: readonly ShiftDefinition[] = [
  { code: 'D', name: 'Day', startTime: '06:00' },
  { code: 'N', name: 'Night', startTime: '18:00' },
];

/**
 * Four days of work and four off, first by day, then by night; four crews, each four days behind the one before it in
 * the list.
 */
const fourOnFourOff = 'DDDDooooNNNNoooo';

/** Two mornings, two afternoons, three nights, two off, and the other ways round; four crews, seven days apart. */
const continental = 'MMAANNNooMMAAANNooMMMAANNooo';

/**
 * The rota of four on and four off for four crews on two shifts of twelve hours: 42 hours a week on average.
 *
 * @param startsOn the production day on which the first crew begins its four days
 * @param crews four names, in the order in which they take over
 * @throws RangeError when there are not four crews
 * @example fourOnFourOffRota('2026-01-01', ['T1', 'T2', 'T3', 'T4']).crews.length // 4
 */
export function fourOnFourOffRota(startsOn: CalendarDay, crews: readonly string[]): Rota {
  return staggeredRota(startsOn, crews, { letters: fourOnFourOff, daysBehind: 4 });
}

/**
 * The continental rota (2-2-3) for four crews on three shifts of eight hours: 42 hours a week on average.
 *
 * @param startsOn the production day on which the first crew begins its two mornings
 * @param crews four names; each stands seven days further on in the cycle than the one before it
 * @throws RangeError when there are not four crews
 * @example continentalRota('2026-01-01', ['T1', 'T2', 'T3', 'T4']).crews[1]?.shiftCodes.slice(0, 3) // [null, null, 'M']
 */
export function continentalRota(startsOn: CalendarDay, crews: readonly string[]): Rota {
  return staggeredRota(startsOn, crews, { letters: continental, daysBehind: -7 });
}

function staggeredRota(
  startsOn: CalendarDay,
  crews: readonly string[],
  { letters, daysBehind }: { readonly letters: string; readonly daysBehind: number },
): Rota {
  if (crews.length !== 4) throw new RangeError(`This rota needs four crews, not ${crews.length}`);
  const cycles = crews.map((crew, index) => {
    const shift = (((-daysBehind * index) % letters.length) + letters.length) % letters.length;
    return cycleOfLetters(crew, letters.slice(shift) + letters.slice(0, shift));
  });
  return { startsOn, crews: cycles };
}
