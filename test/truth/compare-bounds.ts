import {
  boundEveryAdditionInTarget,
  boundGroupInTarget,
  boundGroupInTargets,
} from '../../src/core/hopper-flow/bound-group-in-target.js';
import type { Content, GroupContent } from '../../src/core/hopper-flow/group-content.js';
import { orderForBounds } from '../../src/core/hopper-flow/order-for-bounds.js';
import { prepareHopperPeriod, type PreparedHopperPeriod } from '../../src/core/hopper-flow/prepare-period.js';
import { exitsIn, type Target } from '../../src/core/hopper-flow/target-steps.js';
import { endId, startId } from './recorded-period.js';
import type { TargetKind, TruthTarget } from './truth-targets.js';
import { bagOf, idIn, type TruthCase } from './truth-case.js';
import { earlierSugar } from './true-plant.js';

/** Truth outside of least and most: must never be. */
export interface Breach {
  readonly seed: number;
  readonly kind: TargetKind;
  readonly bags: readonly string[];
  readonly leastGrams: number;
  readonly trueGrams: number;
  readonly mostGrams: number;
}

/** One bag in one target, where it is not ruled out. */
export interface Link {
  readonly kind: TargetKind;
  /** Most less least as a share of the bag. */
  readonly width: number;
  readonly isSure: boolean;
  /** At least a hundredth of the bag truly is in the target. */
  readonly isTrue: boolean;
  /** The truth is within a hundredth of the bag of a bound that says something: much narrower would be untrue. */
  readonly isTouched: boolean;
}

export interface Comparison {
  readonly breaches: readonly Breach[];
  readonly links: readonly Link[];
  readonly ruledOutCount: number;
  /** Periods whose records were said to contradict each other though they are true. */
  readonly falseAlarms: number;
}

interface Range {
  readonly leastGrams: number;
  readonly mostGrams: number;
}

type Both = readonly [PreparedHopperPeriod, PreparedHopperPeriod];

/** Bounds of every bag, and of some dryer shifts' bags together, in every target of a plant, beside the truth. */
export function compareBounds({ plant, recorded, targets, bagGrams }: TruthCase): Comparison {
  const prepared = recorded.map((period) => prepareHopperPeriod(orderForBounds(period)));
  const [first, second] = prepared;
  if (first === undefined || second === undefined) throw new RangeError('a plant has two periods');
  const rangesOf = boundsOfBags([first, second], targets);
  const [breaches, links]: [Breach[], Link[]] = [[], []];
  const expectWithin = (target: TruthTarget, bags: readonly string[], range: Range): void => {
    const trueGrams = bags.reduce((sum, bag) => sum + (target.trueGrams.get(bag) ?? 0), 0);
    if (range.leastGrams <= trueGrams && trueGrams <= range.mostGrams) return;
    breaches.push({ seed: plant.seed, kind: target.kind, bags, trueGrams, ...range });
  };
  let ruledOutCount = 0;
  targets.forEach((target, place) => {
    for (const [bag, grams] of bagGrams) {
      const range = rangesOf(bag, place);
      expectWithin(target, [bag], range);
      if (range.mostGrams === 0) ruledOutCount += 1;
      else if (bag !== earlierSugar) links.push(linkOf(target, { bag, grams, ...range }));
    }
    for (const group of dryerShifts([...bagGrams.keys()]))
      expectWithin(target, group, boundsOfGroup([first, second], group, target));
  });
  return { breaches, links, ruledOutCount, falseAlarms: prepared.filter((one) => one.contradiction !== null).length };
}

function linkOf(
  { kind, trueGrams }: TruthTarget,
  { bag, grams, leastGrams, mostGrams }: Range & { readonly bag: string; readonly grams: number },
): Link {
  const truth = trueGrams.get(bag) ?? 0;
  const isNear = (bound: number) => Math.abs(truth - bound) <= grams / 100;
  const saysSomething = grams / 10 < mostGrams && mostGrams < grams * 0.9;
  return {
    kind,
    width: (Math.min(mostGrams, grams) - leastGrams) / grams,
    isSure: leastGrams > 0,
    isTrue: truth >= grams / 100,
    isTouched: (leastGrams > 0 && isNear(leastGrams)) || (saysSomething && isNear(mostGrams)),
  };
}

/** What left in the first period, and of the residue in the second, add up. */
function boundsOfBags(
  [first, second]: Both,
  targets: readonly TruthTarget[],
): (bag: string, targetPlace: number) => Range {
  const own = targets.map(({ exits }) => {
    const inFirst = boundEveryAdditionInTarget(first, exits[0] ?? new Map());
    const inSecond = boundEveryAdditionInTarget(second, exits[1] ?? new Map());
    const named = inFirst.map((bounds) => [bagOf(bounds.additionId), bounds] as const);
    const later = inSecond.map((bounds) => [bounds.additionId, bounds] as const);
    return new Map<string, Range>([...named, ...later]);
  });
  const inSecond = targets.map(({ exits }): Target => exits[1] ?? new Map());
  const fromResidue = new Map(
    carriedOver(first).map(([bag, content]) => {
      return [bag, boundGroupInTargets(second, new Map([[startId, content]]), inSecond)] as const;
    }),
  );
  const nothing = { leastGrams: 0, mostGrams: 0 };
  return (bag, place) => added(own[place]?.get(bag) ?? nothing, fromResidue.get(bag)?.[place] ?? nothing);
}

/** How much of each bag of the first period the residue may be that the second starts with. */
function carriedOver(first: PreparedHopperPeriod): readonly (readonly [string, Content])[] {
  const left = boundEveryAdditionInTarget(first, exitsIn([endId])).filter(({ mostGrams }) => mostGrams > 0);
  return left.map(({ additionId, leastGrams, mostGrams }) => {
    return [bagOf(additionId), { lowerGrams: leastGrams, upperGrams: mostGrams }];
  });
}

function added(one: Range, other: Range): Range {
  return { leastGrams: one.leastGrams + other.leastGrams, mostGrams: one.mostGrams + other.mostGrams };
}

/** Fifteen bags at a time. */
function dryerShifts(bags: readonly string[]): readonly (readonly string[])[] {
  return Array.from({ length: Math.ceil(bags.length / 15) }, (_, place) => bags.slice(place * 15, place * 15 + 15));
}

function boundsOfGroup([first, second]: Both, group: readonly string[], { exits }: TruthTarget): Range {
  const among = (prepared: PreparedHopperPeriod, place: number): GroupContent => {
    const ids = group.map((bag) => idIn(bag, place)).filter((id) => prepared.cutIndexByAdditionId.has(id));
    return new Map(ids.map((id) => [id, 'whole']));
  };
  const left = boundGroupInTarget(first, among(first, 0), exitsIn([endId]));
  const content = { lowerGrams: left.leastGrams, upperGrams: left.mostGrams };
  const inSecond = new Map<string, Content>([...among(second, 1), [startId, content]]);
  return added(
    boundGroupInTarget(first, among(first, 0), exits[0] ?? new Map()),
    boundGroupInTarget(second, inSecond, exits[1] ?? new Map()),
  );
}
