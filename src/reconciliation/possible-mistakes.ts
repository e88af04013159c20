import { candidateMistakes, type WeighedRecord } from '../core/mass-balance/candidate-mistakes.js';
import { inChunks } from '../platform/database/in-chunks.js';
import { palletsOfRanges } from '../pallets/pallets-of-ranges.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { AccountLine } from './account-view.js';
import type { CodedCandidate } from './balance-lines.js';
import type { HopperTime } from './poured-between.js';

/**
 * The single mistakes that are worth looking for in these lines: a bag or pallet not recorded or recorded twice, and
 * each rework bin that was closed by then and never recorded as tipped. Pallets count only where people counted the
 * packs: a device does not count a pallet twice.
 */
export async function possibleMistakes(
  from: ReadFrom,
  time: HopperTime,
  lines: readonly AccountLine[],
): Promise<readonly CodedCandidate[]> {
  const bags = lines.filter(({ kind }) => kind === 'bag-tipped');
  const pallets = await palletsByHand(from, time, lines);
  const codes = new Map([
    ...bags.map(({ recordId, code }): [string, string | null] => [recordId, code]),
    ...pallets.map(({ recordId, code }): [string, string | null] => [recordId, code]),
  ]);
  const found = candidateMistakes(bags, pallets).map((candidate): CodedCandidate => {
    const code = candidate.recordId === null ? null : (codes.get(candidate.recordId) ?? null);
    return { ...candidate, code };
  });
  return [...found, ...(await binsNotTipped(from, time))];
}

interface CodedPallet extends WeighedRecord {
  readonly code: string;
}

async function palletsByHand(
  from: ReadFrom,
  time: HopperTime,
  lines: readonly AccountLine[],
): Promise<readonly CodedPallet[]> {
  const packed = lines.flatMap(({ recordId, packs }) => (packs === null ? [] : [{ runId: recordId, ...packs }]));
  const byDevice = await runsOnDevices(
    from,
    time,
    packed.map(({ runId }) => runId),
  );
  const byHand = packed.filter(({ runId }) => !byDevice.has(runId));
  if (byHand.length === 0) return [];
  const placed = (await palletsOfRanges(from, byHand)).filter(({ isCertain }) => isCertain);
  const means = new Map(byHand.map(({ runId, meanMilligrams }) => [runId, meanMilligrams]));
  const grams = new Map<string, number>();
  for (const { palletId, runId, fromCount, toCount } of placed) {
    const part = Math.round(((toCount - fromCount) * (means.get(runId) ?? 0)) / 1000);
    grams.set(palletId, (grams.get(palletId) ?? 0) + part);
  }
  const codes = await inChunks(
    [...grams.keys()],
    (chunk) => from.sql<{ id: string; sscc: string }>`
      SELECT "id", "sscc" FROM "pallet" WHERE "id" IN (${() => chunk}) ORDER BY "id"`,
  );
  return codes.map(({ id, sscc }) => ({ recordId: id, code: sscc, grams: grams.get(id) ?? 0 }));
}

async function runsOnDevices(
  from: ReadFrom,
  { fromAt, untilAt }: HopperTime,
  runIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await inChunks(
    runIds,
    (chunk) => from.sql<{ runId: string }>`
      SELECT DISTINCT "run_id" AS "runId" FROM "pack_count"
      WHERE "run_id" IN (${() => chunk}) AND "occasion" = ${'minute'} AND "voided_by" IS NULL
        AND "counted_at" >= ${fromAt} AND "counted_at" <= ${untilAt}`,
  );
  return new Set(rows.map(({ runId }) => runId));
}

async function binsNotTipped(from: ReadFrom, { siteId, untilAt }: HopperTime): Promise<readonly CodedCandidate[]> {
  const bins = await from.sql<{ id: string; number: string; netGrams: number }>`
    SELECT b."id", b."number", b."net_grams" AS "netGrams" FROM "rework_bin" b
    LEFT JOIN "tip" t ON t."bin_id" = b."id" AND t."voided_by" IS NULL
    WHERE b."site_id" = ${siteId} AND b."voided_by" IS NULL AND b."closed_at" < ${untilAt} AND t."id" IS NULL
      AND b."net_grams" > 0
    ORDER BY b."id" DESC LIMIT 50`;
  return bins.map(({ id, number, netGrams }) => ({
    mistake: 'rework-not-recorded',
    recordId: id,
    code: number,
    grams: netGrams,
    standardGrams: 0,
  }));
}
