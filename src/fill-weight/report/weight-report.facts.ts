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

/** What an hour's mean is: within, one that a chart rule points to, or beyond the control limits. */
export type HourMark = 'within' | 'signal' | 'beyond';

/** The means of the hours as single figures with their control limits, in micrograms. */
export interface PrintedHours {
  readonly nominal: number;
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
  /** In the order of time; the day stands where it begins. */
  readonly points: readonly {
    readonly day: string | null;
    readonly clock: string;
    readonly value: number;
    readonly mark: HourMark;
  }[];
  /** What the chart shows, and what its signals are. */
  readonly says: readonly string[];
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
  /** Null: packs of one hour or none; absent in reports of editions 1 and 2. */
  readonly hourChart?: PrintedHours | null;
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
