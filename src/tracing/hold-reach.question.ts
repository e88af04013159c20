import type { HoldPart, HoldScope } from '../disposition/standings.js';
import type { HeavyQuestion } from '../platform/database/heavy-question.js';
import { reachOfHold } from './hold-reach.js';
import { settleScope } from './hold-scope.js';

/** What a hold would cover that is thought of by somebody of a site. */
export const question: HeavyQuestion<{ readonly siteId: string; readonly form: HoldScope & Partial<HoldPart> }> = {
  url: import.meta.url,
  answer: async (from, { siteId, form }) =>
    JSON.stringify(await reachOfHold(from, await settleScope(from, siteId, form))),
};
