import { boundEveryAdditionInTarget, boundGroupsInTarget } from '../core/hopper-flow/bound-group-in-target.js';
import type { Content, GroupContent } from '../core/hopper-flow/group-content.js';
import type { Target } from '../core/hopper-flow/target-steps.js';
import { likelyGramsByAddition, type PeriodFlow } from './period-flow.js';

/** What of one bag an addition holds: between limits, and how much of it the flow model says it is. */
export interface BagPart {
  readonly content: Content;
  /** From 0 to 1. */
  readonly likelyShare: number;
}

/** What an addition holds of which bags, as far as it is asked for. */
export type AdditionContent = ReadonlyMap<string, BagPart>;

/** What each addition of a period holds, by the addition's id. */
export type PeriodContents = ReadonlyMap<string, AdditionContent>;

/** Grams of a bag somewhere: never less, likely, never more. */
export interface BagAmounts {
  readonly leastGrams: number;
  readonly likelyGrams: number;
  readonly mostGrams: number;
}

/** The group of additions that hold, or may hold, something of a bag. */
export function groupOfBag(contents: PeriodContents, flow: PeriodFlow, bagId: string): GroupContent {
  return groupOfAdditions(
    contents,
    flow.facts.additions.map(({ id }) => id),
    bagId,
  );
}

function groupOfAdditions(contents: PeriodContents, additionIds: readonly string[], bagId: string): GroupContent {
  const group = new Map<string, Content>();
  for (const id of additionIds) {
    const part = contents.get(id)?.get(bagId);
    if (part !== undefined) group.set(id, part.content);
  }
  return group;
}

/** Grams of a bag that the flow model puts into a target, by what it puts there of each addition. */
function likelyByBag(
  contents: PeriodContents,
  likelyGrams: ReadonlyMap<string, number>,
  additionsByBag: ReadonlyMap<string, readonly string[]>,
): (bagId: string) => number {
  return (bagId) => {
    let grams = 0;
    for (const additionId of additionsByBag.get(bagId) ?? []) {
      grams += (likelyGrams.get(additionId) ?? 0) * (contents.get(additionId)?.get(bagId)?.likelyShare ?? 0);
    }
    return grams;
  };
}

/** What share of each addition is of a group of bags, as the flow model sees it. */
export function likelyShares(contents: PeriodContents, bagIds: readonly string[]): ReadonlyMap<string, number> {
  const group = new Set(bagIds);
  const shares = new Map<string, number>();
  for (const [additionId, content] of contents) {
    let share = 0;
    for (const [bagId, part] of content) if (group.has(bagId)) share += part.likelyShare;
    if (share > 0) shares.set(additionId, share);
  }
  return shares;
}

/** Grams of a group that the flow model puts into a target, by what it puts there of each addition. */
export function likelyOfShares(shares: ReadonlyMap<string, number>, likelyGrams: ReadonlyMap<string, number>): number {
  let grams = 0;
  for (const [additionId, ofAddition] of likelyGrams) grams += ofAddition * (shares.get(additionId) ?? 0);
  return grams;
}

/** Every bag of a period that may be in a target at all, with what is known of it there. */
export function boundEveryBag(
  contents: PeriodContents,
  flow: PeriodFlow,
  target: Target,
): ReadonlyMap<string, BagAmounts> {
  if (target.size === 0) return new Map();
  const likelyGrams = likelyGramsByAddition(flow, target);
  const additionsByBag = additionIdsByBag(contents);
  const simple = new Map<string, string>();
  const others: string[] = [];
  for (const [bagId, additionIds] of additionsByBag) {
    const [only] = additionIds;
    if (only !== undefined && additionIds.length === 1 && isWholly(contents, only, bagId)) simple.set(bagId, only);
    else others.push(bagId);
  }
  const amounts = new Map<string, BagAmounts>();
  const likelyOf = likelyByBag(contents, likelyGrams, additionsByBag);
  const put = (bagId: string, bounds: { leastGrams: number; mostGrams: number }): void => {
    if (bounds.mostGrams === 0) return;
    const { leastGrams, mostGrams } = bounds;
    amounts.set(bagId, { leastGrams, mostGrams, likelyGrams: likelyOf(bagId) });
  };
  if (simple.size > 0) {
    const bounds = new Map(boundEveryAdditionInTarget(flow.prepared, target).map((one) => [one.additionId, one]));
    for (const [bagId, additionId] of simple) put(bagId, bounds.get(additionId) ?? { leastGrams: 0, mostGrams: 0 });
  }
  const groups = others.map((bagId) => groupOfAdditions(contents, additionsByBag.get(bagId) ?? [], bagId));
  const bounds = boundGroupsInTarget(flow.prepared, groups, target);
  others.forEach((bagId, place) => {
    put(bagId, bounds[place] ?? { leastGrams: 0, mostGrams: 0 });
  });
  return amounts;
}

/** Several bags taken together in a target: their leasts and mosts do not add up, so they are one group. */
export function boundTogether(
  contents: PeriodContents,
  flow: PeriodFlow,
  question: { readonly bagIds: readonly string[]; readonly target: Target },
): BagAmounts {
  const { bagIds, target } = question;
  const group = groupOfBags(contents, flow, bagIds);
  const [bounds] = boundGroupsInTarget(flow.prepared, [group], target);
  const likelyGrams = likelyGramsByAddition(flow, target);
  return {
    leastGrams: bounds?.leastGrams ?? 0,
    mostGrams: bounds?.mostGrams ?? 0,
    likelyGrams: likelyOfShares(likelyShares(contents, bagIds), likelyGrams),
  };
}

/** The group of additions that hold, or may hold, something of any of these bags. */
export function groupOfBags(contents: PeriodContents, flow: PeriodFlow, bagIds: readonly string[]): GroupContent {
  const own = new Set(bagIds);
  const group = new Map<string, Content>();
  for (const { id, source, mass } of flow.facts.additions) {
    const content = contents.get(id);
    if (content === undefined) continue;
    const parts: Content[] = [];
    for (const [bagId, part] of content) if (own.has(bagId)) parts.push(part.content);
    if (parts.length === 0) continue;
    // Whichever of several it was, all of it is of the group when all of them are.
    const isAnyOfThem = source === 'one-of-several' && parts.length === content.size;
    group.set(id, isAnyOfThem ? 'whole' : together(parts, mass.upperGrams));
  }
  return group;
}

/** Limits of several bags add up to limits of them together, within the addition; tighter ones are not known. */
function together(parts: readonly Content[], additionUpperGrams: number): Content {
  const limits = parts.filter((part): part is Exclude<Content, 'whole'> => part !== 'whole');
  if (limits.length < parts.length) return 'whole';
  const upperGrams = Math.min(
    limits.reduce((sum, limit) => sum + limit.upperGrams, 0),
    additionUpperGrams,
  );
  const lowerGrams = Math.min(
    limits.reduce((sum, limit) => sum + limit.lowerGrams, 0),
    upperGrams,
  );
  return { lowerGrams, upperGrams };
}

function additionIdsByBag(contents: PeriodContents): ReadonlyMap<string, readonly string[]> {
  const byBag = new Map<string, string[]>();
  for (const [additionId, content] of contents) {
    for (const bagId of content.keys()) {
      const known = byBag.get(bagId);
      if (known === undefined) byBag.set(bagId, [additionId]);
      else known.push(additionId);
    }
  }
  return byBag;
}

function isWholly(contents: PeriodContents, additionId: string, bagId: string): boolean {
  return contents.get(additionId)?.get(bagId)?.content === 'whole';
}

/** A bag that is surely the only one of an addition. */
export const wholePart: BagPart = { content: 'whole', likelyShare: 1 };
