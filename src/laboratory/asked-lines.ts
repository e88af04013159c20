import type { SpecificationLine } from '../core/sugar-analysis/specification.js';
import { bagsOf } from '../drying/bulk-bags.js';
import { runsOfDryer } from '../drying/dryer-runs.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { specificationAt } from '../plant/plant-facts.js';
import { resultsOfSamples, samplePage, type SampleResult, type SampleRow } from './samples.js';

/** A property by a method that a sample's grades ask for. */
export interface AskedLine {
  readonly property: string;
  readonly method: string;
  readonly required: boolean;
}

/** A sample with what it has and what is asked of it. */
export interface WaitingSample {
  readonly sample: SampleRow;
  readonly results: readonly SampleResult[];
  readonly missing: readonly AskedLine[];
}

/** So many of the latest samples are looked through. */
const latestSamples = 200;

/** The latest samples of a site that lack a result which a release waits for, the oldest first. */
export async function waitingSamples(from: ReadFrom, siteId: string): Promise<readonly WaitingSample[]> {
  const samples = await samplePage(from, siteId, { before: null, limit: latestSamples });
  const results = await resultsOfSamples(
    from,
    samples.map(({ id }) => id),
  );
  const asked = new AskedLines(from);
  const waiting: WaitingSample[] = [];
  for (const sample of samples) {
    const own = (results.get(sample.id) ?? []).filter(({ isVoid }) => !isVoid);
    const missing = (await asked.of(sample)).filter((line) => line.required && !own.some((one) => isOf(one, line)));
    if (missing.length > 0) waiting.push({ sample, results: own, missing });
  }
  return waiting.reverse();
}

/** Whether a result gives a line. */
export function isOf(result: Pick<SampleResult, 'property' | 'method'>, line: AskedLine): boolean {
  return result.property === line.property && result.method === line.method;
}

/** What is asked of samples; each grade's specification is read once for a day. */
export class AskedLines {
  private readonly known = new Map<string, Promise<readonly SpecificationLine[]>>();

  constructor(private readonly from: ReadFrom) {}

  /** What the grades ask for that a sample stands for: each property by its method once. */
  async of(sample: SampleRow): Promise<readonly AskedLine[]> {
    const lines = new Map<string, AskedLine>();
    for (const { gradeId, at } of await this.gradesOf(sample)) {
      for (const { property, method, required } of await this.specification(gradeId, at)) {
        const before = lines.get(`${property} ${method}`);
        lines.set(`${property} ${method}`, { property, method, required: required || before?.required === true });
      }
    }
    return [...lines.values()];
  }

  private async gradesOf(sample: SampleRow): Promise<readonly { readonly gradeId: string; readonly at: string }[]> {
    if (sample.bagId !== null) {
      const [bag] = await bagsOf(this.from, [sample.bagId]);
      return bag === undefined ? [] : [{ gradeId: bag.intendedGradeId, at: bag.filledAt ?? bag.fillStartedAt }];
    }
    const { dryerId, fromAt, untilAt } = sample;
    if (dryerId === null || fromAt === null || untilAt === null) return [];
    const runs = await runsOfDryer(this.from, dryerId, fromAt, untilAt);
    return runs.map(({ gradeId }) => ({ gradeId, at: fromAt }));
  }

  private specification(gradeId: string, at: string): Promise<readonly SpecificationLine[]> {
    const key = `${gradeId} ${at.slice(0, 13)}`;
    const known = this.known.get(key) ?? specificationAt(this.from, gradeId, at);
    this.known.set(key, known);
    return known;
  }
}
