import type { Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { HeavyQuestion } from '../../platform/database/heavy-question.js';
import { readSingleWeights } from './single-weights.js';

/** The run, and what its weights are held against. */
export interface AskedWeights {
  readonly runId: string;
  readonly yardstick: Yardstick;
}

/** What the single weights of a run say: hundreds of thousands are decoded for it. */
export const question: HeavyQuestion<AskedWeights> = {
  url: import.meta.url,
  answer: async (from, { runId, yardstick }) => JSON.stringify(await readSingleWeights(from, runId, yardstick)),
};
