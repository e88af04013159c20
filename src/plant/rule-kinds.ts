/** The sets of rules that a site keeps, each kind with its own shape. */
export const ruleKinds = ['vehicle-check', 'tip-at-risk', 'tip-time-uncertainty', 'concession'] as const;

/** What is looked at on a vehicle before loading, in the order in which it is asked. */
export interface VehicleCheckRules {
  readonly checkPoints: readonly { readonly code: string; readonly text: string }[];
}

/** How much of the grades that are tipped at risk may wait for results at once, over the whole site. */
export interface TipAtRiskRules {
  readonly mostWaitingBagCount: number;
  readonly mostWaitingGrams: number;
}

/** How far a recorded time may be from what truly happened. The hopper has usual values where a site sets none. */
export interface TimeUncertaintyRules {
  /** A bag that is scanned where it hangs may have been opened so much before. */
  readonly scannedEarlierMinutes: number;
  /** A time that a person stated afterwards may be so much too late. */
  readonly statedEarlierMinutes: number;
  /** A bag drains for at most so long after its spout was opened, where nobody said when it was off. */
  readonly laterMinutes: number;
  /** A counter that a person read may have been read so much earlier or later than recorded. */
  readonly handCountMinutes: number;
}

/** How a concession is granted. Where a site sets none, one person's word is enough. */
export interface ConcessionRules {
  /** 1, or 2: then somebody else must stand behind it too. */
  readonly concessionPersonCount: number;
}
