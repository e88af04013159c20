import type { Instant } from '../platform/clock.js';
import { once, type ReadFrom } from '../platform/database/reading.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { uncomparedCoderClock } from './plant-facts.js';
import type { CoderClockReading } from './plant-rows.js';

/** A comparison of a coder's clock with the plant's: from an instant on it stood so. */
export interface ComparedClock extends CoderClockReading {
  readonly id: string;
  readonly validFrom: Instant;
}

/** From an instant (included) until another (not included). */
interface Span {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
}

/** The good comparisons of a coder, in the order of time. */
export function clocksOfCoder(from: ReadFrom, coderId: string): Promise<readonly ComparedClock[]> {
  return once(from, `clocks of coder ${coderId}`, () => readClocks(from, coderId));
}

function readClocks(from: ReadFrom, coderId: string): Promise<ComparedClock[]> {
  return from.sql<ComparedClock>`
    SELECT "id", "valid_from" AS "validFrom", "offset_seconds" AS "offsetSeconds",
      "uncertainty_seconds" AS "uncertaintySeconds"
    FROM "coder_clock" WHERE "coder_id" = ${coderId} AND "voided_by" IS NULL ORDER BY "valid_from", "id"`;
}

/** How a coder's clock stood at any time within a span, each reading once. */
export async function clockReadingsWithin(
  from: ReadFrom,
  coderId: string,
  { fromAt, untilAt }: Span,
): Promise<readonly CoderClockReading[]> {
  const all = await clocksOfCoder(from, coderId);
  const until = all.filter(({ validFrom }) => validFrom <= fromAt || validFrom < untilAt);
  const begin = until.filter(({ validFrom }) => validFrom <= fromAt).at(-1) ?? uncomparedCoderClock;
  const readings = new Map<string, CoderClockReading>();
  for (const one of [begin, ...until.filter(({ validFrom }) => validFrom > fromAt)]) {
    const { offsetSeconds, uncertaintySeconds } = one;
    readings.set(`${offsetSeconds} ${uncertaintySeconds}`, { offsetSeconds, uncertaintySeconds });
  }
  return [...readings.values()];
}

export interface ClockToCorrect extends ComparedClock {
  readonly coderId: string;
  readonly coderCode: string;
  readonly lineId: string;
  readonly lineCode: string;
}

/**
 * @throws {NotFound} `coder-clock`, also for one of another site
 * @throws {Refusal} `already-corrected`
 */
export async function clockToCorrect(from: ReadFrom, siteId: string, clockId: string): Promise<ClockToCorrect> {
  const [row] = await from.sql<ClockToCorrect & { readonly voidedBy: string | null }>`
    SELECT k."id", k."valid_from" AS "validFrom", k."offset_seconds" AS "offsetSeconds",
      k."uncertainty_seconds" AS "uncertaintySeconds", k."coder_id" AS "coderId", c."code" AS "coderCode",
      l."id" AS "lineId", l."code" AS "lineCode", k."voided_by" AS "voidedBy"
    FROM "coder_clock" k JOIN "coder" c ON c."id" = k."coder_id" JOIN "packing_line" l ON l."id" = c."line_id"
    WHERE k."id" = ${clockId} AND c."site_id" = ${siteId}`;
  if (row === undefined) throw new NotFound('coder-clock', clockId);
  const { voidedBy, ...clock } = row;
  if (voidedBy !== null) throw new Refusal('already-corrected', { id: clockId });
  return clock;
}
