/** An instant as ISO 8601 text in UTC, always 24 characters: `2026-03-12T07:41:03.412Z`. Sorts as text. */
export type Instant = string;

/** Where the time comes from. The demo and the tests put their own in its place. */
export abstract class Clock {
  abstract now(): Instant;
}

/** The machine's own clock. */
export class SystemClock extends Clock {
  now(): Instant {
    return new Date().toISOString();
  }
}

/** The instant `milliseconds` after `at` (before it, when negative). */
export function shifted(at: Instant, milliseconds: number): Instant {
  return new Date(Date.parse(at) + milliseconds).toISOString();
}

/** Milliseconds from `from` to `until`; negative when `until` is the earlier. */
export function millisecondsBetween(from: Instant, until: Instant): number {
  return Date.parse(until) - Date.parse(from);
}
