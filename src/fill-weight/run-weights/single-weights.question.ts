import type { Yardstick } from '../../core/weight-blocks/weight-summary.js';
import type { HeavyQuestion } from '../../platform/database/heavy-question.js';
import { readSingleWeights } from './single-weights.js';

/** What the single weights of a run say: hundreds of thousands are decoded for it. */
export const question: HeavyQuestion<{ readonly runId: string; readonly yardstick: Yardstick }> = {
  url: import.meta.url,
  answer: async (from, { runId, yardstick }) => JSON.stringify(await readSingleWeights(from, runId, yardstick)),
};
