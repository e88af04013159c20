import type { Instant } from '../platform/clock.js';
import type { Language } from '../platform/sentences/language.js';

/** The rows of the plant as other rooms read them. */
export interface SiteRow {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly timeZone: string;
  readonly productionDayStart: string;
  readonly gln: string;
  readonly companyPrefix: string;
  readonly ssccExtensionDigit: number;
  /** Of papers that go to no customer. */
  readonly paperLanguage: Language;
}

/** A thing of the plant that has a code and a name and no more. */
export interface NamedRow {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly name: string;
}

export interface HopperRow extends NamedRow {
  readonly capacityGrams: number;
  readonly flowModel: string;
  readonly likelyPermille: number;
}

export type TippingRule = 'released-only' | 'tip-at-risk';

export interface GradeRow extends NamedRow {
  readonly tippingRule: TippingRule;
}

export interface FormatRow extends NamedRow {
  readonly gtin: string;
  readonly nominalGrams: number;
  readonly assumedLowerMilligrams: number;
  readonly assumedUpperMilligrams: number;
  readonly packTareGrams: number;
  readonly packsPerPallet: number;
  readonly palletTareGrams: number;
  readonly codePattern: string;
  readonly bestBeforeMonths: number | null;
}

export interface CoderRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly code: string;
}

/** How far a coder's clock is ahead of the plant's, and how surely that is known. */
export interface CoderClockReading {
  readonly offsetSeconds: number;
  readonly uncertaintySeconds: number;
}

export interface ScaleRow extends NamedRow {
  readonly intervalMilligrams: number;
  readonly maximumPermissibleErrorMilligrams: number;
  readonly checkEveryHours: number;
}

/** What a scale is good for at an instant. */
export interface ScaleStanding {
  readonly scale: ScaleRow;
  readonly lastCheckedAt: Instant | null;
  /** From this instant on it is overdue; null where it was never checked. */
  readonly dueAt: Instant | null;
  /** Never checked, or not since longer than its interval. */
  readonly isOverdue: boolean;
  /** The last check found it out of its permissible error. */
  readonly hasFailed: boolean;
  /** The last day of the verification that counts; null where it was never verified. */
  readonly verifiedUntilOn: string | null;
  /** Goods may be sold by its weight on this day of the plant's calendar. */
  readonly isVerifiedForTrade: boolean;
}

/** A customer; name, address and telephone are null once they have been removed. */
export interface CustomerRow {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly gln: string | null;
  readonly name: string | null;
  readonly address: string | null;
  readonly telephone: string | null;
  /** Of papers for the customer; null: as the site’s. */
  readonly paperLanguage: Language | null;
}

export interface PlaceRow {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly kind: 'store' | 'dock' | 'line';
}

/** A stretch of time in which a line is fed by a hopper; `untilAt` null: still so. */
export interface LinePeriod {
  readonly lineId: string;
  readonly fromAt: Instant;
  readonly untilAt: Instant | null;
}
