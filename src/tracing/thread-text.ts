import { localMomentAt } from '../core/shift-calendar/local-time.js';
import { formatKilograms } from '../core/units/grams.js';
import { say } from '../platform/sentences/sentences.js';
import type { Instant } from '../platform/clock.js';
import type { ShiftName, Thread } from './thread.js';
import type { PrintedTime } from './window-in-ranges.js';

/** Kilograms to the gram, so that columns stand under each other. */
export function gramPreciseText(grams: number): string {
  return formatKilograms(grams, { minimumDecimals: 3, thousands: true }).replace(/ kg$/, '');
}

export function shiftText(shift: ShiftName): string {
  return say('thread-shift', { on: shift.productionOn, shift: shift.shiftCode });
}

/** Each shift once, in the order given. */
export function distinctShifts(shifts: readonly ShiftName[]): string[] {
  return [...new Set(shifts.map(shiftText))];
}

/** Where a code leads to. */
export function threadLink(code: string): string {
  return `/thread?code=${encodeURIComponent(code)}`;
}

/** The answer in one sentence. */
export function answerSentence(thread: Thread): string {
  const packing = distinctShifts(thread.packed.flatMap((part) => part.packingShifts));
  const sure = thread.sources.filter((source) => source.word === 'sure').length;
  const away = thread.pallets.filter((pallet) => pallet.status === 'dispatched').length;
  return say('thread-sentence', {
    packing: packing.length === 0 ? say('thread-not-packed') : packing.join(', '),
    dryers: distinctShifts(thread.dryerShifts).join(', ') || say('thread-no-dryer-shift'),
    bags: thread.sources.length,
    sure,
    pallets: thread.pallets.length,
    away,
    customers: thread.customers.length,
  });
}

/** By which coder's clock a printed time was read, and which true time that is; the same clock and time once. */
export function printedTimeTexts(times: readonly PrintedTime[], timeZone: string): readonly string[] {
  return [
    ...new Set(
      times.map(({ printedAt, window, lineCode, coderCode, clock }) =>
        say(coderCode === null ? 'thread-time-no-coder' : 'thread-time-by-coder', {
          line: lineCode,
          coder: coderCode ?? '',
          at: localSecondsText(printedAt, timeZone).slice(0, -3),
          offset: offsetText(clock.offsetSeconds),
          uncertainty: clock.uncertaintySeconds,
          from: localSecondsText(window.fromAt, timeZone),
          until: localSecondsText(window.untilAt, timeZone),
        }),
      ),
    ),
  ];
}

function offsetText(offsetSeconds: number): string {
  if (offsetSeconds === 0) return say('clock-together');
  const seconds = Math.abs(offsetSeconds);
  return offsetSeconds > 0 ? say('clock-ahead', { seconds }) : say('clock-behind', { seconds });
}

/** Day and time to the second, by the plant's clock. */
export function localSecondsText(at: Instant, timeZone: string): string {
  const { on, time } = localMomentAt(timeZone, at);
  return `${on} ${time.slice(0, 8)}`;
}
