import type { Observation } from '../core/statistics/unusual.js';
import type { RunSpan } from '../packing/run-lists.js';
import type { TimeWindow } from '../packing/ranges-in-time.js';
import type { Instant } from '../platform/clock.js';
import type { SentenceFacts } from '../platform/refusal.js';
import type { Thread } from '../tracing/thread.js';

/** Something in the records about the packs of a complaint, before it is judged. */
export interface Signal extends Observation {
  /** Code of the sentence that says what was measured or counted. */
  readonly code: string;
  readonly facts: SentenceFacts;
  /** The unit's code (`unit-…`), for the value and the median. */
  readonly unit: string;
  /** Where it can be looked at. */
  readonly href: string;
}

/** The packs of a complaint and the period that they are compared with. */
export interface SignalsAsked {
  readonly siteId: string;
  readonly thread: Thread;
  /** When the packs were packed, as far as known. */
  readonly window: TimeWindow;
  readonly periodFromAt: Instant;
  /** The runs of the site in the period. */
  readonly runs: readonly RunSpan[];
}

/** What is usual is taken from so many days before the packs were packed. Our own choice. */
export const periodDays = 90;

/** Near the packs: so much before and after. Our own choice. */
export const nearMilliseconds = 30 * 60_000;
