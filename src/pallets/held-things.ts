import type { HoldScope, ScopeKind } from '../disposition/standings.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';

/** Where the name stands that people know a thing by; of a shift, its dryer's or its line's. */
const nameOf: Readonly<
  Record<Exclude<ScopeKind, 'hopper-period'>, { readonly table: string; readonly column: string }>
> = {
  'bulk-bag': { table: 'bulk_bag', column: 'number' },
  'dryer-run': { table: 'dryer_run', column: 'number' },
  'dryer-shift': { table: 'dryer', column: 'code' },
  lot: { table: 'lot', column: 'code' },
  'packing-run': { table: 'packing_run', column: 'number' },
  'packing-shift': { table: 'packing_line', column: 'code' },
  pallet: { table: 'pallet', column: 'sscc' },
  'film-lot': { table: 'film_lot', column: 'code' },
};

interface NamedRow {
  readonly id: string;
  readonly name: string;
}

/** The names of things that are on hold, by their ids: a lot's code, a pallet's SSCC, the code of a period's hopper. */
export async function namesOfHeld(from: ReadFrom, held: readonly HoldScope[]): Promise<ReadonlyMap<string, string>> {
  const names = new Map<string, string>();
  for (const [kind, own] of groupBy(held, (scope) => scope.kind)) {
    const ids = own.map(({ id }) => id);
    for (const { id, name } of await inChunks(ids, (chunk) => named(from, kind, chunk))) names.set(id, name);
  }
  return names;
}

function named(from: ReadFrom, kind: ScopeKind, ids: readonly string[]): Promise<readonly NamedRow[]> {
  if (kind === 'hopper-period') {
    return from.sql<NamedRow>`
      SELECT p."id", h."code" AS "name" FROM "hopper_period" p JOIN "hopper" h ON h."id" = p."hopper_id"
      WHERE p."id" IN (${() => ids})`;
  }
  const { table, column } = nameOf[kind];
  return from.sql<NamedRow>`
    SELECT "id", ${() => `"${column}"`} AS "name" FROM ${() => `"${table}"`} WHERE "id" IN (${() => ids})`;
}
