import {
  compareWithSpecification,
  type Comparison,
  type LineVerdict,
  type Result as ComparedResult,
  type Specification,
} from '../core/sugar-analysis/specification.js';
import { readDecimal } from '../core/units/decimals.js';
import { bagsOf, type BagRow } from '../drying/bulk-bags.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { specificationsOver } from './specifications-over.js';
import { dryerBagsOf, type CoveredBag, type SampleCover } from './sample-cover.js';
import { SamplesNear } from './samples-near.js';

/** A good result of a sample that stands for a bag. */
export interface BagResult {
  readonly id: string;
  readonly sampleId: string;
  readonly sampleNumber: string;
  readonly standsFor: 'bag' | 'hour' | 'shift';
  readonly property: string;
  readonly method: string;
  /** The figure as reported, in the unit that the property names. */
  readonly amount: string;
  readonly isRetest: boolean;
  readonly analysedAt: string;
}

/** How a bag stands against what its grade asks for. */
export interface LaboratoryStanding {
  readonly verdict: Comparison['overall'];
  /** Properties that the specification asks for and no result gives. */
  readonly missing: readonly string[];
  /** Properties of which a result is outside. */
  readonly outside: readonly string[];
  readonly results: readonly BagResult[];
  /** Those of the results that are outside. */
  readonly outsideResults: readonly BagResult[];
  readonly lines: readonly LineVerdict[];
}

/** All good results that stand for each bag, in the order of analysis; a bag without any has an empty list. */
export async function resultsOfBags(
  from: ReadFrom,
  bagIds: readonly string[],
): Promise<ReadonlyMap<string, readonly BagResult[]>> {
  const known = await resultsOfBagRows(from, await bagsOf(from, bagIds));
  return new Map(bagIds.map((id) => [id, known.get(id) ?? []]));
}

/** The same for bags that have been read already. */
export async function resultsOfBagRows(
  from: ReadFrom,
  bags: readonly CoveredBag[],
): Promise<ReadonlyMap<string, readonly BagResult[]>> {
  const stored = [...(await resultsByBag(from, bags)), ...(await resultsByTime(from, bags))];
  const samples = [...groupBy(stored, ({ sampleId }) => sampleId).values()].flatMap(testedSample);
  const near = new SamplesNear(samples);
  const resultsOf = (bag: CoveredBag): BagResult[] => near.of(bag).flatMap(({ results }) => results);
  return new Map(bags.map((bag) => [bag.id, resultsOf(bag).sort(byTimeOfAnalysis)]));
}

/** The results of one sample: they stand for the same bags. */
interface TestedSample {
  readonly cover: SampleCover;
  readonly results: readonly BagResult[];
}

function testedSample(stored: readonly StoredResult[]): TestedSample[] {
  const [cover] = stored;
  return cover === undefined ? [] : [{ cover, results: stored.map(bagResult) }];
}

/**
 * A bag against the specification of a grade, as it was valid when the bag was filled. Every good result that stands
 * for the bag counts: a retest does not clear the first result, and a composite does not clear a bag's own.
 */
export async function laboratoryStandingOf(from: ReadFrom, bag: BagRow, gradeId: string): Promise<LaboratoryStanding> {
  const standing = (await laboratoryStandingsOf(from, [{ bag, gradeId }])).get(bag.id);
  if (standing === undefined) throw new Error(`no laboratory standing of bag ${bag.id}`);
  return standing;
}

/** The same for several bags, each against its own grade, by their ids. */
export async function laboratoryStandingsOf(
  from: ReadFrom,
  asked: readonly { readonly bag: BagRow; readonly gradeId: string }[],
): Promise<ReadonlyMap<string, LaboratoryStanding>> {
  const results = await resultsOfBagRows(
    from,
    asked.map(({ bag }) => bag),
  );
  const standings = new Map<string, LaboratoryStanding>();
  for (const [gradeId, ofGrade] of groupBy(asked, (one) => one.gradeId)) {
    const specificationAt = await specificationsOver(
      from,
      gradeId,
      ofGrade.map(({ bag }) => filledAtOf(bag)),
    );
    for (const { bag } of ofGrade) {
      standings.set(bag.id, standingOf(results.get(bag.id) ?? [], await specificationAt(filledAtOf(bag))));
    }
  }
  return standings;
}

function filledAtOf(bag: BagRow): string {
  return bag.filledAt ?? bag.fillStartedAt;
}

function standingOf(results: readonly BagResult[], specification: Specification): LaboratoryStanding {
  const { overall, lines } = compareWithSpecification(results.map(compared), specification);
  return {
    verdict: overall,
    missing: propertiesOf(lines, (line) => line.verdict === 'missing' && line.required),
    outside: propertiesOf(lines, (line) => line.verdict === 'outside'),
    results,
    outsideResults: results.filter((result) => isOutside(result, specification)),
    lines,
  };
}

function isOutside(result: BagResult, specification: Specification): boolean {
  return compareWithSpecification([compared(result)], specification).overall === 'outside';
}

/** A result as `core` compares it: the figure's canonical text, all digits kept. */
export function compared(result: Pick<BagResult, 'property' | 'method' | 'amount'>): ComparedResult {
  const reading = readDecimal(result.amount);
  if (!reading.ok) throw new RangeError(`a stored result is no decimal: ${result.amount}`);
  return { property: result.property, method: result.method, value: reading.decimal };
}

function propertiesOf(lines: readonly LineVerdict[], isMeant: (line: LineVerdict) => boolean): readonly string[] {
  return [...new Set(lines.filter(isMeant).map(({ property }) => property))];
}

type StoredResult = Omit<BagResult, 'isRetest'> & SampleCover & { readonly retestNumber: number };

const resultSelect = `
  SELECT r."id", r."sample_id" AS "sampleId", s."number" AS "sampleNumber", s."stands_for" AS "standsFor",
    r."property", r."method", r."amount", r."retest_number" AS "retestNumber", r."analysed_at" AS "analysedAt",
    s."bag_id" AS "bagId", s."dryer_id" AS "dryerId", s."from_at" AS "fromAt", s."until_at" AS "untilAt"
  FROM "sample" s JOIN "result" r ON r."sample_id" = s."id"
  WHERE s."voided_by" IS NULL AND r."voided_by" IS NULL`;

function resultsByBag(from: ReadFrom, bags: readonly CoveredBag[]): Promise<StoredResult[]> {
  return inChunks(
    bags.map(({ id }) => id),
    (chunk) => from.sql<StoredResult>`${() => resultSelect} AND s."bag_id" IN (${() => chunk})`,
  );
}

/** Samples of hours and shifts: those of the bags' dryers that began near enough to the bags' fill ends. */
async function resultsByTime(from: ReadFrom, bags: readonly CoveredBag[]): Promise<StoredResult[]> {
  const found: StoredResult[] = [];
  for (const { dryerId, earliestFromAt, lastFilledAt } of dryerBagsOf(bags)) {
    found.push(
      ...(await from.sql<StoredResult>`
        ${() => resultSelect} AND s."dryer_id" = ${dryerId} AND s."from_at" > ${earliestFromAt}
          AND s."from_at" <= ${lastFilledAt}`),
    );
  }
  return found;
}

function bagResult(stored: StoredResult): BagResult {
  const { id, sampleId, sampleNumber, standsFor, property, method, amount, retestNumber, analysedAt } = stored;
  return {
    id,
    sampleId,
    sampleNumber,
    standsFor,
    property,
    method,
    amount,
    isRetest: retestNumber > 0,
    analysedAt,
  };
}

/** Two results of the same moment keep one order everywhere. */
export function byTimeOfAnalysis(one: BagResult, other: BagResult): number {
  if (one.analysedAt !== other.analysedAt) return one.analysedAt < other.analysedAt ? -1 : 1;
  return one.id < other.id ? -1 : 1;
}
