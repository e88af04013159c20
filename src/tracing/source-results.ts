import type { BagResult } from '../laboratory/bag-results.js';
import type { Thread } from './thread.js';

/** The results that stand for each source of a thread, by its bag, in the order of analysis. */
export function resultsBySource({
  sources,
  results,
}: Pick<Thread, 'sources' | 'results'>): ReadonlyMap<string, readonly BagResult[]> {
  const places = new Map<string, number[]>();
  for (const [place, { sampleId }] of results.entries()) {
    const known = places.get(sampleId);
    if (known === undefined) places.set(sampleId, [place]);
    else known.push(place);
  }
  return new Map(
    sources.map(({ bagId, sampleIds }) => {
      const own = sampleIds.flatMap((sampleId) => places.get(sampleId) ?? []).sort((one, other) => one - other);
      return [bagId, own.flatMap((place) => results[place] ?? [])];
    }),
  );
}
