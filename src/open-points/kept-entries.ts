import type { Canonical } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound, type SentenceFacts } from '../platform/refusal.js';
import { withNames } from './facts-with-names.js';

/** An entry that was kept, as its page shows it. */
export interface KeptEntryRow {
  readonly id: string;
  readonly route: string;
  /** The page's address that it was sent to, with its ids. */
  readonly address: string;
  readonly content: Readonly<Record<string, Canonical>>;
  readonly how: 'queued' | 'paper';
  readonly happenedAt: Instant;
  readonly keptAt: Instant;
  readonly sheet: string | null;
  readonly sheetRow: number | null;
  readonly code: string;
  readonly facts: SentenceFacts;
  readonly person: string | null;
  readonly writer: string | null;
  readonly device: string | null;
  /** The point that asks people to look at it, and what was said of it in the end. */
  readonly pointId: string | null;
  readonly explanation: string | null;
}

type StoredEntry = Omit<KeptEntryRow, 'content' | 'facts'> & { readonly content: string; readonly facts: string };

/** @throws {NotFound} `kept-entry` */
export async function keptEntryOf(from: ReadFrom, siteId: string, id: string): Promise<KeptEntryRow> {
  const [row] = await from.sql<StoredEntry>`
    SELECT k."id", k."route", k."address", k."content", k."how", k."happened_at" AS "happenedAt", k."kept_at" AS "keptAt",
      k."sheet", k."sheet_row" AS "sheetRow", k."code", k."facts",
      COALESCE(n."name", p."code") AS "person", COALESCE(wn."name", w."code") AS "writer", d."code" AS "device",
      o."id" AS "pointId", e."explanation"
    FROM "kept_entry" k
    LEFT JOIN "person" p ON p."id" = k."person_id" LEFT JOIN "person_name" n ON n."person_id" = p."id"
    LEFT JOIN "person" w ON w."id" = k."written_by" LEFT JOIN "person_name" wn ON wn."person_id" = w."id"
    LEFT JOIN "device" d ON d."id" = k."device_id"
    LEFT JOIN "open_point" o ON o."subject_kind" = 'kept-entry' AND o."subject_id" = k."id"
    LEFT JOIN "open_point_end" e ON e."point_id" = o."id" AND e."voided_by" IS NULL
    WHERE k."id" = ${id} AND k."site_id" = ${siteId}`;
  if (row === undefined) throw new NotFound('kept-entry', id);
  const content = JSON.parse(row.content) as KeptEntryRow['content'];
  const [entry] = await withNames(from, [{ ...row, content, facts: JSON.parse(row.facts) as SentenceFacts }]);
  if (entry === undefined) throw new NotFound('kept-entry', id);
  return entry;
}
