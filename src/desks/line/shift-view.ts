import { openChangeoverOf, type ChangeoverRow } from '../../hopper/changeovers.js';
import type { HopperLevel } from '../../hopper/hopper-level.js';
import { likelyLayersOf, type LikelyLayers } from '../../hopper/likely-layers.js';
import { dueHandSample, type DueHandSample } from '../../fill-weight/hand-plan/due-hand-sample.js';
import { dueChecks, type DueCheck } from '../../line-checks/due-checks.js';
import { checksOfLineSince, type LineCheckRow } from '../../line-checks/line-checks.js';
import { openPointsOf, type PointRow } from '../../open-points/open-points.js';
import { lotRanges, stopsOf } from '../../packing/packing-runs.js';
import type { StopRow } from '../../packing/packing-run-rows.js';
import { palletsOfRuns, type PalletOnLine } from '../../pallets/label-not-back.js';
import { namesOf } from '../../people/people.js';
import { shifted } from '../../platform/clock.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { lastHandoverOf } from '../../reconciliation/handovers.js';
import { packsOnNoPallet } from '../../reconciliation/packs-on-no-pallet.js';
import { shiftBalanceOf, type ShiftBalance } from '../../reconciliation/shift-balance.js';
import type { LineNow } from './line-rows.js';
import type { ScanReading } from './scan-reading.js';

/** All that the shift page shows of a line. */
export interface ShiftView extends LineNow {
  /** The code printed now; null: nobody read it. */
  readonly code: string | null;
  readonly balance: ShiftBalance | null;
  readonly level: HopperLevel | null;
  readonly layers: LikelyLayers;
  readonly runs: readonly { readonly id: string; readonly fromAt: string; readonly untilAt: string | null }[];
  readonly stops: readonly StopRow[];
  readonly pallets: readonly PalletOnLine[];
  /** Packs counted that stand on no pallet. */
  readonly openPacks: number | null;
  readonly changeover: ChangeoverRow | null;
  /** Handed over by one person alone and not confirmed: whose it was. */
  readonly opening: { readonly id: string; readonly by: string; readonly at: string; readonly isOwn: boolean } | null;
  readonly points: readonly PointRow[];
  readonly scan: ScanReading | null;
  /** The checks of the line by their plans, the most pressing first. */
  readonly checks: readonly DueCheck[];
  /** The hand sample that the line owes; null where none is planned or no run is open. */
  readonly handSample: DueHandSample | null;
  /** Those made in this shift. */
  readonly checksMade: readonly LineCheckRow[];
}

/** So many points fit on the shift page; the others are a number and a link. */
const pointsRead = 30;

/** Reads the shift of a line, with a level that was found already. */
export async function shiftViewOf(
  from: ReadFrom,
  at: LineNow,
  known: {
    readonly siteId: string;
    readonly personId: string | null;
    readonly level: HopperLevel | null;
    readonly scan: ScanReading | null;
  },
): Promise<ShiftView> {
  const { siteId, personId, level, scan } = known;
  const { hopper, run, shift, now, line } = at;
  const untilAt = shifted(now, 1);
  const span = { siteId, fromAt: shift.startsAt, untilAt };
  const balance =
    hopper === null || level === null ? null : await shiftBalanceOf(from, { ...span, hopperId: hopper.id, level });
  const runs = await runsOfShift(from, line.id, span);
  const runIds = runs.map(({ id }) => id);
  return {
    ...at,
    code: run === null ? null : ((await lotRanges(from, run.id)).at(-1)?.code ?? null),
    balance,
    level,
    layers: await likelyLayersOf(from, level?.periodId ?? '', level?.grams ?? 0),
    runs,
    stops: await stopsOf(from, runIds),
    pallets: await palletsOfRuns(from, runIds, span),
    openPacks: run === null ? null : await packsOnNoPallet(from, run),
    changeover: await openChangeoverOf(from, line.id),
    opening: await openingOf(from, line.id, personId),
    points: (await openPointsOf(from, siteId, { state: 'open', role: 'line-lead', limit: pointsRead })).filter(
      ({ facts }) => facts['line'] === undefined || facts['line'] === line.code,
    ),
    scan,
    checks: await dueChecks(from, line.id, now),
    handSample: await dueHandSample(from, line.id, now),
    checksMade: await checksOfLineSince(from, line.id, shift.startsAt),
  };
}

function runsOfShift(
  from: ReadFrom,
  lineId: string,
  { fromAt, untilAt }: { readonly fromAt: string; readonly untilAt: string },
): Promise<{ id: string; fromAt: string; untilAt: string | null }[]> {
  return from.sql`
    SELECT r."id", r."started_at" AS "fromAt", c."closed_at" AS "untilAt" FROM "packing_run" r
    LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL AND r."started_at" < ${untilAt}
      AND (c."closed_at" IS NULL OR c."closed_at" >= ${fromAt})
    ORDER BY r."started_at", r."id"`;
}

async function openingOf(from: ReadFrom, lineId: string, personId: string | null): Promise<ShiftView['opening']> {
  const last = await lastHandoverOf(from, lineId);
  if (last === null || last.answeredBy !== null) return null;
  const by = last.outgoingPersonId;
  const name = (await namesOf(from, [by])).get(by) ?? '–';
  return { id: last.id, by: name, at: last.signedAt, isOwn: by === personId };
}
