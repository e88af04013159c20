import type { RecallAmounts } from '../core/recall-sums/recall-balance.js';
import type { Ribbons } from '../tracing/ribbons.js';
import type { LineEvent } from '../tracing/thread.js';
import type { RecallLink } from './recall-links.js';
import type { RecallRecord } from './recall-records.js';
import type { RecallPlace } from './recall-units.js';
import type { RecallKind, RecallSureness } from './recall-words.js';

/** A balance as printed: whole packs or milligrams, the share as text. */
export interface PrintedBalance extends RecallAmounts {
  readonly found: number;
  readonly unaccounted: number;
  readonly accountedPercent: string | null;
}

/** A picture of the report, with its period's time as local text. */
export interface RecallRibbons extends Ribbons {
  readonly startedAtLocal: string;
}

/** What a recall report says, frozen when it was signed. Times are local text already: a paper never moves. */
export interface RecallReportFacts {
  readonly number: string;
  readonly kind: RecallKind;
  readonly siteName: string;
  readonly hazard: 'safety' | 'quality';
  readonly reason: string;
  readonly sureness: RecallSureness;
  readonly surenessReason: string | null;
  readonly scopes: readonly string[];
  readonly startedAtLocal: string;
  readonly customersListedAtLocal: string | null;
  readonly stockBlockedAtLocal: string | null;
  readonly stoppedAtLocal: string;
  readonly tookSeconds: number;
  readonly packs: PrintedBalance;
  readonly milligrams: PrintedBalance;
  readonly hasAssumed: boolean;
  readonly recoveryPercent: string | null;
  readonly closedOutPercent: string | null;
  readonly overRecall: string | null;
  readonly respondedCount: number;
  readonly places: readonly {
    readonly place: RecallPlace;
    readonly name: string | null;
    readonly unitCount: number;
    readonly packCount: number;
  }[];
  readonly customers: readonly {
    readonly code: string;
    readonly name: string | null;
    readonly telephone: string | null;
    readonly deliveries: string;
    readonly lots: string;
    readonly palletCount: number;
    readonly packCount: number;
    readonly closedPackCount: number;
  }[];
  /** Absent in reports of the first edition, which had no picture. */
  readonly ribbons?: readonly RecallRibbons[];
  /** How many hopper periods have no picture; absent before the third edition. */
  readonly ribbonsLeftOut?: number;
  readonly bags: readonly Pick<RecallLink, 'parent' | 'child' | 'leastGrams' | 'likelyGrams' | 'mostGrams' | 'word'>[];
  readonly events: readonly (Pick<LineEvent, 'kind' | 'says' | 'grams'> & { readonly atLocal: string })[];
  readonly corrections: readonly {
    readonly sequence: number;
    readonly action: string;
    readonly occurredAtLocal: string;
    readonly recordedAtLocal: string;
  }[];
  readonly records: readonly RecallRecord[];
  readonly explanation: string | null;
  readonly openedBy: string | null;
  readonly signedBy: string | null;
  readonly signedAtLocal: string;
  readonly contentHash: string;
  readonly journalHead: string;
}
