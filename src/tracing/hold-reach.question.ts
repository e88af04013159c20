import type { HoldPart, HoldScope } from '../disposition/standings.js';
import type { HeavyQuestion } from '../platform/database/heavy-question.js';
import { reachOfHold, type HoldReach } from './hold-reach.js';
import { settleScope } from './hold-scope.js';
import type { PalletLine } from './thread.js';

/** What a hold would cover that is thought of by somebody of a site. */
export const question: HeavyQuestion<{ readonly siteId: string; readonly form: HoldScope & Partial<HoldPart> }> = {
  url: import.meta.url,
  answer: async (from, { siteId, form }) => textOf(await reachOfHold(from, await settleScope(from, siteId, form))),
};

/** As `JSON.stringify` writes it; a pallet that stands in several lists, of hundreds, is written out once. */
function textOf({ possible, sureAndLikely, away, packCount, takenOut, againIds, bags }: HoldReach): string {
  const texts = new Map<PalletLine, string>();
  const line = (pallet: PalletLine): string => {
    const text = texts.get(pallet) ?? JSON.stringify(pallet);
    texts.set(pallet, text);
    return text;
  };
  const list = (pallets: readonly PalletLine[]): string => `[${pallets.map(line).join()}]`;
  const [all, likely, gone, out] = [possible, sureAndLikely, away, takenOut].map(list);
  const rest = JSON.stringify({ packCount });
  const last = JSON.stringify({ againIds, bags });
  return `{"possible":${all ?? ''},"sureAndLikely":${likely ?? ''},"away":${gone ?? ''},${inner(rest)},"takenOut":${out ?? ''},${inner(last)}}`;
}

/** What stands between the braces of an object. */
const inner = (text: string): string => text.slice(1, -1);
