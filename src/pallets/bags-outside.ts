import { compareWithSpecification } from '../core/sugar-analysis/specification.js';
import type { BagRow } from '../drying/bulk-bags.js';
import type { BagStanding } from '../disposition/standings.js';
import { compared, resultsOfBags } from '../laboratory/bag-results.js';
import { specificationsOver } from '../laboratory/specifications-over.js';
import type { ReadFrom } from '../platform/database/reading.js';

/**
 * Bags of which a result is outside what their grade asked for when they were filled: a result that came after the release
 * counts too. One reading of the specification serves all bags of a grade, unless it changed between them.
 */
export async function bagsOutside(
  from: ReadFrom,
  bags: readonly BagRow[],
  standings: ReadonlyMap<string, BagStanding>,
): Promise<ReadonlySet<string>> {
  const results = await resultsOfBags(
    from,
    bags.map((bag) => bag.id),
  );
  const tested = bags.filter((bag) => (results.get(bag.id) ?? []).length > 0);
  const outside = new Set<string>();
  for (const [gradeId, ofGrade] of byGrade(tested, standings)) {
    const specificationAt = await specificationsOver(from, gradeId, ofGrade.map(filledAtOf));
    for (const bag of ofGrade) {
      const found = (results.get(bag.id) ?? []).map(compared);
      if (compareWithSpecification(found, await specificationAt(filledAtOf(bag))).overall === 'outside')
        outside.add(bag.id);
    }
  }
  return outside;
}

function byGrade(
  bags: readonly BagRow[],
  standings: ReadonlyMap<string, BagStanding>,
): ReadonlyMap<string, readonly BagRow[]> {
  const grades = new Map<string, BagRow[]>();
  for (const bag of bags) {
    const gradeId = standings.get(bag.id)?.gradeId ?? bag.intendedGradeId;
    grades.set(gradeId, [...(grades.get(gradeId) ?? []), bag]);
  }
  return grades;
}

function filledAtOf(bag: BagRow): string {
  return bag.filledAt ?? bag.fillStartedAt;
}
