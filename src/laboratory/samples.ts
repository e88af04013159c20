import { makeDocumentNumber, readDocumentNumber } from '../core/identifiers/document-number.js';
import { bagsFilledBetween, bagsOf, type BagRow } from '../drying/bulk-bags.js';
import type { Page } from '../platform/web/listed.js';
import { isId } from '../platform/is-id.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { coversBag, dryerBagsOf, type CoveredBag, type SampleCover } from './sample-cover.js';

/** A sample, and what it stands for in words that people know. */
export interface SampleRow extends SampleCover {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly standsFor: 'bag' | 'hour' | 'shift';
  readonly bagNumber: string | null;
  readonly dryerCode: string | null;
  readonly takenAt: string;
}

/** A result as it is shown with its sample, void ones too. */
export interface SampleResult {
  readonly id: string;
  readonly sampleId: string;
  readonly property: string;
  readonly method: string;
  readonly amount: string;
  readonly isRetest: boolean;
  readonly analysedAt: string;
  readonly isVoid: boolean;
}

/**
 * A sample of the site by its number or id.
 *
 * @throws {NotFound} `sample`
 */
export async function findSample(from: ReadFrom, siteId: string, text: string): Promise<SampleRow> {
  const read = readDocumentNumber(text, 'S');
  const column = isId(text) ? 's."id"' : 's."number"';
  const key = read === null ? text.trim().toLowerCase() : makeDocumentNumber(read);
  const rows = await from.sql<SampleRow>`
    ${() => sampleSelect} WHERE s."site_id" = ${siteId} AND s."voided_by" IS NULL
      AND ${() => column} = ${key}`;
  const sample = onlyRow(rows);
  if (sample === null) throw new NotFound('sample', text);
  return sample;
}

/** Samples of a site, latest recorded first, those before the key `before`. */
export function samplePage(from: ReadFrom, siteId: string, page: Page): Promise<readonly SampleRow[]> {
  return from.sql<SampleRow>`
    ${() => sampleSelect} WHERE s."site_id" = ${siteId} AND s."voided_by" IS NULL AND s."id" < ${page.before ?? '~'}
    ORDER BY s."id" DESC LIMIT ${Math.min(page.limit, 200)}`;
}

/** The bags that a sample stands for so far, in the order of their filling. */
export async function bagsOfSample(from: ReadFrom, sample: SampleCover): Promise<readonly BagRow[]> {
  if (sample.bagId !== null) return bagsOf(from, [sample.bagId]);
  const { dryerId, fromAt, untilAt } = sample;
  if (dryerId === null || fromAt === null || untilAt === null) return [];
  return bagsFilledBetween(from, dryerId, fromAt, untilAt);
}

/** The good samples that stand for any of these bags, with results or not yet, in the order of their numbers. */
export async function samplesOfBags(
  from: ReadFrom,
  bags: readonly CoveredBag[],
): Promise<readonly Pick<SampleRow, 'id' | 'number'>[]> {
  type Found = Pick<SampleRow, 'id' | 'number'> & SampleCover;
  const found = await inChunks(
    bags.map(({ id }) => id),
    (chunk) => from.sql<Found>`${() => sampleCoverSelect} AND s."bag_id" IN (${() => chunk})`,
  );
  for (const { dryerId, earliestFromAt, lastFilledAt } of dryerBagsOf(bags)) {
    found.push(
      ...(await from.sql<Found>`
        ${() => sampleCoverSelect} AND s."dryer_id" = ${dryerId} AND s."from_at" > ${earliestFromAt}
          AND s."from_at" <= ${lastFilledAt}`),
    );
  }
  return found
    .filter((sample) => bags.some((bag) => coversBag(sample, bag)))
    .sort((one, other) => (one.number < other.number ? -1 : 1));
}

const sampleCoverSelect = `
  SELECT s."id", s."number", s."bag_id" AS "bagId", s."dryer_id" AS "dryerId", s."from_at" AS "fromAt",
    s."until_at" AS "untilAt"
  FROM "sample" s WHERE s."voided_by" IS NULL`;

/** The results of samples in the order in which they were reported; a sample without any has an empty list. */
export async function resultsOfSamples(
  from: ReadFrom,
  sampleIds: readonly string[],
): Promise<ReadonlyMap<string, readonly SampleResult[]>> {
  const placed = new Map<string, SampleResult[]>(sampleIds.map((id) => [id, []]));
  if (sampleIds.length === 0) return placed;
  const rows = await from.sql<
    Omit<SampleResult, 'isRetest' | 'isVoid'> & { retestNumber: number; voidedBy: string | null }
  >`
    SELECT r."id", r."sample_id" AS "sampleId", r."property", r."method", r."amount",
      r."retest_number" AS "retestNumber", r."analysed_at" AS "analysedAt", r."voided_by" AS "voidedBy"
    FROM "result" r WHERE r."sample_id" IN (${() => [...sampleIds]}) ORDER BY r."id"`;
  for (const { retestNumber, voidedBy, ...result } of rows) {
    placed.get(result.sampleId)?.push({ ...result, isRetest: retestNumber > 0, isVoid: voidedBy !== null });
  }
  return placed;
}

const sampleSelect = `
  SELECT s."id", s."site_id" AS "siteId", s."number", s."stands_for" AS "standsFor", s."bag_id" AS "bagId",
    b."number" AS "bagNumber", s."dryer_id" AS "dryerId", d."code" AS "dryerCode", s."from_at" AS "fromAt",
    s."until_at" AS "untilAt", s."taken_at" AS "takenAt"
  FROM "sample" s
  LEFT JOIN "bulk_bag" b ON b."id" = s."bag_id"
  LEFT JOIN "dryer" d ON d."id" = s."dryer_id"`;
