import type { ReadFrom } from '../../platform/database/reading.js';
import type { SavedLayout } from './saved-layout.js';

/** A layout that was saved for a weigher. */
interface FileLayoutRow {
  readonly id: string;
  readonly layout: SavedLayout;
}

/** What the columns of a weigher's files mean now; null: nobody said yet. */
export async function fileLayoutOf(from: ReadFrom, weigherId: string): Promise<FileLayoutRow | null> {
  const [row] = await from.sql<{ id: string; layout: string }>`
    SELECT "id", "layout" FROM "file_layout" WHERE "weigher_id" = ${weigherId}
    ORDER BY "set_at" DESC, "id" DESC LIMIT 1`;
  return row === undefined ? null : { id: row.id, layout: JSON.parse(row.layout) as SavedLayout };
}

/** A layout that a file was brought with. */
export async function fileLayoutById(from: ReadFrom, id: string): Promise<SavedLayout> {
  const [row] = await from.sql<{ layout: string }>`SELECT "layout" FROM "file_layout" WHERE "id" = ${id}`;
  if (row === undefined) throw new Error(`no layout ${id}`);
  return JSON.parse(row.layout) as SavedLayout;
}
