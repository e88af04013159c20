import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { AccountLine, AccountView } from './account-view.js';

const isOfPacks = ({ packs }: AccountLine): boolean => packs !== null;

/**
 * The records of an account's lines that were written on paper and keyed in later, by their ids: tips and removals, and runs of which
 * packs were counted on paper in the time of the account.
 */
export async function linesOnPaper(
  from: ReadFrom,
  siteId: string,
  { lines, drawnFromAt, drawnUntilAt }: AccountView,
): Promise<readonly string[]> {
  const idsOf = (of: readonly AccountLine[]): string[] => [...new Set(of.map(({ recordId }) => recordId))];
  const records = await inChunks(
    idsOf(lines.filter((line) => !isOfPacks(line))),
    (chunk) => from.sql<{ id: string }>`
      SELECT DISTINCT s."id" FROM "journal_subject" s
      JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
      JOIN "entry_happening" h ON h."entry_id" = e."id" AND h."how" = 'paper' AND h."voided_by" IS NULL
      WHERE s."site_id" = ${siteId} AND s."kind" IN ('tip', 'removal') AND s."id" IN (${() => chunk})`,
  );
  const runs = await inChunks(
    idsOf(lines.filter(isOfPacks)),
    (chunk) => from.sql<{ id: string }>`
      SELECT DISTINCT s."id" FROM "journal_subject" s
      JOIN "journal_entry" e ON e."site_id" = s."site_id" AND e."sequence" = s."sequence"
      JOIN "entry_happening" h ON h."entry_id" = e."id" AND h."how" = 'paper' AND h."voided_by" IS NULL
      WHERE s."site_id" = ${siteId} AND s."kind" = 'packing-run' AND s."id" IN (${() => chunk})
        AND h."action" IN ('count-packs', 'count-loose-packs')
        AND h."happened_at" >= ${drawnFromAt} AND h."happened_at" <= ${drawnUntilAt}`,
  );
  return [...records, ...runs].map(({ id }) => id);
}
