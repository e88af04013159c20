import type { Instant } from '../platform/clock.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { changeoverRungs, type RungWord } from './changeover-rungs.js';

/** A rung that is done. */
export interface RungRow {
  readonly rung: RungWord;
  readonly recordId: string | null;
  readonly count: number | null;
  readonly secondPersonId: string | null;
  readonly note: string | null;
  readonly doneAt: Instant;
}

export interface ChangeoverRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly fromRunId: string;
  readonly fromRunNumber: string;
  readonly fromFormatId: string;
  readonly toFormatId: string;
  readonly toFormatName: string;
  readonly openedAt: Instant;
  /** In the order of the ladder. */
  readonly rungs: readonly RungRow[];
  /** The rung that comes next; null: the ladder is climbed. */
  readonly next: RungWord | null;
}

const columns = (): string => `
  c."id", c."site_id" AS "siteId", c."line_id" AS "lineId", l."code" AS "lineCode", c."from_run_id" AS "fromRunId",
  r."number" AS "fromRunNumber", r."format_id" AS "fromFormatId", c."to_format_id" AS "toFormatId",
  f."name" AS "toFormatName", c."opened_at" AS "openedAt"
  FROM "changeover" c JOIN "packing_line" l ON l."id" = c."line_id" JOIN "packing_run" r ON r."id" = c."from_run_id"
  JOIN "pack_format" f ON f."id" = c."to_format_id"`;

/** @throws {NotFound} `changeover`, also for one that was dropped */
export async function changeoverOf(from: ReadFrom, siteId: string, id: string): Promise<ChangeoverRow> {
  const row = onlyRow(
    await from.sql<Omit<ChangeoverRow, 'rungs' | 'next'>>`
      SELECT ${columns} WHERE c."id" = ${id} AND c."site_id" = ${siteId} AND c."voided_by" IS NULL`,
  );
  if (row === null) throw new NotFound('changeover', id);
  return withRungs(from, row);
}

/** The ladder that a line stands on; null: none, or the last one is climbed. */
export async function openChangeoverOf(from: ReadFrom, lineId: string): Promise<ChangeoverRow | null> {
  const row = onlyRow(
    await from.sql<Omit<ChangeoverRow, 'rungs' | 'next'>>`
      SELECT ${columns} WHERE c."line_id" = ${lineId} AND c."voided_by" IS NULL
      ORDER BY c."opened_at" DESC, c."id" DESC LIMIT 1`,
  );
  if (row === null) return null;
  const changeover = await withRungs(from, row);
  return changeover.next === null ? null : changeover;
}

async function withRungs(from: ReadFrom, row: Omit<ChangeoverRow, 'rungs' | 'next'>): Promise<ChangeoverRow> {
  const done = await from.sql<RungRow>`
    SELECT "rung", "record_id" AS "recordId", "count", "second_person_id" AS "secondPersonId", "note",
      "done_at" AS "doneAt"
    FROM "changeover_rung" WHERE "changeover_id" = ${row.id} AND "voided_by" IS NULL`;
  const rungs = changeoverRungs.flatMap((word) => done.find(({ rung }) => rung === word) ?? []);
  return { ...row, rungs, next: changeoverRungs.find((word) => !done.some(({ rung }) => rung === word)) ?? null };
}
