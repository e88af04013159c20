import type { HeavyQuestion } from '../platform/database/heavy-question.js';
import '../tracing/tracing.sentences.js';
import '../tracing/tracing.sentences.es.js';
import './recalls.sentences.js';
import './recalls.sentences.es.js';
import { figuresOfRecall, type RecallFigures } from './recall-figures.js';
import { findRecall, type RecallRow } from './recalls.js';

/** A recall with its sums, customers and units, as they stand now. */
type RecallWithFigures = RecallRow & { readonly figures: RecallFigures };

/** One recall of a site, with all that it adds up to. */
export const question: HeavyQuestion<{ readonly siteId: string; readonly recallId: string }> = {
  url: import.meta.url,
  answer: async (from, { siteId, recallId }) => {
    const recall = await findRecall(from, siteId, recallId);
    const answer: RecallWithFigures = { ...recall, figures: await figuresOfRecall(from, recall) };
    return JSON.stringify(answer);
  },
};
