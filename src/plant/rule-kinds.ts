/** The sets of rules that a site keeps, each kind with its own shape. */
export const ruleKinds = ['vehicle-check', 'tip-at-risk'] as const;
export type RuleKind = (typeof ruleKinds)[number];

/** What is looked at on a vehicle before loading, in the order in which it is asked. */
export interface VehicleCheckRules {
  readonly checkPoints: readonly { readonly code: string; readonly text: string }[];
}

/** How much of the grades that are tipped at risk may wait for results at once, over the whole site. */
export interface TipAtRiskRules {
  readonly mostWaitingBagCount: number;
  readonly mostWaitingGrams: number;
}
