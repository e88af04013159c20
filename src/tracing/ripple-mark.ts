import type { EntryDraft } from '../journal/entry-draft.js';
import { isLateForReach } from '../open-points/reach-job.js';
import { sha256 } from '../platform/canonical-text.js';
import { millisecondsBetween } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { RippleScope } from './ripple-scope.js';

/** A hold reaches by what it is on, and that may be named nowhere in what it reaches: any change of one counts. */
const ofHolds: ReadonlySet<string> = new Set([
  ...['place-hold', 'lift-hold', 'set-hold-class', 'narrow-hold', 'widen-hold'],
]);

/** The journal's last sequence of a site. */
export async function headOf(from: ReadFrom, siteId: string): Promise<number> {
  const [row] = await from.sql<{ sequence: number | string }>`
    SELECT "sequence" FROM "journal_head" WHERE "site_id" = ${siteId}`;
  return toWhole(row?.sequence ?? 0);
}

/** Their subject is the record that they make: it has another id each time that they are tried. */
const ofNewRecords: ReadonlySet<string> = new Set(['remove-sugar']);

/** How far the journal had come when a correction was shown, and of which correction that was. */
export function markOf(sequence: number, { action, subject, touches = [] }: EntryDraft): string {
  const named = ofNewRecords.has(action) ? touches : [subject];
  const what = named.map(({ kind, id }) => `${kind} ${id}`).join(' ');
  return `${sequence}.${sha256(`${action} ${what}`).slice(0, 16)}`;
}

/** What a mark is looked at by. */
interface Shown {
  readonly siteId: string;
  readonly mark: string;
  readonly entry: EntryDraft;
  readonly scope: RippleScope;
  readonly palletIds: readonly string[];
}

/**
 * Whether nothing that a correction touches was recorded since it was shown: nothing of its hopper periods, runs, bags,
 * pallets and their deliveries, and no hold. A line that only counts and
 * weighs on, in time, changes nothing that was shown.
 */
export async function isAsShown(from: ReadFrom, shown: Shown): Promise<boolean> {
  const sequence = Number(/^(\d{1,15})\./.exec(shown.mark)?.[1] ?? Number.NaN);
  if (Number.isNaN(sequence) || shown.mark !== markOf(sequence, shown.entry)) return false;
  const { scope, palletIds, siteId } = shown;
  const bags = await bagsTippedIn(from, scope.periodIds);
  const deliveries = await deliveriesOf(from, palletIds);
  const named = [shown.entry.subject, ...(shown.entry.touches ?? [])].map(({ id }) => id);
  const ids = [...named, ...scope.periodIds, ...scope.runIds, ...scope.bagIds, ...bags, ...palletIds, ...deliveries];
  const since = await from.sql<Since>`
    SELECT "sequence", "action", "recorded_at" AS "recordedAt", "occurred_at" AS "occurredAt",
      CASE WHEN "action" = 'receive-weights' THEN "after" END AS "weights" FROM "journal_entry"
    WHERE "site_id" = ${siteId} AND "sequence" > ${sequence} ORDER BY "sequence"`;
  if (since.some(({ action }) => ofHolds.has(action))) return false;
  const touching = await inChunks(
    ids,
    (chunk) => from.sql<{ sequence: number | string }>`
      SELECT "sequence" FROM "journal_subject"
      WHERE "site_id" = ${siteId} AND "sequence" > ${sequence} AND "id" IN (${() => chunk}) ORDER BY "sequence"`,
  );
  const touched = new Set(touching.map((row) => toWhole(row.sequence)));
  return since.every((entry) => !touched.has(toWhole(entry.sequence)) || isOfRunning(entry));
}

interface Since {
  readonly sequence: number | string;
  readonly action: string;
  readonly recordedAt: string;
  readonly occurredAt: string;
  /** Of received weights what the entry says of them, canonical text; else null. */
  readonly weights: string | null;
}

/** What comes of itself while a line runs: its counts, and the weights of its packs. */
function isOfRunning({ action, recordedAt, occurredAt, weights }: Since): boolean {
  if (action !== 'count-packs' && weights === null) return false;
  const { firstAt = occurredAt } = JSON.parse(weights ?? '{}') as { readonly firstAt?: string };
  const lateMinutes = Math.floor(millisecondsBetween(firstAt, recordedAt) / 60_000);
  return !isLateForReach({ lateMinutes });
}

async function bagsTippedIn(from: ReadFrom, periodIds: readonly string[]): Promise<readonly string[]> {
  const rows = await inChunks(
    periodIds,
    (chunk) => from.sql<{ id: string }>`
      SELECT DISTINCT "bag_id" AS "id" FROM "tip" WHERE "period_id" IN (${() => chunk}) AND "bag_id" IS NOT NULL
      ORDER BY "bag_id"`,
  );
  return rows.map(({ id }) => id);
}

async function deliveriesOf(from: ReadFrom, palletIds: readonly string[]): Promise<readonly string[]> {
  const rows = await inChunks(
    palletIds,
    (chunk) => from.sql<{ id: string }>`
      SELECT DISTINCT "place_id" AS "id" FROM "pallet_state"
      WHERE "pallet_id" IN (${() => chunk}) AND "place_id" IS NOT NULL ORDER BY "place_id"`,
  );
  return rows.map(({ id }) => id);
}
