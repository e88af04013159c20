import type { TimedHopperPeriod } from '../../src/core/hopper-flow/timed-event.js';
import { endId, startId } from './recorded-period.js';
import { bagOf, type TruthCase } from './truth-case.js';
import type { TruthTarget } from './truth-targets.js';

/** Grams by addition, of some exits together. */
export type LikelyGrams = (exitIds: readonly string[]) => ReadonlyMap<string, number>;

/** A flow model of the product, as it is asked: one period laid out, then what its exits are made of. */
export interface LikelyModel {
  readonly name: string;
  readonly layOut: (period: TimedHopperPeriod<number>) => LikelyGrams;
}

/**
 * How wrong a model's likely amounts are: for each pallet the share of its sugar that the model does not lay to the
 * right bag, 0 where all is right, 1 where all is wrong. What the model leaves unexplained is not laid to the right bag.
 */
export function likelyErrors({ recorded, targets }: TruthCase, model: LikelyModel): readonly number[] {
  const laidOut = recorded.map((period) => model.layOut(period));
  const leftInside = laidOut[0]?.([endId]) ?? new Map<string, number>();
  const errors = targets
    .filter(({ kind }) => kind === 'pallet')
    .map((target) => errorOf(target, likelyByBag(target, laidOut, leftInside)));
  return errors.filter((error) => error !== null);
}

function likelyByBag(
  { exits }: TruthTarget,
  laidOut: readonly LikelyGrams[],
  leftInside: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  const byBag = new Map<string, number>();
  const add = (bag: string, grams: number) => byBag.set(bag, (byBag.get(bag) ?? 0) + grams);
  const leftGrams = [...leftInside.values()].reduce((sum, grams) => sum + grams, 0);
  laidOut.forEach((likely, place) => {
    for (const [additionId, grams] of likely([...(exits[place]?.keys() ?? [])])) {
      if (place === 0 || additionId !== startId) add(bagOf(additionId), grams);
      // The residue is what the model left inside, in the same shares.
      else for (const [id, part] of leftInside) add(bagOf(id), (grams * part) / leftGrams);
    }
  });
  return byBag;
}

function errorOf({ trueGrams }: TruthTarget, likely: ReadonlyMap<string, number>): number | null {
  let [rightGrams, palletGrams] = [0, 0];
  for (const [bag, grams] of trueGrams) {
    rightGrams += Math.min(grams, likely.get(bag) ?? 0);
    palletGrams += grams;
  }
  return palletGrams === 0 ? null : 1 - rightGrams / palletGrams;
}
