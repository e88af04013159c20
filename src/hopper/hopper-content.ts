import type { ReadFrom } from '../platform/database/reading.js';
import { boundEveryBag } from './bag-contents.js';
import { HopperBook } from './hopper-book.js';
import { leftInside, levelOf, levelOfPeriod, type HopperLevel } from './hopper-level.js';
import { currentPeriod } from './hopper-period-rows.js';
import { likelyBasis, worded, type LinkAmounts } from './link-words.js';
import { exitsOf, layOutPeriod, targetMass } from './period-flow.js';

/** A bag that may be inside a hopper now. */
export interface BagInside extends LinkAmounts {
  readonly bagId: string;
}

export interface HopperContent {
  readonly level: HopperLevel;
  /** The likeliest first; what is not listed is ruled out. */
  readonly bags: readonly BagInside[];
}

/** Which bags may be inside a hopper now, and how much of each, residues and rework included. */
export async function contentOf(from: ReadFrom, hopperId: string): Promise<HopperContent> {
  const period = await currentPeriod(from, hopperId);
  if (period === null) return { level: await levelOf(from, hopperId), bags: [] };
  const book = new HopperBook(from);
  const facts = await book.facts(period.id);
  const level = levelOfPeriod(facts);
  const contents = await book.contents(period.id);
  const target = { ranges: [], withEnd: true };
  const flow = layOutPeriod(facts, [target], leftInside(facts, level));
  // Nothing is sold from a hopper by itself: the smallest unit of the runs that it feeds stands for it.
  const runs = Array.from(facts.runs.keys(), (runId) => ({ runId }));
  const exits = exitsOf(flow, target);
  const basis = likelyBasis(facts, runs, targetMass(flow, exits).grams);
  const bags = Array.from(boundEveryBag(contents, flow, exits), ([bagId, amounts]) => ({
    bagId,
    ...worded(amounts, basis),
  }));
  return { level, bags: bags.sort((a, b) => b.likelyGrams - a.likelyGrams || b.mostGrams - a.mostGrams) };
}
