import { bagsOf } from '../drying/bulk-bags.js';
import { resultsOfGrade } from '../laboratory/results-of-grade.js';
import { specificationAt } from '../plant/plant-facts.js';
import { standingsOf } from '../disposition/standings.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { resultsBySource } from '../tracing/source-results.js';
import type { Signal, SignalsAsked } from './signal.js';

/**
 * What the laboratory measured of the bags that are surely or likely in the packs: each result against the limits of the
 * bag's grade and among the grade's own results of the period.
 */
export async function bagSignals(from: ReadFrom, asked: SignalsAsked): Promise<readonly Signal[]> {
  const { siteId, thread, window, periodFromAt } = asked;
  const sources = thread.sources.filter(({ word }) => word !== 'possible');
  const bags = await bagsOf(
    from,
    sources.map(({ bagId }) => bagId),
  );
  const standings = await standingsOf(from, bags);
  const results = resultsBySource(thread);
  const references = new Map<string, readonly number[]>();
  const signals: Signal[] = [];
  for (const source of sources) {
    const bag = bags.find(({ id }) => id === source.bagId);
    if (bag === undefined) continue;
    const gradeId = standings.get(bag.id)?.gradeId ?? bag.intendedGradeId;
    const specification = await specificationAt(from, gradeId, bag.filledAt ?? bag.fillStartedAt);
    for (const { property, method, amount, sampleId, sampleNumber } of results.get(source.bagId) ?? []) {
      const key = `${gradeId} ${property} ${method}`;
      const within = { gradeId, property, method, fromAt: periodFromAt, untilAt: window.untilAt };
      const reference = references.get(key) ?? (await resultsOfGrade(from, siteId, within));
      references.set(key, reference);
      const line = specification.find((one) => one.property === property && one.method === method);
      signals.push({
        ...{ code: 'stand-out-result', facts: { bag: source.bagNumber, property, sample: sampleNumber } },
        ...{ unit: property, href: `/samples/${sampleId}`, value: Number(amount), reference, tail: 'both' as const },
        least: limitOf(line?.minimum ?? null),
        most: limitOf(line?.maximum ?? null),
      });
    }
  }
  return signals;
}

function limitOf(limit: string | null): number | null {
  return limit === null ? null : Number(limit);
}
