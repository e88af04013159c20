import { openRunOfLine } from '../packing/packing-runs.js';
import { hopperOfLine, hopperOf } from '../plant/plant-facts.js';
import type { Actor } from '../platform/actor.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import type { DoRungForm } from './changeover.form.js';
import type { ChangeoverRow } from './changeovers.js';
import { refuseSameOrUnknown } from '../people/second-person.js';

/** What proves a rung. */
export interface RungProof {
  readonly recordId: string | null;
  readonly count: number | null;
}

interface OfRung {
  readonly changeover: ChangeoverRow;
  readonly form: DoRungForm;
}

/**
 * The record that proves that a rung is done.
 *
 * @throws {Refusal} of each rung, where the proof is not there
 */
export async function proofOfRung(from: ReadFrom, actor: Actor, of: OfRung): Promise<RungProof> {
  switch (of.form.rung) {
    case 'last-pack-out':
      return closeOfRun(from, of.changeover);
    case 'hopper-empty':
      return emptySince(from, of.changeover);
    case 'reject-bin-closed':
      return closedBin(from, of);
    case 'film-back':
      return filmBack(of.form);
    case 'code-checked':
      return checkedCode(from, actor, of);
  }
}

async function closeOfRun(from: ReadFrom, { fromRunId, fromRunNumber }: ChangeoverRow): Promise<RungProof> {
  const [close] = await from.sql<{ id: string; packCount: number }>`
    SELECT "id", "pack_count" AS "packCount" FROM "packing_run_close"
    WHERE "run_id" = ${fromRunId} AND "voided_by" IS NULL`;
  if (close === undefined) throw new Refusal('last-pack-not-out', { run: fromRunNumber });
  return { recordId: close.id, count: close.packCount };
}

/** The hopper was proven empty after the run was closed. */
async function emptySince(from: ReadFrom, { lineId, lineCode, fromRunId }: ChangeoverRow): Promise<RungProof> {
  const [close] = await from.sql<{ closedAt: string }>`
    SELECT "closed_at" AS "closedAt" FROM "packing_run_close" WHERE "run_id" = ${fromRunId} AND "voided_by" IS NULL`;
  const closedAt = close?.closedAt ?? '';
  const hopperId = await hopperOfLine(from, lineId, closedAt);
  if (hopperId === null) throw new Refusal('line-has-no-hopper', { line: lineCode });
  const [empty] = await from.sql<{ id: string }>`
    SELECT e."id" FROM "proven_empty" e JOIN "hopper_period" p ON p."id" = e."period_id"
    WHERE p."hopper_id" = ${hopperId} AND e."proven_at" >= ${closedAt} AND e."voided_by" IS NULL
    ORDER BY e."proven_at" LIMIT 1`;
  if (empty !== undefined) return { recordId: empty.id, count: null };
  throw new Refusal('hopper-not-empty-yet', { hopper: (await hopperOf(from, hopperId)).code });
}

/** The bin of the old run is closed, or weighed out as waste; or somebody looked and says that it was empty. */
async function closedBin(from: ReadFrom, { changeover, form }: OfRung): Promise<RungProof> {
  const bin = form.bin ?? null;
  if (bin !== null) {
    const [closed] = await from.sql<{ id: string }>`
      SELECT b."id" FROM "rework_bin" b JOIN "rework_parent" p ON p."bin_id" = b."id" AND p."voided_by" IS NULL
      WHERE b."site_id" = ${changeover.siteId} AND UPPER(b."number") = ${bin.toUpperCase()}
        AND p."run_id" = ${changeover.fromRunId} AND b."voided_by" IS NULL LIMIT 1`;
    if (closed !== undefined) return { recordId: closed.id, count: null };
    throw new Refusal('bin-not-closed-yet', { bin, run: changeover.fromRunNumber });
  }
  const [weighed] = await from.sql<{ id: string }>`
    SELECT m."id" FROM "removal" m WHERE m."run_id" = ${changeover.fromRunId} AND m."kind" = 'reject'
      AND m."voided_by" IS NULL ORDER BY m."removed_at" DESC LIMIT 1`;
  if (form.note != null) return { recordId: weighed?.id ?? null, count: null };
  throw new BadForm([{ field: 'note', code: 'field-missing', facts: {} }]);
}

function filmBack({ count = null }: DoRungForm): RungProof {
  if (count === null) throw new BadForm([{ field: 'count', code: 'field-missing', facts: {} }]);
  return { recordId: null, count };
}

/** The run of the new format has its film and its code, and a second person read the code too. */
async function checkedCode(from: ReadFrom, actor: Actor, { changeover, form }: OfRung): Promise<RungProof> {
  const { lineId, lineCode, toFormatId, toFormatName } = changeover;
  const run = await openRunOfLine(from, lineId);
  if (run === null || run.formatId !== toFormatId) {
    throw new Refusal('new-run-not-started', { line: lineCode, format: toFormatName });
  }
  const [film] = await from.sql`SELECT "id" FROM "film_use" WHERE "run_id" = ${run.id} AND "voided_by" IS NULL LIMIT 1`;
  if (film === undefined) throw new Refusal('new-film-not-fitted', { run: run.number });
  const [code] = await from.sql<{ id: string }>`
    SELECT "id" FROM "coder_change" WHERE "run_id" = ${run.id} AND "voided_by" IS NULL
    ORDER BY "changed_at" DESC, "id" DESC LIMIT 1`;
  if (code === undefined) throw new Refusal('new-code-not-read', { run: run.number });
  const secondPersonId = form.secondPersonId ?? null;
  if (secondPersonId === null) throw new BadForm([{ field: 'secondPersonId', code: 'field-missing', facts: {} }]);
  await refuseSameOrUnknown(from, actor, secondPersonId);
  return { recordId: code.id, count: null };
}
