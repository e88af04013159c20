import { localMomentAt } from '../../src/core/shift-calendar/local-time.js';
import { timeZone } from '../../src/demo/life/minutes.js';
import { toBoolean } from '../../src/platform/database/stored-values.js';
import type { ReadFrom } from '../../src/platform/database/reading.js';

/** A pack's code with its time of day, as a customer reads it to the quality officer. */
export interface PackQuestion {
  readonly code: string;
  readonly localTime: string;
}

export const periodKinds = [
  ...(['a shift', 'a day', 'five days'] as const),
  // What went on as a residue leads to the period before, or on to the next: two or three are reached, often long ones.
  ...(['up to a day, residues carried', 'five days, residues carried'] as const),
] as const;
export type PeriodKind = (typeof periodKinds)[number];

interface PeriodSpan {
  readonly hopperId: string;
  readonly startedAt: string;
  readonly provenAt: string;
  readonly isLinked: boolean | number;
}

/** So many pack codes of each kind of hopper period, evenly over the whole history. */
export async function sampleQuestions(
  from: ReadFrom,
  count: number,
): Promise<ReadonlyMap<PeriodKind, readonly PackQuestion[]>> {
  const periods = await from.sql<PeriodSpan>`
    SELECT p."hopper_id" AS "hopperId", p."started_at" AS "startedAt", e."proven_at" AS "provenAt",
      (p."previous_period_id" IS NOT NULL OR e."residue_grams" > 0) AS "isLinked"
    FROM "hopper_period" p JOIN "proven_empty" e ON e."period_id" = p."id" ORDER BY p."id"`;
  const kinds = new Map<PeriodKind, PackQuestion[]>();
  for (const kind of periodKinds) {
    const own = spread(
      periods.filter((period) => kindOf(period) === kind),
      count,
    );
    const asked: PackQuestion[] = [];
    for (const [place, period] of own.entries()) asked.push(await questionIn(from, period, place));
    kinds.set(kind, asked);
  }
  return kinds;
}

function kindOf({ startedAt, provenAt, isLinked }: PeriodSpan): PeriodKind {
  const hours = (Date.parse(provenAt) - Date.parse(startedAt)) / 3_600_000;
  if (toBoolean(isLinked)) return hours > 100 ? 'five days, residues carried' : 'up to a day, residues carried';
  if (hours > 100) return 'five days';
  return hours < 12 ? 'a shift' : 'a day';
}

/** A pack of some run of the period, of some time. */
async function questionIn(from: ReadFrom, period: PeriodSpan, place: number): Promise<PackQuestion> {
  const runs = await from.sql<{ code: string; startedAt: string; closedAt: string }>`
    SELECT l."code", r."started_at" AS "startedAt", c."closed_at" AS "closedAt" FROM "hopper_line" h
    JOIN "packing_run" r ON r."line_id" = h."line_id" JOIN "packing_run_close" c ON c."run_id" = r."id"
    JOIN "coder_change" d ON d."run_id" = r."id" JOIN "lot" l ON l."id" = d."lot_id"
    WHERE h."hopper_id" = ${period.hopperId} AND r."started_at" >= ${period.startedAt}
      AND r."started_at" < ${period.provenAt} ORDER BY r."id"`;
  const run = runs[place % runs.length];
  if (run === undefined) throw new Error(`no run in the period of ${period.startedAt}`);
  const [start, end] = [Date.parse(run.startedAt), Date.parse(run.closedAt)];
  const at = new Date(start + (end - start) * (0.1 + 0.8 * ((place * 0.618) % 1))).toISOString();
  return { code: run.code, localTime: localMomentAt(timeZone, at).time.slice(0, 5) };
}

/** So many of a list, evenly over it. */
export function spread<Item>(items: readonly Item[], count: number): Item[] {
  const most = Math.min(count, items.length);
  return Array.from({ length: most }, (_, place) => items[Math.floor(((place + 0.5) * items.length) / most)]).filter(
    (item): item is Item => item !== undefined,
  );
}
