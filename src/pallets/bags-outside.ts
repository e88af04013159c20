import { compareWithSpecification, type Specification } from '../core/sugar-analysis/specification.js';
import type { BagRow } from '../drying/bulk-bags.js';
import type { BagStanding } from '../disposition/standings.js';
import { compared, resultsOfBags } from '../laboratory/bag-results.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { specificationAt } from '../plant/plant-facts.js';

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
    const specificationOf = await specifications(from, gradeId, ofGrade);
    for (const bag of ofGrade) {
      const found = (results.get(bag.id) ?? []).map(compared);
      if (compareWithSpecification(found, await specificationOf(bag)).overall === 'outside') outside.add(bag.id);
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

/** Where no version began between the first and the last bag, one holds for all of them. */
async function specifications(
  from: ReadFrom,
  gradeId: string,
  bags: readonly BagRow[],
): Promise<(bag: BagRow) => Promise<Specification>> {
  const times = bags.map(filledAtOf).sort();
  const [first = '', last = ''] = [times.at(0), times.at(-1)];
  const between = await from.sql`
    SELECT "id" FROM "grade_specification"
    WHERE "grade_id" = ${gradeId} AND "valid_from" > ${first} AND "valid_from" <= ${last} AND "voided_by" IS NULL LIMIT 1`;
  if (between.length > 0) return (bag) => specificationAt(from, gradeId, filledAtOf(bag));
  const one = await specificationAt(from, gradeId, first);
  return async () => one;
}

function filledAtOf(bag: BagRow): string {
  return bag.filledAt ?? bag.fillStartedAt;
}
