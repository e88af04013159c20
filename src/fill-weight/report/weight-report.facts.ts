import type { Language } from '../../platform/sentences/language.js';

/** A rule as it was judged, in words. */
interface PrintedRule {
  readonly rule: string;
  readonly verdict: string;
  readonly says: string;
  readonly notes: readonly string[];
  readonly source: string;
}

/** A market's verdict, in one line and rule by rule. */
export interface PrintedMarket {
  readonly market: string;
  readonly overall: string;
  readonly ruleSets: readonly { readonly title: string; readonly rules: readonly PrintedRule[] }[];
}

/** How many packs lie in a stretch of grams. Milligrams; the end is not included. */
export interface PrintedBin {
  readonly from: number;
  readonly until: number;
  readonly count: number;
}

/** Limits drawn through the histogram, in milligrams. */
export interface PrintedLimits {
  readonly nominal: number;
  readonly t1: number | null;
  readonly t2: number | null;
  readonly mean: number;
}

/** What a weight report says, frozen when it was issued. Texts are in the language of the paper. */
export interface WeightReportFacts {
  readonly language: Language;
  readonly siteName: string;
  readonly gln: string | null;
  readonly runNumber: string;
  readonly isOpen: boolean;
  readonly issuedAtLocal: string;
  readonly issuedBy: string | null;
  /** The verdict in one line. */
  readonly verdict: string;
  /** Line, format, lots, times, scales, tare: each a name and what is so. */
  readonly about: readonly { readonly name: string; readonly says: string }[];
  readonly counts: readonly { readonly name: string; readonly says: string }[];
  readonly markets: readonly PrintedMarket[];
  readonly bins: readonly PrintedBin[];
  readonly limits: PrintedLimits | null;
  readonly hours: readonly { readonly cells: readonly string[] }[];
  readonly shortPacks: readonly { readonly cells: readonly string[] }[];
  readonly shortPackCount: number;
  /** What the line was set to, each in a sentence; absent in reports of edition 1. */
  readonly settings?: readonly string[];
  /** Tares that were found wrong later, each in a sentence. */
  readonly tareCorrections: readonly string[];
  /** What was dropped or is damaged, in sentences. */
  readonly unreadable: readonly string[];
  readonly damagedBlocks: readonly { readonly cells: readonly string[] }[];
}
