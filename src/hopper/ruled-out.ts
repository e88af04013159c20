import type { Target } from '../core/hopper-flow/target-steps.js';
import type { Instant } from '../platform/clock.js';
import type { BagAmounts, PeriodContents } from './bag-contents.js';
import type { PeriodFlow } from './period-flow.js';

/**
 * Why nothing of a bag can be in some packs: it went in only after the last of them had left, however late it was
 * scanned; or all of it had left before, by a level that was seen.
 */
export type RuledOutReason = 'tipped-later' | 'left-before';

/** A bag of a hopper period that cannot be in what is asked for: least and most are both 0. */
export interface RuledOutBag {
  readonly bagId: string;
  readonly reason: RuledOutReason;
  /** When it was tipped, or came in with what the period began with. */
  readonly tippedAt: Instant;
}

/**
 * Every bag of a period that cannot be in a target, with its reason.
 * @param asked the target's exits, and the bags that may be in them
 * @returns null where the records can't be true: then nothing is ruled out, since any tip may be wrong; nothing for a
 * target that has no part in the period
 */
export function ruledOutIn(
  contents: PeriodContents,
  flow: PeriodFlow,
  asked: { readonly exits: Target; readonly bags: ReadonlyMap<string, BagAmounts> },
): readonly RuledOutBag[] | null {
  const { prepared, facts } = flow;
  if (asked.exits.size === 0) return [];
  if (prepared.contradiction !== null) return null;
  const lastExit = Math.max(...[...asked.exits.keys()].map((id) => prepared.exitIndexById.get(id) ?? -1));
  const found = new Map<string, RuledOutBag>();
  for (const { id, openedAt } of facts.additions) {
    const content = contents.get(id);
    if (content === undefined) continue;
    const place = prepared.cuts[prepared.cutIndexByAdditionId.get(id) ?? -1]?.eventIndex ?? -1;
    const reason = place > lastExit ? 'tipped-later' : 'left-before';
    for (const bagId of content.keys()) {
      // A bag that went in twice is judged by its first time.
      if (!asked.bags.has(bagId) && !found.has(bagId)) found.set(bagId, { bagId, reason, tippedAt: openedAt });
    }
  }
  return [...found.values()];
}
