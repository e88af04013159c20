import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import type { Asked, Change } from './entry-draft.js';
import { EntryHappening } from './entry-happening.entity.js';

/**
 * Keeps how an entry came that was made away from the server. A row of a paper form gives one entry of a kind.
 *
 * @throws {Refusal} `paper-row-keyed`
 */
export async function addHappening(tx: Tx, asked: Asked, { entryId }: Change, action: string): Promise<void> {
  const { happening = null, actor } = asked;
  if (happening === null) return;
  const { how, at: happenedAt, sheet, row: sheetRow, writtenBy } = happening;
  const came = { entryId, siteId: actor.siteId, action, how, happenedAt, sheet, sheetRow, writtenBy };
  try {
    await tx.insert(EntryHappening, came);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('paper-row-keyed', { sheet, row: sheetRow });
    throw error;
  }
}
