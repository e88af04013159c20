import { findRun } from '../../packing/packing-runs.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { runColumns } from '../../packing/packing-runs.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { latenessLimits } from '../../platform/occurred-at.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import { fault, type LineFault } from './sent-weight.js';

const centisecondsPerMinute = 6000;
/** How far a weigher's clock may be off before its times do not fit the run: the house's limit for clocks ahead. */
export const clockLeewayCentiseconds = latenessLimits.aheadMinutes * centisecondsPerMinute;

/** A run with what weights are held against. */
export interface WeighedRun {
  readonly id: string;
  readonly number: string;
  readonly nominalMilligrams: number;
  readonly startedAt: string;
  readonly closedAt: string | null;
  /** Hundredths of a second since 1970 UTC; infinity while it is open. */
  readonly fromCentiseconds: number;
  readonly untilCentiseconds: number;
}

/** What a run's name in a batch means, or why it means nothing. */
export type RunNamed = WeighedRun | LineFault;

export function isFault(named: RunNamed): named is LineFault {
  return 'code' in named;
}

/** The runs that a batch names, by their place among its texts. A run of another line is a fault, not a weight. */
export async function runsNamed(
  from: ReadFrom,
  weigher: PackWeigherRow,
  names: readonly string[],
): Promise<readonly RunNamed[]> {
  const runs: RunNamed[] = [];
  for (const name of names) runs.push(await runNamed(from, weigher, name));
  return runs;
}

async function runNamed(from: ReadFrom, weigher: PackWeigherRow, name: string): Promise<RunNamed> {
  const run = await findRun(from, weigher.siteId, name).catch((error: unknown) => {
    if (error instanceof NotFound) return null;
    throw error;
  });
  if (run === null) return fault('run', 'weight-run-unknown', { run: name.slice(0, 60) });
  if (run.lineId === weigher.lineId) return weighedRun(run);
  const facts = { run: run.number, itsLine: run.lineCode, line: weigher.lineCode };
  return fault('run', 'weight-run-of-other-line', facts);
}

/** The runs that a line had between two times, in their order: for weights that name none. */
export async function runsOfLineBetween(
  from: ReadFrom,
  lineId: string,
  { firstAt, lastAt }: { readonly firstAt: string; readonly lastAt: string },
): Promise<readonly WeighedRun[]> {
  const rows = await from.sql<RunRow>`
    SELECT ${runColumns} WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL AND r."started_at" <= ${lastAt}
      AND (c."closed_at" IS NULL OR c."closed_at" >= ${firstAt}) ORDER BY r."started_at", r."id" LIMIT 1000`;
  return rows.map(weighedRun);
}

function weighedRun(run: RunRow): WeighedRun {
  return {
    id: run.id,
    number: run.number,
    nominalMilligrams: run.nominalGrams * 1000,
    startedAt: run.startedAt,
    closedAt: run.closedAt,
    fromCentiseconds: Math.floor(Date.parse(run.startedAt) / 10),
    untilCentiseconds: run.closedAt === null ? Infinity : Math.ceil(Date.parse(run.closedAt) / 10),
  };
}
