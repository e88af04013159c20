import type { HopperPeriod } from './hopper-event.js';
import { flowFirstInFirstOut } from './first-in-first-out.js';
import type { LikelyFlow } from './likely-flow.js';
import { flowPourAndDrain } from './pour-and-drain.js';
import { flowThroughStirredZones, type StirredZones } from './stirred-zones.js';

/** The trial that the numbers of stirred zones came from. */
export interface ZonesOrigin {
  /** Names the trial's record; never empty. */
  readonly trialId: string;
  /** Standard uncertainties of what the trial found; above 0. */
  readonly holdUpStandardGrams: number;
  readonly zoneCountStandard: number;
}

/**
 * How a hopper is taken to flow, with its numbers and where they came from: what is stored and printed with every
 * *likely* amount. It never narrows what is possible.
 */
export type FlowModel =
  | { readonly kind: 'first-in-first-out' }
  | { readonly kind: 'pour-and-drain' }
  | { readonly kind: 'stirred-zones'; readonly zones: StirredZones; readonly origin: ZonesOrigin };

/** What a hopper is taken for until somebody chooses. */
export const defaultFlowModel: FlowModel = { kind: 'first-in-first-out' };

/**
 * A hopper period by the hopper's flow model.
 * @param period in the likely order (`orderLikely`)
 * @returns both closures hold for every model: each exit is explained in full, each addition found again
 * @throws RangeError when a mass is not whole grams in order, an id stands twice, or stirred zones come without a trial:
 * hold-up and number of zones can't be guessed
 * @see design.md 2.1
 * @example flowByModel({ capacityGrams: null, events: [] }, { kind: 'pour-and-drain' }).exitIds // []
 */
export function flowByModel(period: HopperPeriod, model: FlowModel): LikelyFlow {
  switch (model.kind) {
    case 'first-in-first-out':
      return flowFirstInFirstOut(period);
    case 'pour-and-drain':
      return flowPourAndDrain(period);
    case 'stirred-zones':
      assertOrigin(model.origin);
      return flowThroughStirredZones(period, model.zones);
  }
}

function assertOrigin({ trialId, holdUpStandardGrams, zoneCountStandard }: ZonesOrigin): void {
  if (trialId.trim() === '') throw new RangeError('Stirred zones need the trial that their numbers came from');
  if (!(holdUpStandardGrams > 0 && zoneCountStandard > 0)) {
    throw new RangeError(
      'A trial leaves a doubt about hold-up and number of zones; without it the numbers are a guess',
    );
  }
}
