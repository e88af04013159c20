import type { ChangedReading } from './changed-readings.js';
import type { Amounts } from './thread.js';

/** What of a bag may be in something; null: nothing can be. */
export type AmountsOrNone = Amounts | null;

/** A bag whose part in something a correction changes. */
export interface ChangedSource {
  readonly bagId: string;
  readonly bagNumber: string;
  readonly before: AmountsOrNone;
  readonly after: AmountsOrNone;
}

/** Bags and kilograms that change in something. */
interface ChangedContent {
  readonly sources: readonly ChangedSource[];
  /** The largest change of what any one bag must, likely does or can have in it. */
  readonly byGrams: number;
}

export interface ChangedLot extends ChangedContent {
  readonly lotId: string;
  readonly code: string;
  /** Its packs in the runs that are touched; 0: it is not there. */
  readonly packCountBefore: number;
  readonly packCountAfter: number;
}

export interface ChangedPallet extends ChangedContent {
  readonly palletId: string;
  readonly sscc: string;
  readonly status: string;
  /** It has left with a vehicle. */
  readonly isGone: boolean;
  readonly placeCode: string | null;
  readonly deliveryId: string | null;
  readonly deliveryNumber: string | null;
  readonly customerName: string | null;
  /** Run and packs, the first and the last. */
  readonly packsBefore: readonly string[];
  readonly packsAfter: readonly string[];
  readonly lotCodesBefore: readonly string[];
  readonly lotCodesAfter: readonly string[];
  readonly filmCodesBefore: readonly string[];
  readonly filmCodesAfter: readonly string[];
  /** Numbers of holds that cover it afterwards and did not before; and the other way round. */
  readonly heldBy: readonly string[];
  readonly freedOf: readonly string[];
}

export interface ChangedDelivery {
  readonly deliveryId: string;
  readonly number: string;
  readonly customerName: string;
  readonly isGone: boolean;
  readonly palletCount: number;
}

/** A hold that reaches other pallets afterwards, by their SSCC. */
export interface ChangedHold {
  readonly number: string;
  readonly reaches: readonly string[];
  readonly leaves: readonly string[];
}

/** A bulk bag that stands otherwise afterwards. */
export interface ChangedBag {
  readonly bagId: string;
  readonly number: string;
  readonly statusBefore: string | null;
  readonly statusAfter: string | null;
  readonly remainingGramsBefore: number;
  readonly remainingGramsAfter: number;
}

/** What a correction changes, before it is recorded. */
export interface Ripple {
  /** Sent back with the correction, it is refused where what it touches moved on since. */
  readonly mark: string;
  readonly lots: readonly ChangedLot[];
  readonly pallets: readonly ChangedPallet[];
  readonly deliveries: readonly ChangedDelivery[];
  readonly holds: readonly ChangedHold[];
  readonly bags: readonly ChangedBag[];
  /** Of coders whose clocks are taken to have stood otherwise; else empty. */
  readonly readings: readonly ChangedReading[];
  /** The largest change of any pallet or lot. */
  readonly byGrams: number;
}
