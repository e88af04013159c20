/** A count as people read it, with thin spaces between groups of three digits: `19 200`. */
export function groupedCount(count: number): string {
  return String(count).replace(/\B(?=(?:\d{3})+$)/g, '\u2009');
}

/** Milligrams as grams with one decimal: `2001.0 g`. */
export function gramsOfMilligrams(milligrams: number): string {
  return `${(milligrams / 1000).toFixed(1)} g`;
}

/** Whole minutes between two instants. */
export function minutesBetween(fromAt: string, untilAt: string): number {
  return Math.floor((Date.parse(untilAt) - Date.parse(fromAt)) / 60_000);
}
