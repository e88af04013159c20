import { bagsOf } from '../drying/bulk-bags.js';
import { linksByBag, sourcesOfRanges } from '../hopper/hopper-links.js';
import type { RunRange } from '../packing/run-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { ribbonsOf, type Ribbons } from '../tracing/ribbons.js';

/** A report that goes over more hopper periods draws those that most of it came through, and says so. */
const mostPeriods = 4;

/** What the pictures of a recall's report are drawn from: all its packs together, whatever run they are of. */
export async function ribbonsOfRecall(
  from: ReadFrom,
  ranges: readonly RunRange[],
): Promise<{ readonly drawn: readonly Ribbons[]; readonly leftOut: number }> {
  const links = linksByBag(await sourcesOfRanges(from, ranges));
  const names = new Map((await bagsOf(from, [...links.keys()])).map(({ id, number }) => [id, number]));
  const sources = [...links].flatMap(([bagId, { word, ...amounts }]) =>
    word === 'ruled-out' ? [] : [{ bagId, bagNumber: names.get(bagId) ?? bagId, ...amounts, word }],
  );
  sources.sort((one, other) => other.leastGrams - one.leastGrams || other.likelyGrams - one.likelyGrams);
  const all = await ribbonsOf(from, { possible: ranges, certain: ranges }, sources);
  const grams = ({ windows }: Ribbons): number =>
    windows.reduce((sum, { fromGrams, toGrams }) => sum + toGrams - fromGrams, 0);
  const largest = new Set([...all].sort((one, other) => grams(other) - grams(one)).slice(0, mostPeriods));
  return { drawn: all.filter((ribbons) => largest.has(ribbons)), leftOut: all.length - largest.size };
}
