import { lockRun } from '../packing/run-states.js';
import { findRun, lotRangesOfRuns, runOf } from '../packing/packing-runs.js';
import type { RunRow } from '../packing/packing-run-rows.js';
import { recordCount } from '../packing/count-packs.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { clipped, overlaps, packsIn, type RunRange } from '../packing/run-ranges.js';
import type { BuildPalletForm } from './pallet.form.js';

/** A range of packs that is all of one lot. */
export interface LotShare extends RunRange {
  readonly lotId: string;
}

/** Packs chosen for a pallet, with the runs that they come from; the runs are taken for this unit. */
export interface ChosenPacks {
  readonly runs: readonly RunRow[];
  readonly ranges: readonly RunRange[];
}

/**
 * The packs that the form means. Their runs stay taken until the commit, so that no other pallet gets the same packs.
 *
 * @throws {Refusal} `range-without-packs`, `range-beyond-count`, `nothing-to-palletise`
 */
export async function choosePacks(tx: Tx, siteId: string, form: BuildPalletForm): Promise<ChosenPacks> {
  const asked = askedRanges(form);
  const idOf = new Map<string, string>();
  for (const { run } of asked) idOf.set(run, (await findRun(tx, siteId, run)).id);
  const runs = new Map<string, RunRow>();
  // In one order for all: two pallets over the same two runs must not wait for each other.
  for (const runId of [...new Set(idOf.values())].sort()) {
    await lockRun(tx, runId);
    runs.set(runId, await runOf(tx, runId));
  }
  const ranges: RunRange[] = [];
  for (const { run: name, part } of asked) {
    const run = runs.get(idOf.get(name) ?? '');
    if (run === undefined) throw new RangeError('a range of no run');
    const range = part === null ? await nextPacks(tx, run, form.packCount ?? null) : { runId: run.id, ...part };
    refuseOddRange(range, run);
    ranges.push(range);
  }
  return { runs: [...runs.values()], ranges };
}

/** Which packs of which run; null: those that come next. */
interface AskedRange {
  readonly run: string;
  readonly part: { readonly fromCount: number; readonly toCount: number } | null;
}

function askedRanges(form: BuildPalletForm): readonly AskedRange[] {
  const list = form.ranges ?? null;
  const run = form.run ?? null;
  if (list !== null && run !== null) throw new BadForm([{ field: 'ranges', code: 'run-or-ranges', facts: {} }]);
  if (list !== null)
    return list.map(({ run: name, fromCount, toCount }) => ({ run: name, part: { fromCount, toCount } }));
  if (run === null) throw new BadForm([{ field: 'run', code: 'field-missing', facts: {} }]);
  return [{ run, part: null }];
}

/** What comes after the last pack of the run that stands on a pallet: as many as asked for, else a full pallet or the rest. */
async function nextPacks(tx: Tx, run: RunRow, packCount: number | null): Promise<RunRange> {
  const [row] = await tx.sql<{ packsPerPallet: number; fromCount: number | null }>`
    SELECT f."packs_per_pallet" AS "packsPerPallet", (
      SELECT MAX(c."to_count") FROM "pallet_content" c JOIN "pallet_state" s ON s."pallet_id" = c."pallet_id"
      WHERE c."run_id" = ${run.id} AND c."voided_by" IS NULL AND s."status" <> 'taken-apart') AS "fromCount"
    FROM "pack_format" f WHERE f."id" = ${run.formatId}`;
  const fromCount = row?.fromCount ?? 0;
  const full = row?.packsPerPallet ?? 0;
  const rest = run.packCount - fromCount;
  if (run.closedAt !== null && rest <= 0) {
    throw new Refusal('nothing-to-palletise', { run: run.number, packCount: run.packCount });
  }
  const wanted = packCount ?? (run.closedAt === null ? full : Math.min(full, rest));
  return { runId: run.id, fromCount, toCount: fromCount + wanted };
}

function refuseOddRange({ fromCount, toCount }: RunRange, run: RunRow): void {
  if (fromCount >= toCount) throw new Refusal('range-without-packs', { run: run.number, fromCount, toCount });
  const isAhead = fromCount > run.packCount || (toCount > run.packCount && run.closedAt !== null);
  if (!isAhead) return;
  throw new Refusal('range-beyond-count', { run: run.number, fromCount, toCount, packCount: run.packCount });
}

/**
 * A full pallet is a count too: where a range ends beyond the last one of an open run, the count is recorded with it.
 *
 * @throws {Refusal} those of a count
 */
export async function countWithPallet(
  tx: Tx,
  chosen: ChosenPacks,
  pallet: { readonly builtAt: Instant; readonly hasHappened: boolean; readonly nextId: () => string },
): Promise<void> {
  for (const run of chosen.runs) {
    const last = Math.max(...chosen.ranges.filter((range) => range.runId === run.id).map((range) => range.toCount));
    if (last <= run.packCount) continue;
    // Of pallets that come in another order than they were built in, all stand there at the last count.
    const countedAt = pallet.hasHappened ? await lastCountedAt(tx, run.id, pallet.builtAt) : pallet.builtAt;
    await recordCount(tx, {
      id: pallet.nextId(),
      runId: run.id,
      packCount: last,
      countedAt,
      occasion: 'pallet',
    });
  }
}

/** When the run was counted last, or this instant where that is later. */
async function lastCountedAt(from: ReadFrom, runId: string, at: Instant): Promise<Instant> {
  const [row] = await from.sql<{ countedAt: Instant | null }>`
    SELECT MAX("counted_at") AS "countedAt" FROM "pack_count" WHERE "run_id" = ${runId} AND "voided_by" IS NULL`;
  const last = row?.countedAt ?? at;
  return last > at ? last : at;
}

/**
 * A pallet of this run that was built later and is recorded already; null where they come in their order. What waited
 * on a device may be overtaken.
 */
export async function palletBuiltLater(
  from: ReadFrom,
  chosen: ChosenPacks,
  builtAt: Instant,
): Promise<{ readonly sscc: string; readonly builtAt: Instant } | null> {
  for (const run of chosen.runs) {
    const [later] = await from.sql<{ sscc: string; builtAt: Instant }>`
      SELECT p."sscc", p."built_at" AS "builtAt" FROM "pallet_content" c
      JOIN "pallet" p ON p."id" = c."pallet_id" AND p."voided_by" IS NULL
      WHERE c."run_id" = ${run.id} AND c."voided_by" IS NULL AND p."built_at" > ${builtAt}
      ORDER BY p."built_at" LIMIT 1`;
    if (later !== undefined) return later;
  }
  return null;
}

/**
 * Counts the packs per lot: each range is cut where the coder's text changed.
 *
 * @throws {Refusal} `lot-unknown`
 */
export async function sharesByLot(tx: Tx, chosen: ChosenPacks): Promise<readonly LotShare[]> {
  const lots = await lotRangesOfRuns(
    tx,
    chosen.runs.map((run) => run.id),
  );
  return chosen.ranges.flatMap((range) => {
    const shares = lots.flatMap((lot) => {
      const shared = clipped(range, lot);
      return shared === null ? [] : [{ ...shared, lotId: lot.lotId }];
    });
    if (packsIn(shares) === packsIn([range])) return shares;
    const run = chosen.runs.find((one) => one.id === range.runId)?.number ?? null;
    throw new Refusal('lot-unknown', { run, fromCount: range.fromCount, toCount: range.toCount });
  });
}

/**
 * No pack stands on two pallets.
 *
 * @throws {Refusal} `packs-on-another-pallet`
 */
export async function refuseOverlap(tx: Tx, chosen: ChosenPacks): Promise<void> {
  chosen.ranges.forEach((range, place) => {
    if (chosen.ranges.slice(place + 1).some((other) => overlaps(range, other))) {
      throw new Refusal('ranges-overlap', { fromCount: range.fromCount, toCount: range.toCount });
    }
  });
  for (const { runId, fromCount, toCount } of chosen.ranges) {
    const [other] = await tx.sql<{ sscc: string; fromCount: number; toCount: number }>`
      SELECT p."sscc", c."from_count" AS "fromCount", c."to_count" AS "toCount"
      FROM "pallet_content" c
      JOIN "pallet_state" s ON s."pallet_id" = c."pallet_id"
      JOIN "pallet" p ON p."id" = c."pallet_id"
      WHERE c."run_id" = ${runId} AND c."voided_by" IS NULL AND s."status" <> 'taken-apart'
        AND c."from_count" < ${toCount} AND c."to_count" > ${fromCount}
      ORDER BY c."from_count" LIMIT 1`;
    if (other !== undefined) {
      throw new Refusal('packs-on-another-pallet', {
        pallet: other.sscc,
        fromCount: Math.max(fromCount, other.fromCount),
        toCount: Math.min(toCount, other.toCount),
      });
    }
  }
}
