import { whyNoBlend, type NoBlend } from './blending.js';
import type { Property } from './specification.js';

/** A result that a part of the mixture has, with how far it may be off. */
export interface PartResult {
  /** Two bags of one composite have one result: its error is the same in both and does not average out. */
  readonly resultId: string;
  readonly method: string;
  /** In the unit of the property. */
  readonly value: number;
  /** The result's own standard uncertainty, 0 or more. */
  readonly standard: number;
}

/** What a pack (or pallet, or lot) holds of one source. */
export interface QualityPart {
  readonly sourceId: string;
  /** By the hopper's flow model; the likely grams of all parts sum to the pack. */
  readonly likelyGrams: number;
  /** However the hopper flows: least ≤ likely ≤ most. */
  readonly leastGrams: number;
  readonly mostGrams: number;
  /** Null where the source has no result for the property. */
  readonly result: PartResult | null;
}

/** Properties of a pack that nobody tested. */
export interface CalculatedQuality {
  /** Never printed as a test. */
  readonly kind: 'calculated';
  readonly property: Property;
  readonly method: string;
  /** The mean by likely mass. */
  readonly value: number;
  /** Of the value as long as the flow model is true: the results' doubt, not the hopper's. */
  readonly standard: number;
  /**
   * Between what the mean lies however the hopper flows, results taken as they are; both included, and rather too wide,
   * since sources are not all at their worst at once. Null where a source without a result is possible.
   */
  readonly range: { readonly lowest: number; readonly highest: number } | null;
  /** The sources without a result that were left out, and the share of the pack that they likely are. */
  readonly withoutResult: readonly string[];
  readonly shareWithoutResult: number;
}

/** Why no value is given; what it takes is named beside it. */
export type QualityRefused = { readonly kind: 'refused'; readonly property: Property } & (
  | { readonly reason: 'does-not-blend'; readonly why: NoBlend }
  | { readonly reason: 'nothing-inside' }
  | { readonly reason: 'results-missing'; readonly sourceIds: readonly string[]; readonly share: number }
  | { readonly reason: 'methods-differ'; readonly methods: readonly string[] }
);

/** So little of the pack may lack a result before no mean is given: 0.1 %. Our own value, no source. */
export const mostWithoutResult = 0.001;

/**
 * The quality that a pack should have, from what is likely in it: the mean by mass of what its sources were tested for.
 *
 * Only what blends by mass is averaged (`whyNoBlend`). The variance is Σ w²u² over results; bags that share a result
 * share its error, so their weights are added first. What one method makes all its results off by is not in it, nor that
 * a bag differs from the composite that stands for it: that is the laboratory's to say. How the hopper flows is not known
 * by a standard uncertainty; `range` says what it can change, from each source's least and most.
 *
 * @param parts each source once; one without result and with 0 g likely does not matter
 * @returns the mean, marked as calculated, or why there is none: refused rather than averaged over what is not known
 * @throws RangeError when grams are negative or out of order, a result is no number, or a source stands twice
 * @see quality.md sections 2.8 and 5 (a calculated value may steer; a certificate says that it is calculated)
 * @example
 * expectedQuality('colour-iu', [ { sourceId: 'bag 1', likelyGrams: 600, leastGrams: 0, mostGrams: 1000, result: of32 },
 *   { sourceId: 'bag 2', likelyGrams: 400, leastGrams: 0, mostGrams: 1000, result: of58 } ]) // { kind: 'calculated', value: 42.4, … }
 */
export function expectedQuality(property: Property, parts: readonly QualityPart[]): CalculatedQuality | QualityRefused {
  assertParts(parts);
  const why = whyNoBlend(property);
  if (why !== null) return { kind: 'refused', property, reason: 'does-not-blend', why };
  const totalGrams = parts.reduce((sum, { likelyGrams }) => sum + likelyGrams, 0);
  if (totalGrams === 0) return { kind: 'refused', property, reason: 'nothing-inside' };
  const tested = parts.filter(isTested);
  const testedGrams = tested.reduce((sum, { likelyGrams }) => sum + likelyGrams, 0);
  const untested = parts.filter(({ result, likelyGrams }) => result === null && likelyGrams > 0);
  const sourceIds = untested.map(({ sourceId }) => sourceId);
  const share = untested.reduce((sum, { likelyGrams }) => sum + likelyGrams, 0) / totalGrams;
  if (share > mostWithoutResult) return { kind: 'refused', property, reason: 'results-missing', sourceIds, share };
  const methods = [...new Set(tested.filter(({ mostGrams }) => mostGrams > 0).map(({ result }) => result.method))];
  const [method, another] = methods;
  if (method === undefined || another !== undefined)
    return { kind: 'refused', property, reason: 'methods-differ', methods };
  return {
    kind: 'calculated',
    property,
    method,
    value: tested.reduce((sum, { likelyGrams, result }) => sum + (likelyGrams / testedGrams) * result.value, 0),
    standard: standardOf(tested, testedGrams),
    range: parts.some(({ result, mostGrams }) => result === null && mostGrams > 0)
      ? null
      : { lowest: extremeMean(tested, testedGrams, 1), highest: extremeMean(tested, testedGrams, -1) },
    withoutResult: sourceIds,
    shareWithoutResult: share,
  };
}

type TestedPart = QualityPart & { readonly result: PartResult };

const isTested = (part: QualityPart): part is TestedPart => part.result !== null;

function standardOf(tested: readonly TestedPart[], testedGrams: number): number {
  const weights = new Map<string, { readonly weight: number; readonly standard: number }>();
  for (const { likelyGrams, result } of tested) {
    const weight = (weights.get(result.resultId)?.weight ?? 0) + likelyGrams / testedGrams;
    weights.set(result.resultId, { weight, standard: result.standard });
  }
  return Math.sqrt([...weights.values()].reduce((sum, { weight, standard }) => sum + (weight * standard) ** 2, 0));
}

/**
 * The least mean (direction 1) or the greatest (−1): every source has its least, and the rest is filled up from the best
 * end. Where least and most leave no such filling exactly, what there is counts.
 */
function extremeMean(tested: readonly TestedPart[], testedGrams: number, direction: 1 | -1): number {
  const sorted = [...tested].sort((one, other) => direction * (one.result.value - other.result.value));
  let roomGrams = testedGrams - sorted.reduce((sum, { leastGrams }) => sum + leastGrams, 0);
  let [sum, filledGrams] = [0, 0];
  for (const { leastGrams, mostGrams, result } of sorted) {
    const extra = Math.min(Math.max(0, roomGrams), mostGrams - leastGrams);
    roomGrams -= extra;
    filledGrams += leastGrams + extra;
    sum += (leastGrams + extra) * result.value;
  }
  return sum / filledGrams;
}

function assertParts(parts: readonly QualityPart[]): void {
  if (new Set(parts.map(({ sourceId }) => sourceId)).size < parts.length) {
    throw new RangeError('Each source of a pack stands once');
  }
  for (const { sourceId, leastGrams, likelyGrams, mostGrams, result } of parts) {
    if (!(leastGrams >= 0 && leastGrams <= likelyGrams && likelyGrams <= mostGrams) || !Number.isFinite(mostGrams)) {
      throw new RangeError(
        `${sourceId}: least ${leastGrams}, likely ${likelyGrams}, most ${mostGrams} g are out of order`,
      );
    }
    if (
      result !== null &&
      !(Number.isFinite(result.value) && result.standard >= 0 && Number.isFinite(result.standard))
    ) {
      throw new RangeError(
        `${sourceId}: ${result.value} with a standard uncertainty of ${result.standard} is no result`,
      );
    }
  }
}
