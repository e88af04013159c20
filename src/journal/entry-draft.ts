import type { Actor } from '../platform/actor.js';
import type { Canonical } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';

/** A thing that the journal speaks of: its kind (the catalogue's word) and its id. */
export interface Subject {
  readonly kind: string;
  readonly id: string;
}

/** Who asks for a change, by which route and key, and how far they had seen what they change. */
export interface Asked {
  readonly actor: Actor;
  readonly route: string;
  /** Null only for what the house itself does (jobs, the command line). */
  readonly key: string | null;
  /** The last journal sequence that the sender's page knew of a thing. */
  readonly seen?: { readonly subject: Subject; readonly sequence: number } | null;
  readonly deviceOffsetMilliseconds?: number | null;
}

/** What a command hands over for the journal. Mass, count and id only; never names or contact data. */
export interface EntryDraft {
  readonly action: string;
  readonly subject: Subject;
  readonly touches?: readonly Subject[];
  readonly before?: Canonical;
  readonly after?: Canonical;
  readonly reason?: string | null;
  readonly occurredAt?: Instant;
  readonly statedAt?: Instant | null;
}

/** What the unit knows of itself before its entry is written. */
export interface Change {
  /** The id of the journal entry to come, for `voided_by`. */
  readonly entryId: string;
  readonly recordedAt: Instant;
}
