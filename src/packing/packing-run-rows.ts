import type { Instant } from '../platform/clock.js';
import type { CoderChange } from './coder-change.entity.js';
import type { FilmLot } from './film-lot.entity.js';
import type { PackCount } from './pack-count.entity.js';
import type { Removal } from './removal.entity.js';

/** A run with what is always asked of it. `packCount` is the last good count. */
export interface RunRow {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly lineName: string;
  readonly formatId: string;
  readonly formatCode: string;
  readonly formatName: string;
  /** 14 digits. */
  readonly gtin: string;
  readonly nominalGrams: number;
  readonly startedAt: Instant;
  /** Null while the run is open. */
  readonly closedAt: Instant | null;
  readonly packCount: number;
  readonly lastCountedAt: Instant;
}

export interface CountRow {
  readonly id: string;
  readonly runId: string;
  readonly packCount: number;
  readonly countedAt: Instant;
  readonly occasion: PackCount['occasion'];
}

/** A lot: a format with a code as printed, without its time of day. */
export interface LotRow {
  readonly id: string;
  readonly siteId: string;
  readonly formatId: string;
  readonly formatCode: string;
  readonly formatName: string;
  readonly gtin: string;
  readonly code: string;
  readonly searchCode: string;
}

/** A half-open range of a run's cumulative count. `toCount` null: still going on. */
export interface RunCounts {
  readonly runId: string;
  readonly fromCount: number;
  readonly toCount: number | null;
}

/** The packs of a run that carry one code. */
export interface LotRange extends RunCounts {
  readonly changeId: string;
  readonly lotId: string;
  readonly code: string;
  readonly changedAt: Instant;
  readonly intendedCode: CoderChange['intendedCode'];
  readonly isAsIntended: boolean;
}

/** The packs of a run that were packed with one lot of film, label or glue. */
export interface FilmRange extends RunCounts {
  readonly useId: string;
  readonly filmLotId: string;
  readonly code: string;
  readonly kind: FilmLot['kind'];
  readonly fittedAt: Instant;
}

export interface FilmLotRow {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly supplierCode: string;
  readonly kind: FilmLot['kind'];
}

/** A stop of a line. `startedAgainAt` null: the line still stands, or stood until the run was closed. */
export interface StopRow {
  readonly id: string;
  readonly runId: string;
  readonly reason: string;
  readonly stoppedAt: Instant;
  readonly startedAgainAt: Instant | null;
}

export interface LooseCountRow {
  readonly id: string;
  readonly runId: string;
  readonly packCount: number;
  readonly countedAt: Instant;
}

/** Sugar that left otherwise than in accepted packs. */
export interface RemovalRow {
  readonly id: string;
  readonly siteId: string;
  readonly kind: Removal['kind'];
  readonly runId: string | null;
  readonly lineId: string | null;
  readonly hopperId: string | null;
  readonly packCount: number | null;
  /** Weighed, or (where `scaleId` is null) count times nominal quantity: readers who know the mean take count times mean. */
  readonly grams: number;
  readonly scaleId: string | null;
  /** The scale's maximum permissible error; null where nothing was weighed. */
  readonly scaleErrorMilligrams: number | null;
  readonly reason: string;
  readonly fate: Removal['fate'];
  readonly removedAt: Instant;
}
