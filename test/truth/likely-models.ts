import { flowByModel, type FlowModel } from '../../src/core/hopper-flow/flow-model.js';
import { likelySourcesOf } from '../../src/core/hopper-flow/likely-flow.js';
import { orderLikely } from '../../src/core/hopper-flow/order-likely.js';
import type { LikelyModel } from './compare-likely.js';

/** What a trial would have found is invented here: no true flow has such zones. */
const threeZones: FlowModel = {
  kind: 'stirred-zones',
  zones: { zoneCount: 3, holdUpGrams: 900_000 },
  origin: { trialId: 'invented', holdUpStandardGrams: 50_000, zoneCountStandard: 0.5 },
};

/** Every flow model that a hopper can be set to. */
export const likelyModels: readonly LikelyModel[] = [
  byModel('first in, first out', { kind: 'first-in-first-out' }),
  byModel('pour and drain', { kind: 'pour-and-drain' }),
  byModel('three stirred zones of 900 kg', threeZones),
];

function byModel(name: string, model: FlowModel): LikelyModel {
  return {
    name,
    layOut: (period) => {
      const flow = flowByModel(orderLikely(period), model);
      return (exitIds) =>
        new Map(likelySourcesOf(flow, exitIds).sources.map(({ additionId, grams }) => [additionId, grams]));
    },
  };
}
