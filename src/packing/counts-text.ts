import { say } from '../platform/sentences/sentences.js';
import type { RunCounts } from './packing-run-rows.js';

/** A count as people read it, with thin spaces between groups of three digits: `19 200`. */
export function groupedCount(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/g, '\u202f');
}

/** Milligrams as grams with one decimal: `2001.0 g`. */
export function gramsOfMilligrams(milligrams: number): string {
  return `${(milligrams / 1000).toFixed(1)} g`;
}

/** Whole minutes between two instants. */
export function minutesBetween(fromAt: string, untilAt: string): number {
  return Math.floor((Date.parse(untilAt) - Date.parse(fromAt)) / 60_000);
}

/** Which packs of a run, as people count them: the first is 1. */
export function countsText({ fromCount, toCount }: RunCounts): string {
  const from = groupedCount(fromCount + 1);
  return toCount === null
    ? say('counts-from-on', { from })
    : say('counts-from-to', { from, to: groupedCount(toCount) });
}
