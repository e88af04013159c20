import type { Actor } from '../platform/actor.js';
import { NotFound } from '../platform/refusal.js';

/**
 * A thing of the plant, for somebody of its own site only.
 *
 * @throws {NotFound} for a thing of another site, as for one that nobody knows
 */
export function ofSite<Row extends { readonly id: string; readonly siteId: string }>(
  actor: Actor,
  kind: string,
  row: Row,
): Row {
  if (row.siteId !== actor.siteId) throw new NotFound(kind, row.id);
  return row;
}
