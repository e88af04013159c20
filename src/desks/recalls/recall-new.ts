import { packsIn } from '../../packing/run-ranges.js';
import { Refusal } from '../../platform/refusal.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { figuresOfText, textOfFigures, type FiguresOfText } from '../../recalls/frozen-figures.js';
import { figuresOfScopes } from '../../recalls/recall-figures.js';
import { reachOfScopes } from '../../recalls/recall-reach.js';
import type { RecallScopeForm } from '../../recalls/recall.form.js';
import type { RecallScopeRow } from '../../recalls/recalls.js';
import { settleScope } from '../../recalls/settle-scope.js';
import { namesOfCustomers, type CustomerNames } from './customer-names.js';
import { namedScopes, type NamedScope } from './scope-key.js';

/** What a recall would cover, before it is opened: all that is possible. */
export interface RecallPreview {
  readonly scopes: readonly NamedScope[];
  readonly figures: FiguresOfText;
  readonly customerNames: CustomerNames;
  /** Packs of it that are sure and likely: what a recall for quality may be kept to. */
  readonly likelyPackCount: number;
}

/**
 * @throws {NotFound} where there is no such thing
 * @throws {Refusal} `recall-scope-empty`, `recall-time-not-usable`
 */
export async function previewRecall(
  from: ReadFrom,
  siteId: string,
  asked: readonly RecallScopeForm[],
): Promise<RecallPreview> {
  const scopes: RecallScopeRow[] = [];
  for (const scope of asked) scopes.push(await settleScope(from, siteId, scope));
  const figures = await figuresOfScopes(from, { siteId, scopes, sureness: 'possible' });
  const { ranges, bags } = figures.reach;
  if (ranges.length === 0 && bags.length === 0) throw new Refusal('recall-scope-empty');
  const likely = await reachOfScopes(from, siteId, scopes, 'likely');
  return {
    scopes: await namedScopes(from, scopes),
    figures: figuresOfText(textOfFigures(figures, [])),
    customerNames: await namesOfCustomers(from, figures.customers),
    likelyPackCount: packsIn(likely.ranges),
  };
}
