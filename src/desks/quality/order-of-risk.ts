import type { Instant } from '../../platform/clock.js';
import type { SentenceFacts } from '../../platform/refusal.js';

/**
 * What waits for a decision of quality, from the greatest risk to the least: what may hurt people and is on its way
 * stands before what may hurt people, that before figures outside, these before what is about to become more, and the
 * release of what is as it should be comes last. The order is common practice, no source.
 */
export const risks = [
  'safety-hold-away',
  'safety-hold-without-class',
  'result-outside-used',
  'result-outside',
  'tipped-at-risk',
  'next-at-risk',
  'point',
  'already-in',
  'to-release',
  'open-hold',
] as const;
export type Risk = (typeof risks)[number];

/** One thing to decide: a sentence and one act. */
export interface DeskItem {
  readonly key: string;
  readonly risk: Risk;
  /** Since when it waits. */
  readonly since: Instant;
  readonly sentence: { readonly code: string; readonly facts: SentenceFacts };
  readonly act: { readonly code: string; readonly href: string };
  /** Under whom it is listed, where it is one person's. */
  readonly personId: string | null;
}

/** An open hold as its risk is told. */
export interface HoldAtRisk {
  /** Null: nobody has set its class, so it counts as safety. */
  readonly hazardSet: 'safety' | 'quality' | null;
  /** Pallets and bags that it reaches which have left, or stand on a vehicle. */
  readonly awayCount: number;
  readonly onVehicleCount: number;
}

export function riskOfHold({ hazardSet, awayCount, onVehicleCount }: HoldAtRisk): Risk {
  const isSafety = hazardSet !== 'quality';
  if (isSafety && awayCount + onVehicleCount > 0) return 'safety-hold-away';
  return hazardSet === null ? 'safety-hold-without-class' : 'open-hold';
}

/** A waiting bag as its risk is told. */
export interface BagAtRisk {
  readonly laboratory: 'complete-and-within' | 'outside' | 'incomplete';
  /** Sugar of it is in a hopper or in packs. */
  readonly isUsed: boolean;
  /** Its grade is tipped at risk. */
  readonly isTippedAtRisk: boolean;
}

/** Null: nothing is to be decided yet, it waits for the laboratory and nobody may tip it. */
export function riskOfBag({ laboratory, isUsed, isTippedAtRisk }: BagAtRisk): Risk | null {
  if (laboratory === 'outside') return isUsed ? 'result-outside-used' : 'result-outside';
  if (laboratory === 'complete-and-within') return 'to-release';
  if (isUsed) return 'tipped-at-risk';
  return isTippedAtRisk ? 'next-at-risk' : null;
}

/** The items of one risk, the oldest first, and how many more there are than are shown. */
export interface RiskGroup {
  readonly risk: Risk;
  readonly items: readonly DeskItem[];
  readonly moreCount: number;
}

/** In the order of risk, the oldest first within each; of each risk not more than a person can look at. */
export function inOrderOfRisk(items: readonly DeskItem[], mostOfEach: number): readonly RiskGroup[] {
  return risks.flatMap((risk) => {
    const own = items
      .filter((item) => item.risk === risk)
      .sort((one, other) => (one.since + one.key < other.since + other.key ? -1 : 1));
    return own.length === 0
      ? []
      : [{ risk, items: own.slice(0, mostOfEach), moreCount: Math.max(0, own.length - mostOfEach) }];
  });
}
