import type { Canonical } from '../../platform/canonical-text.js';
import type { Instant } from '../../platform/clock.js';
import { inChunks } from '../../platform/database/in-chunks.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import type { PaperFormFacts } from './form-kinds.js';

/** What was keyed in from a row. */
export interface KeyedEntry {
  readonly entryId: string;
  readonly sheet: string;
  readonly row: number;
  readonly action: string;
  readonly happenedAt: Instant;
  readonly recordedAt: Instant;
  readonly keyedBy: string | null;
  /** Who wrote the row, where it was somebody else. */
  readonly writtenBy: string | null;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly after: Readonly<Record<string, Canonical>>;
  readonly reason: string | null;
}

/** What a row began and what has not come to its end: a bag that hangs, a line that stands. */
export interface OpenEnd {
  readonly of: 'tip' | 'stop';
  readonly id: string;
}

/** A row of a sheet. `begun`: keyed in, but not to its end. */
export interface FormRow {
  readonly row: number;
  readonly sscc: string | null;
  readonly state: 'blank' | 'begun' | 'keyed' | 'struck';
  readonly entries: readonly KeyedEntry[];
  readonly openEnd: OpenEnd | null;
  /** Entries that were kept as they were written, because the records contradict them. */
  readonly keptIds: readonly string[];
}

export const strikeAction = 'strike-paper-row';

/** The rows of some sheets of a site, each as it stands now. */
export async function rowsOfSheets(
  from: ReadFrom,
  siteId: string,
  sheets: readonly PaperFormFacts[],
): Promise<ReadonlyMap<string, readonly FormRow[]>> {
  const entries = await entriesOf(
    from,
    siteId,
    sheets.map(({ number }) => number),
  );
  const openIds = await openEndsAmong(from, entries);
  const kept = await keptOf(
    from,
    siteId,
    sheets.map(({ number }) => number),
  );
  return new Map(
    sheets.map((facts) => {
      const own = entries.filter(({ sheet }) => sheet === facts.number);
      const rows = Array.from({ length: facts.rowCount }, (_, place) =>
        rowOf(
          place + 1,
          facts.ssccs[place] ?? null,
          own.filter(({ row }) => row === place + 1),
          { openIds, keptIds: keptIn(kept, facts.number, place + 1) },
        ),
      );
      return [facts.number, rows] as const;
    }),
  );
}

function rowOf(
  row: number,
  sscc: string | null,
  entries: readonly KeyedEntry[],
  { openIds, keptIds }: { readonly openIds: ReadonlySet<string>; readonly keptIds: readonly string[] },
): FormRow {
  const isStruck = entries.some(({ action }) => action === strikeAction);
  const openEnd = entries.map(beginningOf).find((one) => one !== null && openIds.has(one.id)) ?? null;
  const state = isStruck ? 'struck' : entries.length === 0 ? 'blank' : openEnd === null ? 'keyed' : 'begun';
  return { row, sscc, state, entries, openEnd, keptIds };
}

function beginningOf({ action, after }: KeyedEntry): OpenEnd | null {
  if (action === 'tip-bag') return { of: 'tip', id: wordIn(after, 'tip') };
  return action === 'stop-line' ? { of: 'stop', id: wordIn(after, 'id') } : null;
}

/** A word or id in what the journal holds of an entry. */
export function wordIn(after: KeyedEntry['after'], name: string): string {
  const value = after[name];
  return typeof value === 'string' ? value : '';
}

interface KeptOfSheet {
  readonly id: string;
  readonly sheet: string;
  readonly row: number;
}

function keptOf(from: ReadFrom, siteId: string, numbers: readonly string[]): Promise<readonly KeptOfSheet[]> {
  return inChunks(
    numbers,
    (chunk) => from.sql<KeptOfSheet>`
      SELECT "id", "sheet", "sheet_row" AS "row" FROM "kept_entry"
      WHERE "site_id" = ${siteId} AND "voided_by" IS NULL AND "sheet" IN (${() => chunk}) ORDER BY "id"`,
  );
}

function keptIn(kept: readonly KeptOfSheet[], sheet: string, row: number): readonly string[] {
  return kept.filter((one) => one.sheet === sheet && one.row === row).map(({ id }) => id);
}

async function entriesOf(from: ReadFrom, siteId: string, numbers: readonly string[]): Promise<readonly KeyedEntry[]> {
  const rows = await inChunks(
    numbers,
    (chunk) => from.sql<Omit<KeyedEntry, 'after'> & { readonly after: string | null }>`
      SELECT h."entry_id" AS "entryId", h."sheet", h."sheet_row" AS "row", h."action", h."happened_at" AS "happenedAt",
        e."recorded_at" AS "recordedAt", e."person_id" AS "keyedBy", h."written_by" AS "writtenBy",
        e."subject_kind" AS "subjectKind", e."subject_id" AS "subjectId", e."after", e."reason"
      FROM "entry_happening" h JOIN "journal_entry" e ON e."id" = h."entry_id"
      WHERE h."site_id" = ${siteId} AND h."voided_by" IS NULL AND h."sheet" IN (${() => chunk})
      ORDER BY e."sequence"`,
  );
  return rows.map(({ after, ...row }) => ({
    ...row,
    after: after === null ? {} : (JSON.parse(after) as KeyedEntry['after']),
  }));
}

/** Which tips still hang and which lines still stand, among those that rows began. A line whose run is closed stands no more. */
async function openEndsAmong(from: ReadFrom, entries: readonly KeyedEntry[]): Promise<ReadonlySet<string>> {
  const begun = entries.map(beginningOf).filter((one) => one !== null);
  const tipIds = begun.filter(({ of }) => of === 'tip').map(({ id }) => id);
  const stopIds = begun.filter(({ of }) => of === 'stop').map(({ id }) => id);
  const tips = await inChunks(
    tipIds,
    (chunk) => from.sql<{ id: string }>`
      SELECT t."id" FROM "tip" t LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
      WHERE t."id" IN (${() => chunk}) AND t."voided_by" IS NULL AND o."id" IS NULL`,
  );
  const stops = await inChunks(
    stopIds,
    (chunk) => from.sql<{ id: string }>`
      SELECT s."id" FROM "line_stop" s
      JOIN "packing_run_state" r ON r."run_id" = s."run_id" AND r."open_line_id" IS NOT NULL
      LEFT JOIN "line_restart" a ON a."stop_id" = s."id" AND a."voided_by" IS NULL
      WHERE s."id" IN (${() => chunk}) AND s."voided_by" IS NULL AND a."id" IS NULL`,
  );
  return new Set([...tips, ...stops].map(({ id }) => id));
}

/** Whether nothing is left to key in: each row is keyed in to its end, or struck. */
export function isClosed(rows: readonly FormRow[]): boolean {
  return rows.every(({ state }) => state === 'keyed' || state === 'struck');
}
