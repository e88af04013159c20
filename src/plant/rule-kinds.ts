/** The sets of rules that a site keeps, each kind with its own shape. */
export const ruleKinds = ['vehicle-check', 'tip-at-risk'] as const;
export type RuleKind = (typeof ruleKinds)[number];

/** What is looked at on a vehicle before loading: codes of the points, in the order in which they are asked. */
export interface VehicleCheckRules {
  readonly checkPoints: readonly string[];
}

/** How much of a grade that is tipped at risk may wait for its results at once, over all hoppers. */
export interface TipAtRiskRules {
  readonly mostWaitingBagCount: number;
  readonly mostWaitingGrams: number;
}
