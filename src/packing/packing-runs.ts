import { normaliseCode } from '../core/identifiers/normalise-code.js';
import { isId } from '../platform/is-id.js';
import type { Instant } from '../platform/clock.js';
import { toBoolean } from '../platform/database/stored-values.js';
import { once, type ReadFrom } from '../platform/database/reading.js';
import { groupBy } from '../platform/group-by.js';
import { NotFound } from '../platform/refusal.js';
import type {
  CountRow,
  FilmLotRow,
  FilmRange,
  LooseCountRow,
  LotRange,
  LotRow,
  RemovalRow,
  RunCounts,
  RunRow,
  StopRow,
} from './packing-run-rows.js';
import { readRunNumber } from './packing-run-number.js';

/** What `RunRow` is read from; the caller adds its condition. */
export const runColumns = (): string => `
  r."id", r."site_id" AS "siteId", r."number", r."line_id" AS "lineId", l."code" AS "lineCode", l."name" AS "lineName",
  r."format_id" AS "formatId", f."code" AS "formatCode", f."name" AS "formatName", f."gtin",
  f."nominal_grams" AS "nominalGrams", r."started_at" AS "startedAt", c."closed_at" AS "closedAt",
  s."pack_count" AS "packCount", s."last_counted_at" AS "lastCountedAt"
  FROM "packing_run" r
  JOIN "packing_line" l ON l."id" = r."line_id"
  JOIN "pack_format" f ON f."id" = r."format_id"
  JOIN "packing_run_state" s ON s."run_id" = r."id"
  LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL`;

export function runOf(from: ReadFrom, runId: string): Promise<RunRow> {
  return once(from, `run ${runId}`, () => readRun(from, runId));
}

async function readRun(from: ReadFrom, runId: string): Promise<RunRow> {
  const [row] = await from.sql<RunRow>`SELECT ${runColumns} WHERE r."id" = ${runId} AND r."voided_by" IS NULL`;
  if (row === undefined) throw new NotFound('packing-run', runId);
  return row;
}

/** A run of a site by its number (spaces and case forgiven) or id. */
export async function findRun(from: ReadFrom, siteId: string, numberOrId: string): Promise<RunRow> {
  const asked = numberOrId.trim();
  const id = isId(asked) ? asked.toLowerCase() : '';
  const [row] = await from.sql<RunRow>`
    SELECT ${runColumns} WHERE r."site_id" = ${siteId} AND r."voided_by" IS NULL
      AND (r."id" = ${id} OR r."number" = ${readRunNumber(asked) ?? asked})`;
  if (row === undefined) throw new NotFound('packing-run', asked);
  return row;
}

export async function openRunOfLine(from: ReadFrom, lineId: string): Promise<RunRow | null> {
  const [row] = await from.sql<RunRow>`SELECT ${runColumns} WHERE s."open_line_id" = ${lineId}`;
  return row ?? null;
}

/** The run that a line had at an instant, open or closed since; null: it had none. */
export async function runOfLineAt(from: ReadFrom, lineId: string, at: Instant): Promise<RunRow | null> {
  const [row] = await from.sql<RunRow>`
    SELECT ${runColumns} WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL AND r."started_at" <= ${at}
      AND (c."closed_at" IS NULL OR c."closed_at" >= ${at})
    ORDER BY r."started_at" DESC, r."id" DESC LIMIT 1`;
  return row ?? null;
}

/** All good counts of some runs, each run's in the order of time. */
export async function countsOf(from: ReadFrom, runIds: readonly string[]): Promise<CountRow[]> {
  if (runIds.length === 0) return [];
  return from.sql<CountRow>`
    SELECT "id", "run_id" AS "runId", "pack_count" AS "packCount", "counted_at" AS "countedAt", "occasion"
    FROM "pack_count" WHERE "run_id" IN (${() => [...runIds]}) AND "voided_by" IS NULL
    ORDER BY "run_id", "counted_at", "pack_count", "id"`;
}

/** What was taken away from a hopper and its lines from an instant on and before another (null: without end). */
export async function removalsOfHopper(
  from: ReadFrom,
  hopperId: string,
  fromAt: Instant,
  untilAt: Instant | null,
): Promise<RemovalRow[]> {
  return from.sql<RemovalRow>`
    SELECT ${removalColumns} WHERE m."hopper_id" = ${hopperId} AND m."removed_at" >= ${fromAt}
      AND m."removed_at" < ${untilAt ?? '~'} AND m."voided_by" IS NULL ORDER BY m."removed_at", m."id"`;
}

export async function removalsOfRun(from: ReadFrom, runId: string): Promise<RemovalRow[]> {
  return from.sql<RemovalRow>`
    SELECT ${removalColumns} WHERE m."run_id" = ${runId} AND m."voided_by" IS NULL ORDER BY m."removed_at", m."id"`;
}

/** What `RemovalRow` is read from. */
export const removalColumns = (): string => `
  m."id", m."site_id" AS "siteId", m."kind", m."run_id" AS "runId", m."line_id" AS "lineId",
  m."hopper_id" AS "hopperId", m."pack_count" AS "packCount", m."grams", m."scale_id" AS "scaleId",
  s."maximum_permissible_error_milligrams" AS "scaleErrorMilligrams", m."reason", m."fate", m."removed_at" AS "removedAt"
  FROM "removal" m LEFT JOIN "scale" s ON s."id" = m."scale_id"`;

/** Which code the packs of a run carry, in the order of the count. Packs before the first are of no known code. */
export async function lotRanges(from: ReadFrom, runId: string): Promise<LotRange[]> {
  return lotRangesOfRuns(from, [runId]);
}

/** The same of several runs, one after the other. */
export async function lotRangesOfRuns(from: ReadFrom, runIds: readonly string[]): Promise<LotRange[]> {
  if (runIds.length === 0) return [];
  const rows = await from.sql<LotRange & { isAsIntended: boolean | number }>`
    SELECT c."run_id" AS "runId", c."id" AS "changeId", c."lot_id" AS "lotId", l."code", c."changed_at" AS "changedAt",
      c."intended_code" AS "intendedCode", c."is_as_intended" AS "isAsIntended", c."first_pack" AS "fromCount",
      x."pack_count" AS "toCount"
    FROM "coder_change" c
    JOIN "lot" l ON l."id" = c."lot_id"
    LEFT JOIN "packing_run_close" x ON x."run_id" = c."run_id" AND x."voided_by" IS NULL
    WHERE c."run_id" IN (${() => [...runIds]}) AND c."voided_by" IS NULL
    ORDER BY c."run_id", c."first_pack", c."changed_at", c."id"`;
  return endedByNext(
    rows.map((row) => ({ ...row, isAsIntended: toBoolean(row.isAsIntended) })),
    (row) => row.runId,
  );
}

/** More lots than this nobody chooses from. */
export const mostLots = 50;

/**
 * Lots of a site by a code as typed or printed; with `prefix` those that begin with it, with `inside` those that hold it
 * anywhere. At most `mostLots`, newest first.
 */
export async function findLots(
  from: ReadFrom,
  siteId: string,
  searchCode: string,
  options: { readonly prefix?: boolean; readonly inside?: boolean } = {},
): Promise<LotRow[]> {
  const key = normaliseCode(searchCode);
  if (key === '') return [];
  if (options.inside === true) {
    return from.sql<LotRow>`
      SELECT ${lotColumns} WHERE l."site_id" = ${siteId} AND l."search_code" LIKE ${`%${key}%`}
        AND l."voided_by" IS NULL ORDER BY l."id" DESC LIMIT ${mostLots}`;
  }
  if (options.prefix !== true) return (await lotsByCodes(from, siteId, [key])).get(key) ?? [];
  return from.sql<LotRow>`
    SELECT ${lotColumns} WHERE l."site_id" = ${siteId} AND l."search_code" >= ${key}
      AND l."search_code" <= ${`${key}\u{10ffff}`} AND l."voided_by" IS NULL ORDER BY l."id" DESC LIMIT ${mostLots}`;
}

/** The same by several whole codes at once, each by its `normaliseCode`. */
export async function lotsByCodes(
  from: ReadFrom,
  siteId: string,
  searchCodes: readonly string[],
): Promise<ReadonlyMap<string, LotRow[]>> {
  const keys = [...new Set(searchCodes.map(normaliseCode))].filter((key) => key !== '');
  if (keys.length === 0) return new Map();
  const rows = await from.sql<LotRow>`
    SELECT ${lotColumns} WHERE l."site_id" = ${siteId} AND l."search_code" IN (${() => keys})
      AND l."voided_by" IS NULL ORDER BY l."id" DESC LIMIT ${keys.length * mostLots}`;
  return new Map([...groupBy(rows, ({ searchCode }) => searchCode)].map(([key, own]) => [key, own.slice(0, mostLots)]));
}

export async function lotOf(from: ReadFrom, lotId: string): Promise<LotRow> {
  const [row] = await from.sql<LotRow>`SELECT ${lotColumns} WHERE l."id" = ${lotId} AND l."voided_by" IS NULL`;
  if (row === undefined) throw new NotFound('lot', lotId);
  return row;
}

/** What `LotRow` is read from. */
export const lotColumns = (): string => `
  l."id", l."site_id" AS "siteId", l."format_id" AS "formatId", f."code" AS "formatCode", f."name" AS "formatName",
  f."gtin", l."code", l."search_code" AS "searchCode"
  FROM "lot" l JOIN "pack_format" f ON f."id" = l."format_id"`;

/** Where the packs of a lot are: ranges of the counts of its runs. */
export function rangesOfLot(from: ReadFrom, lotId: string): Promise<LotRange[]> {
  return once(from, `ranges of lot ${lotId}`, () => readRangesOfLot(from, lotId));
}

async function readRangesOfLot(from: ReadFrom, lotId: string): Promise<LotRange[]> {
  const runs = await from.sql<{ runId: string }>`
    SELECT DISTINCT "run_id" AS "runId" FROM "coder_change" WHERE "lot_id" = ${lotId} AND "voided_by" IS NULL`;
  const ranges = await lotRangesOfRuns(
    from,
    runs.map((run) => run.runId),
  );
  return ranges.filter((range) => range.lotId === lotId);
}

/** Which packs were packed with a lot of film. */
export async function filmRanges(from: ReadFrom, filmLotId: string): Promise<FilmRange[]> {
  const runs = await from.sql<{ runId: string }>`
    SELECT DISTINCT "run_id" AS "runId" FROM "film_use" WHERE "film_lot_id" = ${filmLotId} AND "voided_by" IS NULL`;
  const ranges = await filmRangesOfRuns(
    from,
    runs.map((run) => run.runId),
  );
  return ranges.filter((range) => range.filmLotId === filmLotId);
}

/** Which film, labels and glue some runs were packed with. A lot lasts until the next of its kind. */
export async function filmRangesOfRuns(from: ReadFrom, runIds: readonly string[]): Promise<FilmRange[]> {
  if (runIds.length === 0) return [];
  const rows = await from.sql<FilmRange>`
    SELECT u."run_id" AS "runId", u."id" AS "useId", u."film_lot_id" AS "filmLotId", l."code", l."kind",
      u."fitted_at" AS "fittedAt", u."first_pack" AS "fromCount", x."pack_count" AS "toCount"
    FROM "film_use" u
    JOIN "film_lot" l ON l."id" = u."film_lot_id"
    LEFT JOIN "packing_run_close" x ON x."run_id" = u."run_id" AND x."voided_by" IS NULL
    WHERE u."run_id" IN (${() => [...runIds]}) AND u."voided_by" IS NULL
    ORDER BY u."run_id", l."kind", u."first_pack", u."fitted_at", u."id"`;
  return endedByNext(rows, (row) => `${row.runId} ${row.kind}`);
}

/** Film lots of a site by code, spaces and case forgiven. */
export async function findFilmLots(from: ReadFrom, siteId: string, code: string): Promise<FilmLotRow[]> {
  return from.sql<FilmLotRow>`
    SELECT "id", "site_id" AS "siteId", "code", "supplier_code" AS "supplierCode", "kind" FROM "film_lot"
    WHERE "site_id" = ${siteId} AND "code" = ${filmCode(code)} AND "voided_by" IS NULL ORDER BY "id" DESC`;
}

export async function filmLotOf(from: ReadFrom, filmLotId: string): Promise<FilmLotRow> {
  const [row] = await from.sql<FilmLotRow>`
    SELECT "id", "site_id" AS "siteId", "code", "supplier_code" AS "supplierCode", "kind" FROM "film_lot"
    WHERE "id" = ${filmLotId} AND "voided_by" IS NULL`;
  if (row === undefined) throw new NotFound('film-lot', filmLotId);
  return row;
}

/** A film lot's code as it is stored: no spaces around, capital letters. */
export function filmCode(typed: string): string {
  return typed.trim().toUpperCase();
}

/** The stops of some runs, each run's in the order of time. */
export async function stopsOf(from: ReadFrom, runIds: readonly string[]): Promise<StopRow[]> {
  if (runIds.length === 0) return [];
  return from.sql<StopRow>`
    SELECT s."id", s."run_id" AS "runId", s."reason", s."stopped_at" AS "stoppedAt",
      a."started_again_at" AS "startedAgainAt"
    FROM "line_stop" s LEFT JOIN "line_restart" a ON a."stop_id" = s."id" AND a."voided_by" IS NULL
    WHERE s."run_id" IN (${() => [...runIds]}) AND s."voided_by" IS NULL
    ORDER BY s."run_id", s."stopped_at", s."id"`;
}

/**
 * A good stop of a site.
 *
 * @throws {NotFound} `line-stop`, also for one that was corrected
 */
export async function stopOf(from: ReadFrom, siteId: string, stopId: string): Promise<StopRow> {
  const [row] = await from.sql<StopRow>`
    SELECT s."id", s."run_id" AS "runId", s."reason", s."stopped_at" AS "stoppedAt",
      a."started_again_at" AS "startedAgainAt"
    FROM "line_stop" s JOIN "packing_run" r ON r."id" = s."run_id"
    LEFT JOIN "line_restart" a ON a."stop_id" = s."id" AND a."voided_by" IS NULL
    WHERE s."id" = ${stopId} AND r."site_id" = ${siteId} AND s."voided_by" IS NULL`;
  if (row === undefined) throw new NotFound('line-stop', stopId);
  return row;
}

/** The packs that were loose on belts and tables at handovers and closes of some runs. */
export async function looseCounts(from: ReadFrom, runIds: readonly string[]): Promise<LooseCountRow[]> {
  if (runIds.length === 0) return [];
  return from.sql<LooseCountRow>`
    SELECT "id", "run_id" AS "runId", "pack_count" AS "packCount", "counted_at" AS "countedAt" FROM "loose_count"
    WHERE "run_id" IN (${() => [...runIds]}) AND "voided_by" IS NULL ORDER BY "run_id", "counted_at", "id"`;
}

/** Each range ends where the next of its series begins; ranges without a pack are left out. */
function endedByNext<Range extends RunCounts>(rows: readonly Range[], series: (row: Range) => string): Range[] {
  return rows
    .map((row, place) => {
      const next = rows[place + 1];
      return next !== undefined && series(next) === series(row) ? { ...row, toCount: next.fromCount } : row;
    })
    .filter((row) => row.fromCount !== row.toCount);
}
