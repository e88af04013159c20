import { namesOf } from '../people/people.js';
import type { HopperRow } from '../plant/plant-rows.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { modelsOfHopper, type ModelRow } from './flow-models.js';
import { hopperOfSite } from './hopper-views.js';
import { trialsOfHopper, type FittedTrial } from './tracer-trials.js';

/** How a hopper is taken to flow, and on what. */
export interface FlowView {
  readonly hopper: HopperRow;
  /** The last first; none: first in, first out since ever. */
  readonly models: readonly ModelRow[];
  readonly trials: readonly FittedTrial[];
}

/** @throws {NotFound} `hopper` */
export async function readFlowView(from: ReadFrom, siteId: string, hopperId: string): Promise<FlowView> {
  const hopper = await hopperOfSite(from, siteId, hopperId);
  return {
    hopper,
    models: await modelsOfHopper(from, hopper.id),
    trials: await trialsOfHopper(from, hopper.id),
  };
}

/** Names of those who made the trials and chose the models. */
export function namesInFlow(from: ReadFrom, { models, trials }: FlowView): Promise<ReadonlyMap<string, string>> {
  const people = [...models.map(({ personId }) => personId), ...trials.map(({ trial }) => trial.personId)];
  return namesOf(
    from,
    people.flatMap((one) => one ?? []),
  );
}
