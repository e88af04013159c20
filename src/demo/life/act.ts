import type { Instant } from '../../platform/clock.js';
import type { FormatCode, GradeCode } from './demo-plan.js';
import type { CheckStation } from './check-stations.js';

/** Who does it: a person of the demo by their part, or the counter of the lines. */
export type Doer =
  | 'dryer-operator'
  | 'lead-M'
  | 'lead-A'
  | 'lead-N'
  | 'analyst'
  | 'quality'
  | 'clerk'
  | 'loader'
  | 'manager'
  | 'counter';

/** A load of one bag as its scale showed it. */
export interface ShownLoad {
  readonly grossGrams: number;
  readonly tareGrams: number;
}

export type RunSpan = { readonly run: string; readonly fromCount: number; readonly toCount: number };

/** The acts of the dryers: bags are known by the demo's own keys, the house gives them their numbers. */
export type DryingAct =
  | {
      readonly kind: 'stock-bags';
      readonly grade: GradeCode;
      readonly bags: readonly (ShownLoad & { readonly bag: string })[];
    }
  | { readonly kind: 'start-dryer-run'; readonly run: string; readonly dryer: string; readonly grade: GradeCode }
  | { readonly kind: 'end-dryer-run'; readonly run: string }
  | { readonly kind: 'start-bag'; readonly bag: string; readonly run: string; readonly startedAt: Instant }
  | ({
      readonly kind: 'close-bag';
      readonly bag: string;
      readonly scale: 'S1' | 'S2';
      readonly filledAt: Instant;
    } & ShownLoad)
  | ({ readonly kind: 'correct-weighing'; readonly bag: string; readonly reason: string } & ShownLoad);

export type LaboratoryAct =
  | {
      readonly kind: 'sample-hour';
      readonly sample: string;
      readonly dryer: string;
      readonly fromAt: Instant;
      readonly untilAt: Instant;
    }
  | { readonly kind: 'sample-bag'; readonly sample: string; readonly bag: string; readonly takenAt: Instant }
  | {
      readonly kind: 'report';
      readonly sample: string;
      readonly grade: GradeCode;
      readonly property: 'moisture-percent' | 'colour-iu';
      readonly amount: string;
      readonly isRetest: boolean;
      readonly analysedAt: Instant;
    };

export type QualityAct =
  | { readonly kind: 'release-bags'; readonly bags: readonly string[] }
  | { readonly kind: 'reject-bag'; readonly bag: string; readonly reason: string }
  | { readonly kind: 'concede-bag'; readonly bag: string; readonly reason: string }
  | { readonly kind: 'downgrade-bag'; readonly bag: string; readonly grade: GradeCode; readonly reason: string }
  | { readonly kind: 'hold-bag'; readonly hold: string; readonly bag: string; readonly reason: string }
  | { readonly kind: 'hold-lot'; readonly hold: string; readonly run: string; readonly reason: string }
  | {
      readonly kind: 'class-hold';
      readonly hold: string;
      readonly hazard: 'quality' | 'safety';
      readonly reason: string;
    }
  | { readonly kind: 'lift-hold'; readonly hold: string; readonly reason: string };

export type HopperAct =
  | {
      readonly kind: 'tip-bag';
      readonly tip: string;
      readonly hopper: string;
      readonly bag: string;
      readonly openedAt: Instant;
      /** Why it comes late; null: scanned where it hangs. */
      readonly lateReason: string | null;
    }
  | {
      readonly kind: 'tip-one-of';
      readonly tip: string;
      readonly hopper: string;
      readonly bags: readonly string[];
      readonly openedAt: Instant;
    }
  | { readonly kind: 'settle-candidate'; readonly tip: string; readonly bag: string; readonly reason: string }
  | { readonly kind: 'correct-tip'; readonly tip: string; readonly bag: string; readonly reason: string }
  | {
      readonly kind: 'bag-off';
      readonly tip: string;
      readonly offAt: Instant;
      readonly lateReason: string | null;
      /** What was weighed back; null: it is empty. */
      readonly rest: ShownLoad | null;
    }
  | {
      readonly kind: 'tip-bin';
      readonly tip: string;
      readonly hopper: string;
      readonly bin: string;
      readonly openedAt: Instant;
    }
  | {
      readonly kind: 'close-bin';
      readonly bin: string;
      readonly netGrams: number;
      readonly parents: readonly RunSpan[];
    }
  | {
      readonly kind: 'see-level';
      readonly hopper: string;
      readonly lowerGrams: number;
      readonly upperGrams: number;
      readonly seenAt: Instant;
    }
  | { readonly kind: 'run-down'; readonly hopper: string; readonly upperGrams: number; readonly seenAt: Instant }
  | {
      readonly kind: 'prove-empty';
      readonly hopper: string;
      readonly residueGrams: number;
      readonly residueUpperGrams: number;
      readonly provenAt: Instant;
    }
  | {
      readonly kind: 'start-run';
      readonly run: string;
      readonly line: string;
      readonly format: FormatCode;
      readonly startedAt: Instant;
    };

export type LineAct =
  | {
      readonly kind: 'count';
      readonly run: string;
      readonly packCount: number;
      readonly countedAt: Instant;
      readonly occasion: 'minute';
    }
  | {
      readonly kind: 'print-code';
      readonly run: string;
      readonly code: string;
      readonly packCount: number;
      readonly changedAt: Instant;
    }
  | {
      readonly kind: 'fit-film';
      readonly run: string;
      readonly film: string;
      readonly packCount: number;
      readonly fittedAt: Instant;
    }
  | {
      readonly kind: 'stop-line';
      readonly stop: string;
      readonly run: string;
      readonly reason: StopWord;
      readonly packCount: number;
      readonly stoppedAt: Instant;
    }
  | { readonly kind: 'start-again'; readonly stop: string; readonly at: Instant }
  | {
      readonly kind: 'remove';
      readonly what: 'reject' | 'sample' | 'sweepings';
      readonly line: string;
      readonly packCount: number | null;
      readonly netGrams: number;
      readonly reason: 'underweight' | 'retained' | 'floor' | 'machine';
      readonly fate: 'rework' | 'waste' | 'retained';
      readonly removedAt: Instant;
    }
  | {
      readonly kind: 'close-run';
      readonly run: string;
      readonly packCount: number;
      readonly loosePackCount: number;
      readonly closedAt: Instant;
    }
  | {
      readonly kind: 'weigh-packs';
      readonly run: string;
      readonly netDecigrams: readonly number[];
      readonly weighedAt: Instant;
    }
  | {
      readonly kind: 'set-coder-clock';
      readonly line: string;
      readonly offsetSeconds: number;
      readonly validFrom: Instant;
      readonly reason: string | null;
    }
  | { readonly kind: 'check-scales' }
  | {
      readonly kind: 'check-line';
      readonly line: string;
      readonly station: CheckStation;
      readonly passed: boolean;
      readonly packCount: number | null;
      readonly readCode: string | null;
      readonly checkedAt: Instant;
    }
  | { readonly kind: 'hold-since-good'; readonly hold: string; readonly line: string }
  | {
      readonly kind: 'hand-over';
      readonly line: string;
      readonly loosePackCount: number;
      readonly packCount: number;
      /** Null: there is no incoming lead yet; the next one confirms when opening the line. */
      readonly incoming: Doer | null;
    }
  | { readonly kind: 'open-line'; readonly line: string };

export type StopWord = 'jam' | 'film-change' | 'no-product' | 'no-pallets' | 'seal' | 'cleaning';

export type PalletAct =
  | {
      readonly kind: 'build-pallet';
      readonly pallet: string;
      readonly ranges: readonly RunSpan[];
      readonly builtAt: Instant;
      readonly hasLabel: boolean;
    }
  | { readonly kind: 'scan-back'; readonly pallet: string }
  | { readonly kind: 'move-pallet'; readonly pallet: string; readonly place: string }
  | {
      readonly kind: 'split-pallet';
      readonly pallet: string;
      readonly parts: readonly [string, string];
      readonly packCounts: readonly [number, number];
    };

/** Which pallets go the office picks by what the house shows it, so these acts name none. */
export type DispatchAct =
  | {
      readonly kind: 'plan-delivery';
      readonly delivery: string;
      readonly customer: number;
      readonly format: FormatCode;
      readonly most: number;
    }
  | {
      readonly kind: 'plan-bag-sale';
      readonly delivery: string;
      readonly customer: number;
      readonly grade: GradeCode;
      readonly bagCount: number;
    }
  | {
      readonly kind: 'check-vehicle';
      readonly delivery: string;
      readonly registration: string;
      readonly haulier: string;
    }
  | { readonly kind: 'load-next'; readonly delivery: string }
  | { readonly kind: 'load-bag'; readonly delivery: string; readonly bag: string }
  | { readonly kind: 'hold-loaded'; readonly delivery: string; readonly hold: string }
  | { readonly kind: 'count-blind'; readonly delivery: string; readonly isMiscounted: boolean }
  | { readonly kind: 'close-delivery'; readonly delivery: string; readonly seal: string }
  | { readonly kind: 'vehicle-leaves'; readonly delivery: string }
  /** The last of its pallets comes back. */
  | { readonly kind: 'take-back'; readonly delivery: string }
  | { readonly kind: 'decide-return'; readonly delivery: string };

export type AccountAct = {
  readonly kind: 'sign-account';
  readonly hopper: string;
  readonly fromAt: Instant;
  readonly untilAt: Instant;
};

/** Packs as a weigher sends them, in columns of the same length. */
export interface SentPacks {
  readonly sequences: Float64Array;
  readonly atCentiseconds: Float64Array;
  readonly netMilligrams: Int32Array;
  readonly heads: Uint8Array;
  readonly isRejected: Uint8Array;
}

export type WeighingAct =
  | { readonly kind: 'send-weights'; readonly line: string; readonly run: string; readonly packs: SentPacks }
  | {
      readonly kind: 'correct-tare';
      readonly line: string;
      readonly run: string;
      readonly fromSequence: number;
      readonly toSequence: number;
      readonly addedMilligrams: number;
      readonly reason: string;
    };

export type Act =
  DryingAct | LaboratoryAct | QualityAct | HopperAct | LineAct | WeighingAct | PalletAct | DispatchAct | AccountAct;

/** An act with the time at which it is recorded. */
export interface TimedAct {
  readonly at: Instant;
  readonly by: Doer;
  readonly act: Act;
}
