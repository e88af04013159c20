import { findHold } from '../disposition/holds.js';
import type { Asked } from '../journal/entry-draft.js';
import { recordedBy } from '../journal/recorded-by.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SentenceFacts } from '../platform/refusal.js';
import type { BrokenRule } from './broken-rules.js';
import type { AtHopper } from './tipping-rules.js';

/**
 * Who tipped, where and when, and who had put the bag on hold and when: for the point about a tip that broke a rule.
 * People are named by their ids; whoever reads the point is told their names.
 */
export async function tipWitness(
  from: ReadFrom,
  { actor, happening = null }: Asked,
  { broken, hopper, at }: AtHopper & { readonly broken: readonly BrokenRule[] },
): Promise<SentenceFacts> {
  const tip = { tippedBy: happening?.writtenBy ?? actor.personId, tippedAt: at, tippedInto: hopper.code };
  const number = broken.find(({ code }) => code === 'bag-on-hold')?.facts['hold'];
  if (typeof number !== 'string') return { ...tip, tipWho: 'tip-who' };
  const { id, placedAt: heldAt } = await findHold(from, actor.siteId, number);
  return { ...tip, tipWho: 'tip-who-held', heldBy: await recordedBy(from, { kind: 'hold', id }), heldAt };
}
