import { NotFound, Refusal } from '../../platform/refusal.js';

export interface MayBeVoid {
  readonly voidedBy: string | null;
}

/**
 * A record that may be corrected: it is there, and no correction stands in its place yet.
 *
 * @throws {NotFound} with the kind
 * @throws {Refusal} `already-corrected`
 */
export function standing<Row extends MayBeVoid>(row: Row | undefined, kind: string, id: string): Row {
  if (row === undefined) throw new NotFound(kind, id);
  if (row.voidedBy !== null) throw new Refusal('already-corrected', { id });
  return row;
}
