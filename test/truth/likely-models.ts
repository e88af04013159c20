import { flowFirstInFirstOut, likelySourcesOf } from '../../src/core/hopper-flow/first-in-first-out.js';
import { orderLikely } from '../../src/core/hopper-flow/order-likely.js';
import type { LikelyModel } from './compare-likely.js';

/** Every flow model that a hopper can be set to, with the true flow that it describes. */
export const likelyModels: readonly LikelyModel[] = [
  {
    name: 'first in, first out',
    layOut: (period) => {
      const flow = flowFirstInFirstOut(orderLikely(period));
      return (exitIds) =>
        new Map(likelySourcesOf(flow, exitIds).sources.map(({ additionId, grams }) => [additionId, grams]));
    },
  },
];
