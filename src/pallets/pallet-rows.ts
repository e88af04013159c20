import type { Instant } from '../platform/clock.js';
import type { RunRange } from '../packing/run-ranges.js';
import type { PalletDescent } from './pallet-descent.entity.js';

export const palletStatuses = ['in-store', 'loaded', 'dispatched', 'returned', 'destroyed', 'taken-apart'] as const;
export type PalletStatus = (typeof palletStatuses)[number];

/** A pallet with its format and where it is. */
export interface PalletRow {
  readonly id: string;
  readonly siteId: string;
  readonly sscc: string;
  readonly formatId: string;
  readonly formatCode: string;
  readonly formatName: string;
  /** 14 digits. */
  readonly gtin: string;
  readonly nominalGrams: number;
  readonly packTareGrams: number;
  readonly palletTareGrams: number;
  readonly builtAt: Instant;
  readonly packCount: number;
  readonly isFull: boolean;
  readonly status: PalletStatus;
  /** A store place (of what came back, too); a delivery while loaded or dispatched; null where nobody said. */
  readonly placeId: string | null;
  readonly changedAt: Instant;
}

/** Packs of one lot on a pallet. */
export interface ContentRow extends RunRange {
  readonly palletId: string;
  readonly runNumber: string;
  readonly lotId: string;
  /** As printed. */
  readonly lotCode: string;
}

/** Packs of a range that are on a pallet, or may be: after a split nobody knows which packs went where. */
export interface PalletOfRange extends RunRange {
  readonly palletId: string;
  readonly isCertain: boolean;
}

export interface DescentRow {
  readonly parentId: string;
  readonly parentSscc: string;
  readonly childId: string;
  readonly childSscc: string;
  readonly how: PalletDescent['how'];
  readonly happenedAt: Instant;
}

/** What the packs on a pallet are declared to weigh: count times nominal quantity. */
export function declaredNetGrams(pallet: Pick<PalletRow, 'nominalGrams'>, packCount: number): number {
  return packCount * pallet.nominalGrams;
}

/** Net as declared, wrapping of the packs and the pallet itself: computed, not weighed. */
export function computedGrossGrams(pallet: PalletRow): number {
  return pallet.packCount * (pallet.nominalGrams + pallet.packTareGrams) + pallet.palletTareGrams;
}
