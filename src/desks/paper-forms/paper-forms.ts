import { makeDocumentNumber, readDocumentNumber } from '../../core/identifiers/document-number.js';
import { recognise } from '../../core/identifiers/recognise.js';
import type { Instant } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import type { Page } from '../../platform/web/listed.js';
import { paperFormKind, type PaperFormFacts } from './form-kinds.js';
import { rowsOfSheets, type FormRow } from './form-rows.js';

/** A printed sheet: what stands on it, and what has become of its rows. */
export interface PaperForm {
  /** Of the paper. */
  readonly id: string;
  readonly lineId: string;
  readonly issuedAt: Instant;
  readonly facts: PaperFormFacts;
  readonly rows: readonly FormRow[];
}

/** The letters that the number of a sheet begins with. */
const formPrefix = 'PF';

interface StoredForm {
  readonly id: string;
  readonly lineId: string;
  readonly issuedAt: Instant;
  readonly facts: string;
}

/** Sheets of a site, those printed last first. */
export async function paperFormPage(
  from: ReadFrom,
  siteId: string,
  { before, limit }: Page,
): Promise<readonly PaperForm[]> {
  const stored = await from.sql<StoredForm>`
    SELECT "id", "subject_id" AS "lineId", "issued_at" AS "issuedAt", "facts" FROM "paper"
    WHERE "site_id" = ${siteId} AND "kind" = ${paperFormKind} AND "id" < ${before ?? '~'}
    ORDER BY "id" DESC LIMIT ${Math.min(limit, 200)}`;
  return withRows(from, siteId, stored);
}

/**
 * One sheet by its number as typed or scanned.
 *
 * @throws {NotFound} `paper-form`
 */
export async function findPaperForm(from: ReadFrom, siteId: string, typed: string): Promise<PaperForm> {
  const read = readDocumentNumber(typed, formPrefix);
  if (read === null) throw new NotFound('paper-form', typed);
  const number = makeDocumentNumber(read);
  const stored = await from.sql<StoredForm>`
    SELECT "id", "subject_id" AS "lineId", "issued_at" AS "issuedAt", "facts" FROM "paper"
    WHERE "site_id" = ${siteId} AND "kind" = ${paperFormKind} AND "number" = ${number}`;
  const [form] = await withRows(from, siteId, stored);
  if (form === undefined) throw new NotFound('paper-form', typed);
  return form;
}

async function withRows(from: ReadFrom, siteId: string, stored: readonly StoredForm[]): Promise<readonly PaperForm[]> {
  const forms = stored.map((row) => ({ ...row, facts: JSON.parse(row.facts) as PaperFormFacts }));
  const rows = await rowsOfSheets(
    from,
    siteId,
    forms.map(({ facts }) => facts),
  );
  return forms.map((form) => ({ ...form, rows: rows.get(form.facts.number) ?? [] }));
}

/**
 * The page that a scanned code of a sheet leads to: the sheet by its own code, a row by the pallet number set aside for
 * it, as long as no pallet bears it. Null: it is no code of a sheet.
 */
export async function pageOfPaperCode(
  from: ReadFrom,
  siteId: string,
  { text, now }: { readonly text: string; readonly now: Instant },
): Promise<string | null> {
  const currentYear = Number(now.slice(0, 4));
  const window = { earliestOn: now.slice(0, 10), latestOn: now.slice(0, 10) };
  // The number of a sheet is made as that of a delivery is, with letters of its own.
  const [candidate] = recognise(text, { currentYear, deliveryPrefix: formPrefix, patterns: [], window });
  if (candidate?.kind === 'logistic-unit') return pageOfSetAside(from, siteId, candidate.sscc);
  if (candidate?.kind !== 'delivery') return null;
  const [known] = await from.sql`
    SELECT 1 AS "one" FROM "paper"
    WHERE "site_id" = ${siteId} AND "kind" = ${paperFormKind} AND "number" = ${candidate.deliveryNumber}`;
  return known === undefined ? null : `/paper-forms/${candidate.deliveryNumber}`;
}

async function pageOfSetAside(from: ReadFrom, siteId: string, sscc: string): Promise<string | null> {
  const [block] = await from.sql<{ sheet: string }>`
    SELECT b."sheet" FROM "sscc_set_aside" s JOIN "sscc_block" b ON b."id" = s."block_id"
    WHERE s."sscc" = ${sscc} AND b."site_id" = ${siteId} AND b."sheet" IS NOT NULL
      AND NOT EXISTS (SELECT 1 FROM "pallet" p WHERE p."sscc" = s."sscc")`;
  if (block === undefined) return null;
  const { facts } = await findPaperForm(from, siteId, block.sheet);
  return `/paper-forms/${facts.number}?row=${facts.ssccs.indexOf(sscc) + 1}`;
}
