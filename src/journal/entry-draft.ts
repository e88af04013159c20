import type { Actor } from '../platform/actor.js';
import type { Canonical } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import type { actionSentences } from './actions.sentences.js';

/** A thing that the journal speaks of: its kind (the catalogue's word) and its id. */
export interface Subject {
  readonly kind: string;
  readonly id: string;
}

/** How an entry comes that was made away from the server: kept on a device meanwhile, or keyed in from a paper form. */
export interface Happening {
  readonly how: 'queued' | 'paper';
  /** When it happened, by the device's clock made the server's, or as written. */
  readonly at: Instant;
  /** The paper form's number and the row on it. */
  readonly sheet: string | null;
  readonly row: number | null;
  /** Who wrote it, where somebody else keyed it in. */
  readonly writtenBy: string | null;
}

/** Looks at what a change did while its unit is open, before all of it is taken back. */
export type Rehearsal = (tx: Tx, entry: EntryDraft) => Promise<void>;

/** Who asks for a change, by which route and key, and how far they had seen what they change. */
export interface Asked {
  readonly actor: Actor;
  readonly route: string;
  /** Null only for what the house itself does (jobs, the command line). */
  readonly key: string | null;
  /** The last journal sequence that the sender's page knew of a thing. */
  readonly seen?: { readonly subject: Subject; readonly sequence: number } | null;
  readonly deviceOffsetMilliseconds?: number | null;
  /** The mark of what was shown of the change beforehand: it is refused where what it touches moved on since. */
  readonly previewed?: string | null;
  /** Set where the change is only tried: this looks at what it did, then all of it is taken back. */
  readonly rehearsal?: Rehearsal | null;
  /** Set for what has happened already: it is recorded, whatever the house's rules say of it. */
  readonly happening?: Happening | null;
}

/** What an entry says was done: a word that the catalogue has words for, in every language. */
export type JournalAction = keyof typeof actionSentences extends infer Code
  ? Code extends `action-${infer Action}`
    ? Action
    : never
  : never;

/** What a command hands over for the journal. Mass, count and id only; never names or contact data. */
export interface EntryDraft {
  readonly action: JournalAction;
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
