import { formatKilograms } from '../core/units/grams.js';
import { say } from '../platform/sentences/sentences.js';
import { localText } from '../platform/web/local-text.js';
import type { ShiftName, Thread } from './thread.js';

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

/** What the answer rests on. */
export function basisText(thread: Thread, timeZone: string): string {
  return say('thread-basis', {
    model: thread.model === null ? '–' : say(`flow-${thread.model.name}`),
    permille: thread.model?.likelyPermille ?? 0,
    at: localText(thread.readAt, timeZone),
  });
}
