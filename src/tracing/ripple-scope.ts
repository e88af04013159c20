import { reachOfBags } from '../hopper/group-reach.js';
import { periodAt, periodsOfBag, periodsOfRuns } from '../hopper/hopper-period-rows.js';
import type { EntryDraft, Subject } from '../journal/entry-draft.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** What a correction may touch: everything that is read before and after it. */
export interface RippleScope {
  readonly periodIds: readonly string[];
  readonly runIds: readonly string[];
  readonly palletIds: readonly string[];
  readonly bagIds: readonly string[];
}

/**
 * Where what an entry speaks of may have gone, by the records of one side: the hopper periods of its tips, bags and runs,
 * all that those lead on to, and the runs that drew from them.
 */
export async function scopeOfEntry(from: ReadFrom, { subject, touches = [] }: EntryDraft): Promise<RippleScope> {
  const subjects = [subject, ...touches];
  const own: RippleScope[] = [];
  for (const one of subjects) own.push(await scopeOfSubject(from, one));
  const scope = joined(own);
  const ofRuns = (await periodsOfRuns(from, scope.runIds)).map(({ periodId }) => periodId);
  const periodIds = await goodPeriods(from, [...scope.periodIds, ...ofRuns]);
  const reach = await reachOfBags(from, [], periodIds);
  return joined([scope, { ...none, periodIds: reach.periodIds, runIds: reach.runIds }]);
}

export function joined(scopes: readonly RippleScope[]): RippleScope {
  const all = (key: keyof RippleScope): string[] => [...new Set(scopes.flatMap((scope) => scope[key]))].sort();
  return { periodIds: all('periodIds'), runIds: all('runIds'), palletIds: all('palletIds'), bagIds: all('bagIds') };
}

const none: RippleScope = { periodIds: [], runIds: [], palletIds: [], bagIds: [] };

async function scopeOfSubject(from: ReadFrom, { kind, id }: Subject): Promise<RippleScope> {
  switch (kind) {
    case 'tip':
      return { ...none, periodIds: await periodOfTip(from, id) };
    case 'hopper-period':
      return { ...none, periodIds: [id] };
    case 'bulk-bag':
      return { ...none, bagIds: [id], periodIds: await periodsOfBag(from, id) };
    case 'packing-run':
      return { ...none, runIds: [id] };
    case 'pallet':
      return { ...none, palletIds: [id] };
    case 'removal':
      return scopeOfRemoval(from, id);
    default:
      return none;
  }
}

/** Of a void tip too: what it was in is touched. */
async function periodOfTip(from: ReadFrom, tipId: string): Promise<string[]> {
  const rows = await from.sql<{ id: string }>`SELECT "period_id" AS "id" FROM "tip" WHERE "id" = ${tipId}`;
  return rows.map(({ id }) => id);
}

async function scopeOfRemoval(from: ReadFrom, removalId: string): Promise<RippleScope> {
  const [row] = await from.sql<{ runId: string | null; hopperId: string | null; removedAt: string }>`
    SELECT "run_id" AS "runId", "hopper_id" AS "hopperId", "removed_at" AS "removedAt"
    FROM "removal" WHERE "id" = ${removalId}`;
  if (row === undefined) return none;
  const period = row.hopperId === null ? null : await periodAt(from, row.hopperId, row.removedAt);
  return {
    ...none,
    runIds: row.runId === null ? [] : [row.runId],
    periodIds: period === null ? [] : [period.id],
  };
}

/** A period that only comes, or goes, with the correction is on one side alone. */
async function goodPeriods(from: ReadFrom, periodIds: readonly string[]): Promise<string[]> {
  const rows = await inChunks(
    periodIds,
    (chunk) => from.sql<{ id: string }>`
      SELECT "id" FROM "hopper_period" WHERE "id" IN (${() => chunk}) AND "voided_by" IS NULL ORDER BY "id"`,
  );
  return rows.map(({ id }) => id);
}
