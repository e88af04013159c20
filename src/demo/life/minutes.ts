import { locateShift, shiftsOfDay, type LocatedShift } from '../../core/shift-calendar/locate-shift.js';
import { addDays } from '../../core/shift-calendar/calendar-day.js';
import { instantOfLocalTime, localMomentAt } from '../../core/shift-calendar/local-time.js';
import { threeByEightShifts } from '../../core/shift-calendar/common-patterns.js';
import type { ShiftPattern } from '../../core/shift-calendar/shift-pattern.js';
import type { Instant } from '../../platform/clock.js';

/** The plant of the demo lives by whole minutes: minutes since 1970 in UTC. */
export type Minute = number;

export const timeZone = 'Europe/Berlin';
export const productionDayStart = '06:00';
export const shiftPattern: ShiftPattern = { productionDayStart, shifts: threeByEightShifts, rota: null };

export function instantOf(minute: Minute, seconds = 0): Instant {
  return new Date(minute * 60_000 + seconds * 1000).toISOString();
}

export function minuteOf(at: Instant): Minute {
  return Math.floor(Date.parse(at) / 60_000);
}

/** The minute at which the plant's clock shows a time of a day. */
export function minuteOfLocal(on: string, time: string): Minute {
  return minuteOf(instantOfLocalTime(timeZone, on, time));
}

/** `HH:mm` on the plant's clock. */
export function localTimeOf(minute: Minute): string {
  return localMomentAt(timeZone, instantOf(minute)).time.slice(0, 5);
}

export interface DemoShift {
  readonly productionOn: string;
  readonly code: string;
  readonly from: Minute;
  readonly until: Minute;
}

/** The shift asked for last: the days are lived through in order, minute by minute. */
let lastShift: DemoShift | null = null;

export function shiftAt(minute: Minute): DemoShift {
  if (lastShift !== null && lastShift.from <= minute && minute < lastShift.until) return lastShift;
  lastShift = inMinutes(locateShift(shiftPattern, timeZone, instantOf(minute)));
  return lastShift;
}

/** All shifts of so many production days. */
export function shiftsFrom(startOn: string, dayCount: number): readonly DemoShift[] {
  return Array.from({ length: dayCount }, (_, day) => shiftsOfDay(shiftPattern, timeZone, addDays(startOn, day)))
    .flat()
    .map(inMinutes);
}

function inMinutes(shift: LocatedShift): DemoShift {
  const { productionOn, shiftCode, startsAt, endsAt } = shift;
  return { productionOn, code: shiftCode, from: minuteOf(startsAt), until: minuteOf(endsAt) };
}
