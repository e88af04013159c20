import type { BagResult } from '../laboratory/bag-results.js';
import type { Thread } from './thread.js';

/**
 * The results that stand for each source of a thread, by its bag, in the order of analysis. Bags with the same samples have
 * the same list.
 */
export function resultsBySource({
  sources,
  results,
}: Pick<Thread, 'sources' | 'results'>): ReadonlyMap<string, readonly BagResult[]> {
  const lists = new Map<string, readonly BagResult[]>();
  const bySource = new Map<string, readonly BagResult[]>();
  for (const { bagId, sampleIds } of sources) {
    const key = sampleIds.join(' ');
    const list = lists.get(key) ?? results.filter(({ sampleId }) => sampleIds.includes(sampleId));
    lists.set(key, list);
    bySource.set(bagId, list);
  }
  return bySource;
}
