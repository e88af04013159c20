import { pourInto, type Composition } from '../plant-physics/composition.js';
import type { Minute } from './minutes.js';

/** Packs of a run between two counts, and the grams of each bag in them: what nobody in the plant can know. */
export interface TrueCell {
  readonly run: string;
  readonly fromCount: number;
  readonly toCount: number;
  /** The minutes in which they were filled. */
  readonly fromMinute: Minute;
  readonly untilMinute: Minute;
  /** What the coder printed on them, where all bear the same; else null. */
  readonly printed: string | null;
  readonly grams: Readonly<Record<string, number>>;
}

/** A bag (or bin) that was poured, whether or not anybody recorded it. */
export interface TruePour {
  readonly bag: string;
  readonly hopper: string;
  readonly fromMinute: Minute;
  readonly grams: number;
  readonly recorded: 'at-once' | 'late' | 'corrected' | 'one-of-several' | 'after-the-account';
}

/** All that truly happened to the sugar. */
export class TruthLedger {
  readonly cells: TrueCell[] = [];
  readonly pours: TruePour[] = [];
  /** Sugar that left otherwise: rejects, samples, spills, scrapings. */
  readonly elsewhere: Composition = new Map();
  /** Sugar that came back from rework bins. */
  readonly returned: Composition = new Map();
  /** What was still in the hoppers at the end. */
  readonly inside: Composition = new Map();

  lost(sugar: Composition): void {
    pourInto(this.elsewhere, sugar);
  }
}
