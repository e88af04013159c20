import { compareWithSpecification, type Result } from '../core/sugar-analysis/specification.js';
import { bagOf } from '../drying/bulk-bags.js';
import { runsOfDryer } from '../drying/dryer-runs.js';
import { specificationAt } from '../plant/plant-facts.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { SampleRow } from './samples.js';

/** What the grades that a sample stands for say about one result; `not-asked-for`: none of them names it. */
export type ResultVerdict = 'within' | 'outside' | 'not-asked-for';

/** Judges one result by the grades that the dryer meant; of several grades the strictest word counts. */
export async function judgeResult(from: ReadFrom, sample: SampleRow, result: Result): Promise<ResultVerdict> {
  let verdict: ResultVerdict = 'not-asked-for';
  for (const { gradeId, at } of await gradesOf(from, sample)) {
    const specification = await specificationAt(from, gradeId, at);
    const asked = specification.filter((line) => line.property === result.property && line.method === result.method);
    if (asked.length === 0) continue;
    if (compareWithSpecification([result], asked).overall === 'outside') return 'outside';
    verdict = 'within';
  }
  return verdict;
}

async function gradesOf(from: ReadFrom, sample: SampleRow): Promise<readonly { gradeId: string; at: string }[]> {
  if (sample.bagId !== null) {
    const bag = await bagOf(from, sample.bagId);
    return [{ gradeId: bag.intendedGradeId, at: bag.filledAt ?? bag.fillStartedAt }];
  }
  const { dryerId, fromAt, untilAt } = sample;
  if (dryerId === null || fromAt === null || untilAt === null) return [];
  const runs = await runsOfDryer(from, dryerId, fromAt, untilAt);
  return runs.map(({ gradeId }) => ({ gradeId, at: fromAt }));
}
