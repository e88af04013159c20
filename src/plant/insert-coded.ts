import type { EntityTarget, ObjectLiteral } from 'typeorm';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Columns, Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';

/**
 * Inserts a thing of the plant. The table's key closes the race of two that take one code.
 *
 * @throws {Refusal} `code-taken`
 */
export async function insertCoded<Row extends ObjectLiteral & { code: string }>(
  tx: Tx,
  entity: EntityTarget<Row>,
  row: Columns<Row> & { readonly code: string },
): Promise<void> {
  try {
    await tx.insert(entity, row);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('code-taken', { code: row.code });
    throw error;
  }
}
