import type { CalculatedQuality, QualityRefused } from '../core/sugar-analysis/expected-quality.js';
import type { ReturnedUnitRow } from '../dispatch/returns.js';
import type { BagResult } from '../laboratory/bag-results.js';
import type { RuledOutReason } from '../hopper/hopper-links.js';
import type { ModelUsed } from '../hopper/model-used.js';
import type { Instant } from '../platform/clock.js';
import type { RunRange } from '../packing/run-ranges.js';
import type { TimeWindow } from '../packing/ranges-in-time.js';
import type { PrintedTime } from './window-in-ranges.js';

/** The word for how surely: *sure* where least is above zero, and so on (`core/hopper-flow`). */
export type Word = 'sure' | 'likely' | 'possible';

/** Kilograms between what is sure and what is possible. */
export interface Amounts {
  readonly leastGrams: number;
  readonly likelyGrams: number;
  readonly mostGrams: number;
  readonly word: Word;
}

/** What a thread starts from. */
export const threadKinds = ['lot', 'bulk-bag', 'pallet', 'packing-run', 'delivery', 'film-lot', 'liner-lot'] as const;
export type ThreadKind = (typeof threadKinds)[number];

export interface ThreadSubject {
  readonly kind: ThreadKind;
  /** Of a liner lot: the lot itself, since bags name it and nothing else does. */
  readonly id: string;
  /** As people call it: the printed code, the short number, the SSCC. */
  readonly name: string;
  /** The time of day printed with a pack's code, `HH:mm`. */
  readonly localTime: string | null;
  /** Where the plant's clock showed that time more than once: which coming of it is meant; null: any of them. */
  readonly printedAt: Instant | null;
  /** For a code that was used again years later: only the packs coded within this time are meant. */
  readonly codedBetween: TimeWindow | null;
}

/** A production shift: the day it belongs to and its code. */
export interface ShiftName {
  readonly productionOn: string;
  readonly shiftCode: string;
}

/** Packs of one run with one code: where the subject was packed. */
export interface PackedPart extends RunRange {
  readonly runNumber: string;
  readonly lineCode: string;
  readonly formatName: string;
  readonly lotId: string | null;
  readonly lotCode: string | null;
  readonly when: TimeWindow | null;
  /** One shift, or two at a change. */
  readonly packingShifts: readonly ShiftName[];
}

/** A bag whose sugar is in the subject, and what is known of it. */
export interface SourceLine extends Amounts {
  readonly bagId: string;
  readonly bagNumber: string;
  readonly sscc: string;
  readonly netGrams: number | null;
  readonly dryerCode: string | null;
  readonly dryerShift: ShiftName | null;
  readonly filledAt: string | null;
  readonly supplierLot: string | null;
  /** The samples with results that stand for it; the results themselves stand once in the thread. */
  readonly sampleIds: readonly string[];
  readonly decision: string;
  readonly isOnHold: boolean;
  readonly isDoubtful: boolean;
}

/** A pallet that may hold sugar of the same bags (or of the bag asked for). */
export interface PalletLine extends Amounts {
  readonly palletId: string;
  readonly sscc: string;
  readonly formatName: string;
  readonly lotCodes: readonly string[];
  readonly packCount: number;
  readonly status: string;
  readonly placeCode: string | null;
  readonly deliveryId: string | null;
  readonly deliveryNumber: string | null;
  readonly customerId: string | null;
  readonly customerName: string | null;
  /** Whether the subject itself stands on it, rather than other packs with the same sugar. */
  readonly isSubject: boolean;
}

/** A customer who got such pallets, or a bag whole. */
export interface CustomerLine {
  readonly customerId: string;
  readonly customerName: string;
  readonly deliveryNumbers: readonly string[];
  readonly palletCount: number;
  readonly packCount: number;
  readonly bagCount: number;
}

/** What a property of the subject should be by its likely bags: calculated, never a test; or why nothing is said. */
export type ExpectedQuality =
  | (Omit<CalculatedQuality, 'standard'> & {
      /** Null: too few samples were analysed again to know how far the method scatters. */
      readonly standard: number | null;
      /** From how many repeats that is known. */
      readonly repeatCount: number;
      /** To how many decimals the value is worth showing. */
      readonly decimals: number;
    })
  | QualityRefused;

/** What happened on the line near the subject. */
export interface LineEvent {
  readonly kind: 'stop' | 'reject' | 'sample' | 'sweepings' | 'film';
  readonly at: string;
  readonly says: string;
  readonly grams: number | null;
}

/** Bags of one hopper period that cannot be in the subject, all for the same reason: least and most are 0. */
export interface RuledOutLine {
  readonly hopperId: string;
  readonly hopperCode: string;
  readonly periodId: string;
  readonly periodNumber: number;
  /** `records-impossible`: the records of the period can't be true, so none of its bags is ruled out. */
  readonly reason: RuledOutReason | 'records-impossible';
  /** In the order in which they were tipped. */
  readonly bagNumbers: readonly string[];
  /** When the first and the last of them were tipped; null where there is none. */
  readonly firstTippedAt: Instant | null;
  readonly lastTippedAt: Instant | null;
}

/** The whole answer. */
export interface Thread {
  readonly subject: ThreadSubject;
  /** Where a printed time was asked for: by which coders' clocks it was read, and when that was. */
  readonly printedTimes: readonly PrintedTime[];
  readonly packed: readonly PackedPart[];
  readonly sources: readonly SourceLine[];
  /** The good results of all samples of the sources, in the order of analysis. */
  readonly results: readonly BagResult[];
  /** Bags of the same hopper periods that cannot be in it. */
  readonly ruledOut: readonly RuledOutLine[];
  /** Moisture, ash, colour and what else its bags were tested for; none of a bag, which has tests of its own. */
  readonly expected: readonly ExpectedQuality[];
  readonly dryerShifts: readonly (ShiftName & { readonly dryerCode: string; readonly bagCount: number })[];
  readonly pallets: readonly PalletLine[];
  readonly customers: readonly CustomerLine[];
  readonly lineEvents: readonly LineEvent[];
  /** What came back from customers: units that the thread reaches, and loose packs of its lots. */
  readonly returns: readonly ReturnedUnitRow[];
  /** The sugar of the subject by count times mean, and how sure that is. */
  readonly subjectGrams: { readonly lowerGrams: number; readonly grams: number; readonly upperGrams: number };
  /** How *likely* was reckoned, period by period, with the trial that each model rests on. */
  readonly models: readonly ModelUsed[];
  readonly readAt: string;
}
