import {
  expectedQuality,
  type CalculatedQuality,
  type PartResult,
  type QualityPart,
  type QualityRefused,
} from '../core/sugar-analysis/expected-quality.js';
import type { Repeatability } from '../core/sugar-analysis/repeatability.js';
import { plus } from '../hopper/hopper-book.js';
import type { BagResult } from '../laboratory/bag-results.js';
import { methodKey } from '../laboratory/recent-repeats.js';
import { resultsBySource } from './source-results.js';
import type { ExpectedQuality, SourceLine, Thread } from './thread.js';

/** Shown first, in this order; others after them by name. */
const firstProperties = ['moisture-percent', 'ash-percent', 'colour-iu'];

/** The closer a sample stands to the bag, the more its result says of it. */
const closest = ['bag', 'hour', 'shift'] as const;

/**
 * What the subject should be like, by what is likely in it and what its bags were tested for. Never a test.
 * @param repeatability of each method in this laboratory; a method that is not there has no uncertainty that is known
 */
export function expectedQualities(
  thread: Pick<Thread, 'sources' | 'results'>,
  repeatability: ReadonlyMap<string, Repeatability>,
): readonly ExpectedQuality[] {
  const tested = resultsBySource(thread);
  const sources = thread.sources.map((source): TestedSource => ({
    bagId: source.bagId,
    bagNumber: source.bagNumber,
    leastGrams: source.leastGrams,
    likelyGrams: source.likelyGrams,
    mostGrams: source.mostGrams,
    results: tested.get(source.bagId) ?? [],
  }));
  return propertiesOf(sources).map((property) => {
    const method = usualMethod(sources, property);
    const resultFor = onceEach((results) => resultOf(results, { property, method, repeatability }));
    const parts = sources.map((source) => partOf(source, resultFor(source.results)));
    return worded(expectedQuality(property, eachOnce(parts)), { sources, property, repeatability });
  });
}

type TestedSource = Pick<SourceLine, 'bagId' | 'bagNumber' | 'leastGrams' | 'likelyGrams' | 'mostGrams'> & {
  readonly results: readonly BagResult[];
};

/** Hundreds of bags share the results of a few samples: what is made of a list is made once. */
function onceEach<Made>(make: (results: readonly BagResult[]) => Made): (results: readonly BagResult[]) => Made {
  const made = new Map<readonly BagResult[], Made>();
  return (results) => {
    const known = made.has(results) ? (made.get(results) as Made) : make(results);
    made.set(results, known);
    return known;
  };
}

function listsOf(sources: readonly TestedSource[]): readonly (readonly BagResult[])[] {
  return [...new Set(sources.map(({ results }) => results))];
}

function propertiesOf(sources: readonly TestedSource[]): readonly string[] {
  const found = [...new Set(listsOf(sources).flatMap((results) => results.map(({ property }) => property)))];
  const rank = (property: string): number => firstProperties.indexOf(property) + 1 || firstProperties.length + 1;
  return found.sort((one, other) => rank(one) - rank(other) || (one < other ? -1 : 1));
}

/** By which most of the sugar was tested. Where bags have no result by it, one by another method is taken, and refused. */
function usualMethod(sources: readonly TestedSource[], property: string): string {
  const grams = new Map<string, number>();
  const methodsIn = onceEach(
    (results) => new Set(results.filter((result) => result.property === property).map(({ method }) => method)),
  );
  for (const { results, likelyGrams } of sources) {
    for (const method of methodsIn(results)) grams.set(method, (grams.get(method) ?? 0) + likelyGrams);
  }
  const [best] = [...grams].sort(([one, ofOne], [other, ofOther]) => ofOther - ofOne || (one < other ? -1 : 1));
  return best?.[0] ?? '';
}

interface Asked {
  readonly property: string;
  readonly method: string;
  readonly repeatability: ReadonlyMap<string, Repeatability>;
}

function partOf(source: TestedSource, result: PartResult | null): QualityPart {
  const { bagId, likelyGrams, leastGrams, mostGrams } = source;
  return { sourceId: bagId, likelyGrams, leastGrams, mostGrams, result };
}

/** A bag may be there twice: tipped in part, and its rest sold whole. Likely keeps between its limits. */
function eachOnce(parts: readonly QualityPart[]): readonly QualityPart[] {
  const bySource = new Map<string, QualityPart>();
  for (const part of parts) {
    const { leastGrams, mostGrams, likelyGrams } = plus(bySource.get(part.sourceId), part);
    const likely = Math.min(mostGrams, Math.max(leastGrams, likelyGrams));
    bySource.set(part.sourceId, { ...part, leastGrams, likelyGrams: likely, mostGrams });
  }
  return [...bySource.values()];
}

/** The mean of a bag's own results, else of its hour's, else of its shift's; a retest counts beside the first. */
function resultOf(results: readonly BagResult[], { property, method, repeatability }: Asked): PartResult | null {
  const ofProperty = results.filter((result) => result.property === property);
  const byMethod = ofProperty.filter((result) => result.method === method);
  const known = byMethod.length > 0 ? byMethod : ofProperty;
  const standsFor = closest.find((word) => known.some((result) => result.standsFor === word));
  const [first, ...more] = known.filter((result) => result.standsFor === standsFor);
  if (first === undefined) return null;
  const own = [first, ...more.filter((result) => result.method === first.method)];
  const scatter = repeatability.get(methodKey(first));
  return {
    resultId: own
      .map(({ id }) => id)
      .sort()
      .join(' '),
    method: first.method,
    value: own.reduce((sum, { amount }) => sum + Number(amount), 0) / own.length,
    standard: scatter === undefined ? 0 : scatter.standard / Math.sqrt(own.length),
  };
}

function worded(
  answer: CalculatedQuality | QualityRefused,
  of: { sources: readonly TestedSource[]; property: string; repeatability: ReadonlyMap<string, Repeatability> },
): ExpectedQuality {
  const numbers = new Map(of.sources.map(({ bagId, bagNumber }) => [bagId, bagNumber]));
  const named = (ids: readonly string[]): readonly string[] => ids.map((id) => numbers.get(id) ?? id);
  if (answer.kind === 'refused') {
    return answer.reason === 'results-missing' ? { ...answer, sourceIds: named(answer.sourceIds) } : answer;
  }
  const scatter = of.repeatability.get(methodKey(answer));
  return {
    ...answer,
    standard: scatter === undefined ? null : answer.standard,
    repeatCount: scatter?.degreesOfFreedom ?? 0,
    decimals: decimalsOf(of.sources, of.property) + 1,
    withoutResult: named(answer.withoutResult),
  };
}

/** As many as the results were reported with. */
function decimalsOf(sources: readonly TestedSource[], property: string): number {
  const amounts = listsOf(sources).flatMap((results) => results.filter((result) => result.property === property));
  return Math.max(0, ...amounts.map(({ amount }) => amount.split('.')[1]?.length ?? 0));
}
