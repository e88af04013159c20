import type { LocatedShift } from '../core/shift-calendar/locate-shift.js';
import { shiftAt } from '../plant/plant-facts.js';
import { millisecondsBetween, shifted, type Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { handoverOfShift } from './handovers.js';

/** So long after its end a shift is still the one that is handed over, where nobody has signed it. Our own value. */
const graceMinutes = 60;

/** The shift of a line that is to be handed over at an instant: the one that runs, or the one just over if nobody signed it. */
export async function shiftToHandOver(
  from: ReadFrom,
  of: { readonly siteId: string; readonly lineId: string; readonly now: Instant },
): Promise<LocatedShift> {
  const { siteId, lineId, now } = of;
  const current = await shiftAt(from, siteId, now);
  if (millisecondsBetween(current.startsAt, now) >= graceMinutes * 60_000) return current;
  const before = await shiftAt(from, siteId, shifted(current.startsAt, -1));
  if ((await handoverOfShift(from, lineId, before.startsAt)) !== null) return current;
  return (await wasRunning(from, lineId, before)) ? before : current;
}

/** Nobody hands over a shift in which the line did nothing. */
async function wasRunning(from: ReadFrom, lineId: string, { startsAt, endsAt }: LocatedShift): Promise<boolean> {
  const runs = await from.sql`
    SELECT r."id" FROM "packing_run" r
    LEFT JOIN "packing_run_close" c ON c."run_id" = r."id" AND c."voided_by" IS NULL
    WHERE r."line_id" = ${lineId} AND r."voided_by" IS NULL AND r."started_at" < ${endsAt}
      AND (c."closed_at" IS NULL OR c."closed_at" >= ${startsAt}) LIMIT 1`;
  return runs.length > 0;
}
