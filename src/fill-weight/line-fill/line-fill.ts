import { addSummaries, noWeights } from '../../core/weight-blocks/weight-summary.js';
import { runColumns } from '../../packing/packing-runs.js';
import type { RunRow } from '../../packing/packing-run-rows.js';
import { shifted, type Instant } from '../../platform/clock.js';
import { inChunks } from '../../platform/database/in-chunks.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { groupBy } from '../../platform/group-by.js';
import { summaryOf, summedUp, type RawSums } from '../kept/summed-rows.js';
import { saleOfFormat, type SaleOfFormat } from '../format-sales/format-sales.js';
import { settingAt, settingsBetween, type SettingInForce } from '../line-settings/line-settings.js';
import { packWeighersNamed, type PackWeigherRow } from '../pack-weighers.js';
import { fillLotOf, type FillLot } from './fill-lot.js';

const dayMilliseconds = 86_400_000;
/** So far back a line's runs are looked at. Our own value, no source. */
export const lookedBackDays = 90;
/** So many runs of a format, the latest. Our own value, no source. */
const mostLots = 20;

/** What a line packed of a format lately. */
export interface FormatFill {
  readonly formatId: string;
  readonly formatCode: string;
  readonly formatName: string;
  readonly nominalMilligrams: number;
  /** Closed runs, the latest first. */
  readonly lots: readonly FillLot[];
  /** Counted packs of all runs in the period, open ones and those that were not weighed among them. */
  readonly packCount: number;
  /** What the line is set to for it now, as far as it was recorded. */
  readonly setting: SettingInForce;
  /** How it is sold now; null: nobody said. */
  readonly sale: SaleOfFormat | null;
  /** That weighed packs of these runs. */
  readonly weighers: readonly PackWeigherRow[];
}

/** What a line packed lately, by format. */
export interface LineFill {
  /** From the start of the first run that was looked at until now; null: the line had none. */
  readonly period: { readonly fromAt: Instant; readonly days: number } | null;
  readonly formats: readonly FormatFill[];
}

/** Reads what the sums of a line's latest runs say of how it fills; the format that was packed last comes first. */
export async function readLineFill(from: ReadFrom, lineId: string, now: Instant): Promise<LineFill> {
  const runs = await from.sql<RunRow>`
    SELECT ${runColumns} WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL
      AND r."started_at" >= ${shifted(now, -lookedBackDays * dayMilliseconds)} AND r."started_at" <= ${now}
    ORDER BY r."started_at" DESC, r."id" DESC`;
  const first = runs.at(-1);
  if (first === undefined) return { period: null, formats: [] };
  const days = Math.max(1, (Date.parse(now) - Date.parse(first.startedAt)) / dayMilliseconds);
  const byFormat = groupBy(runs, ({ formatId }) => formatId);
  const formats: FormatFill[] = [];
  for (const ofFormat of byFormat.values()) formats.push(...(await formatFill(from, ofFormat, now)));
  return { period: { fromAt: first.startedAt, days }, formats };
}

async function formatFill(from: ReadFrom, runs: readonly RunRow[], now: Instant): Promise<FormatFill[]> {
  const [latest] = runs;
  if (latest === undefined) return [];
  const { lineId, formatId, formatCode, formatName, nominalGrams } = latest;
  const closed = runs.filter(({ closedAt }) => closedAt !== null).slice(0, mostLots);
  const weighed = await sumsOf(from, closed);
  const setpoints = await setpointsOf(from, closed);
  const weigherIds = [...weighed.values()].flatMap((run) => run.weigherIds);
  const fill = {
    ...{ formatId, formatCode, formatName, nominalMilligrams: nominalGrams * 1000 },
    lots: closed.map((run) =>
      fillLotOf(run, weighed.get(run.id)?.sums ?? noWeights().accepted, setpoints.get(run.id) ?? null),
    ),
    sale: await saleOfFormat(from, formatId, now),
    setting: await settingAt(from, { lineId, formatId }, now),
    packCount: runs.reduce((sum, { packCount }) => sum + packCount, 0),
    weighers: await packWeighersNamed(from, [...new Set(weigherIds)]),
  };
  return [fill];
}

/** What the filler was set to all the while that a run was on, by run; none where that was not recorded or was changed. */
async function setpointsOf(from: ReadFrom, runs: readonly RunRow[]): Promise<ReadonlyMap<string, number>> {
  const [latest, first] = [runs[0], runs.at(-1)];
  if (latest === undefined || first === undefined) return new Map();
  const { lineId, formatId } = latest;
  const { setpoint } = await settingAt(from, { lineId, formatId }, first.startedAt);
  const span = { fromAt: first.startedAt, untilAt: latest.closedAt ?? latest.startedAt };
  const changes = [
    ...(setpoint === null ? [] : [{ at: setpoint.changedAt, milligrams: setpoint.milligrams }]),
    ...(await settingsBetween(from, { lineId, formatId, ...span })).flatMap((change) =>
      change.setpointMilligrams === null ? [] : [{ at: change.changedAt, milligrams: change.setpointMilligrams }],
    ),
  ];
  return new Map(
    runs.flatMap(({ id, startedAt, closedAt }) => {
      const atStart = changes.findLast(({ at }) => at <= startedAt);
      const isChanged = changes.some(({ at }) => at > startedAt && at < (closedAt ?? startedAt));
      return atStart === undefined || isChanged ? [] : [[id, atStart.milligrams] as const];
    }),
  );
}

const acceptedColumns = Object.keys(summedUp)
  .map((column) => `"accepted_${column}"`)
  .join(', ');

/** Accepted packs of each run, all its weighers together; nothing of runs that were not weighed. */
async function sumsOf(from: ReadFrom, runs: readonly RunRow[]) {
  const rows = await inChunks(
    runs.map(({ id }) => id),
    (chunk) => from.sql<RawSums>`
      SELECT "run_id", "weigher_id", ${() => acceptedColumns} FROM "weight_run"
      WHERE "run_id" IN (${() => chunk}) ORDER BY "run_id", "weigher_id"`,
  );
  return new Map(
    [...groupBy(rows, (row) => row['run_id'] as string)].map(([runId, ofRun]) => [
      runId,
      {
        weigherIds: ofRun.map((row) => row['weigher_id'] as string),
        sums: ofRun.reduce((sum, row) => addSummaries(sum, summaryOf(row)), noWeights()).accepted,
      },
    ]),
  );
}
