import { inChunks } from '../platform/database/in-chunks.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { periodsOfRuns } from './hopper-period-rows.js';

/** The hopper periods that runs drew from, and all whose sugar may have come into those as residue or rework. */
export async function periodsInto(from: ReadFrom, runIds: readonly string[]): Promise<ReadonlySet<string>> {
  const reached = new Set<string>();
  let level = await drawnFrom(from, runIds);
  while (level.length > 0) {
    for (const id of level) reached.add(id);
    const earlier = [...(await residuesOf(from, level)), ...(await drawnFrom(from, await runsOfRework(from, level)))];
    level = [...new Set(earlier)].filter((id) => !reached.has(id));
  }
  return reached;
}

async function drawnFrom(from: ReadFrom, runIds: readonly string[]): Promise<string[]> {
  return [...new Set((await periodsOfRuns(from, [...new Set(runIds)])).map(({ periodId }) => periodId))];
}

async function residuesOf(from: ReadFrom, periodIds: readonly string[]): Promise<string[]> {
  const rows = await inChunks(
    periodIds,
    (chunk) => from.sql<{ id: string }>`
      SELECT "previous_period_id" AS "id" FROM "hopper_period"
      WHERE "id" IN (${() => chunk}) AND "previous_period_id" IS NOT NULL AND "voided_by" IS NULL`,
  );
  return rows.map(({ id }) => id);
}

async function runsOfRework(from: ReadFrom, periodIds: readonly string[]): Promise<string[]> {
  const rows = await inChunks(
    periodIds,
    (chunk) => from.sql<{ runId: string }>`
      SELECT DISTINCT r."run_id" AS "runId"
      FROM "tip" t JOIN "rework_parent" r ON r."bin_id" = t."bin_id" AND r."voided_by" IS NULL
      WHERE t."period_id" IN (${() => chunk}) AND t."voided_by" IS NULL`,
  );
  return rows.map(({ runId }) => runId);
}
