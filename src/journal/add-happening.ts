import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { lockHead } from './append-entry.js';
import type { Asked, Change } from './entry-draft.js';
import { EntryHappening } from './entry-happening.entity.js';

/** What ends what a row of a paper form began, and so may be keyed in from the same row. */
const endsOf: Readonly<Record<string, string>> = { 'end-tip': 'tip-bag', 'start-line-again': 'stop-line' };

/** What was keyed in from a row of a paper form. */
interface KeyedEntry {
  readonly action: string;
  readonly happenedAt: Instant;
}

/**
 * Keeps how an entry came that was made away from the server. A row of a paper form gives one entry, and one more for
 * the end of what it began.
 *
 * @throws {Refusal} `paper-row-keyed`
 */
export async function addHappening(tx: Tx, asked: Asked, { entryId }: Change, action: string): Promise<void> {
  const { happening = null, actor } = asked;
  if (happening === null) return;
  const { how, at: happenedAt, sheet, row: sheetRow, writtenBy } = happening;
  const came = { entryId, siteId: actor.siteId, action, how, happenedAt, sheet, sheetRow, writtenBy };
  if (sheet !== null && sheetRow !== null) {
    // What is looked up next must stay so until the commit: two entries from one row wait for each other here.
    await lockHead(tx, actor.siteId);
    await refuseKeyedRow(tx, { siteId: actor.siteId, sheet, row: sheetRow }, action);
  }
  await tx.insert(EntryHappening, came);
}

/**
 * Refuses a row that gave an entry already, and says which.
 *
 * @throws {Refusal} `paper-row-keyed`
 */
export async function refuseKeyedRow(
  from: ReadFrom,
  { siteId, sheet, row }: { readonly siteId: string; readonly sheet: string; readonly row: number },
  action: string,
): Promise<void> {
  const keyed = await from.sql<KeyedEntry>`
    SELECT "action", "happened_at" AS "happenedAt" FROM "entry_happening"
    WHERE "site_id" = ${siteId} AND "sheet" = ${sheet} AND "sheet_row" = ${row} AND "voided_by" IS NULL
    ORDER BY "entry_id"`;
  const there = keyed.find((one) => one.action === action) ?? keyed.find((one) => one.action !== endsOf[action]);
  if (there === undefined) return;
  throw new Refusal('paper-row-keyed', { sheet, row, what: there.action, at: there.happenedAt });
}
