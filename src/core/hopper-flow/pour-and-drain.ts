import type { HopperPeriod } from './hopper-event.js';
import type { LikelyFlow } from './likely-flow.js';
import { flowThroughStirredZones } from './stirred-zones.js';

/**
 * Pour and drain: each bag is poured on the heel and mixed with all of it, and what leaves until the next bag has that
 * composition. It changes only at a pour, so no number has to be known but the records.
 *
 * It is one stirred zone that is never full: of a bag of B g on a heel of H g the share (1 − r)·rᵏ, r = H/(H + B), is in
 * what leaves after the k-th pour that follows, when it is drained to H each time.
 * @param period in the likely order (`orderLikely`)
 * @returns exact up to rounding, as `flowThroughStirredZones`
 * @throws RangeError when a mass is not whole grams in order or an id stands twice
 * @see quality.md section 4.3 (dump and drain)
 * @example
 * flowPourAndDrain({ capacityGrams: null, events: [
 *   { kind: 'addition', id: 'heel', mass: exactMass(300) }, { kind: 'addition', id: 'bag', mass: exactMass(1000) },
 *   { kind: 'exit', id: 'packs', mass: exactMass(1000) } ] })
 *   .compositionOf('packs').sources // [{ additionId: 'heel', grams: 230.76… }, { additionId: 'bag', grams: 769.23… }]
 */
export function flowPourAndDrain(period: HopperPeriod): LikelyFlow {
  return flowThroughStirredZones(period, { zoneCount: 1, holdUpGrams: Infinity });
}
