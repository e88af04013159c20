import type { Specification } from '../core/sugar-analysis/specification.js';
import { specificationAt } from '../plant/plant-facts.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';

/**
 * What a grade must be at each of several instants. Where no version began between the first and the last of them, one
 * reading serves all.
 */
export async function specificationsOver(
  from: ReadFrom,
  gradeId: string,
  instants: readonly Instant[],
): Promise<(at: Instant) => Promise<Specification>> {
  const times = [...instants].sort();
  const [first = '', last = ''] = [times.at(0), times.at(-1)];
  const between = await from.sql`
    SELECT "id" FROM "grade_specification"
    WHERE "grade_id" = ${gradeId} AND "valid_from" > ${first} AND "valid_from" <= ${last} AND "voided_by" IS NULL LIMIT 1`;
  if (between.length > 0) return (at) => specificationAt(from, gradeId, at);
  const one = await specificationAt(from, gradeId, first);
  return async () => one;
}
