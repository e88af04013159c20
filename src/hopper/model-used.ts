import type { Instant } from '../platform/clock.js';
import type { ModelRow } from './flow-models.js';
import type { HopperPeriodFacts } from './hopper-periods.js';

/** What the *likely* amounts of one hopper period were reckoned by, with the trial that it rests on. */
export interface ModelUsed extends Pick<
  ModelRow,
  'kind' | 'trialId' | 'trialNumber' | 'zoneCount' | 'zoneCountStandard' | 'holdUpGrams' | 'holdUpStandardGrams'
> {
  readonly periodId: string;
  readonly periodNumber: number;
  readonly hopperId: string;
  readonly hopperCode: string;
  readonly likelyPermille: number;
  /** Since when it was in force; null: nobody had chosen. */
  readonly validFrom: Instant | null;
}

const nobodyChose = {
  kind: 'first-in-first-out',
  ...{ trialId: null, trialNumber: null, zoneCount: null, zoneCountStandard: null },
  ...{ holdUpGrams: null, holdUpStandardGrams: null, validFrom: null },
} as const;

export function modelUsed({ period, hopper, chosen }: HopperPeriodFacts): ModelUsed {
  const { kind, trialId, trialNumber, zoneCount, zoneCountStandard, holdUpGrams, holdUpStandardGrams, validFrom } =
    chosen ?? nobodyChose;
  return {
    ...{ periodId: period.id, periodNumber: period.number, hopperId: hopper.id, hopperCode: hopper.code },
    likelyPermille: hopper.likelyPermille,
    ...{ kind, trialId, trialNumber, zoneCount, zoneCountStandard, holdUpGrams, holdUpStandardGrams, validFrom },
  };
}
