import { exactMass, type Addition } from '../core/hopper-flow/hopper-event.js';
import type { HopperRow } from '../plant/plant-rows.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';

/** From an instant to another, both included. */
export interface Span {
  readonly fromAt: Instant;
  readonly untilAt: Instant;
}

/** So many of them are tried. Our own value, no source. */
const mostTried = 60;

/**
 * What was tipped into the other hoppers of a site in a span, by the records: any of it may have gone into this one. The
 * last first. With their names it is known which of the kinds of mistake are left.
 */
export async function tipsElsewhere(
  from: ReadFrom,
  hopper: Pick<HopperRow, 'id' | 'siteId'>,
  { fromAt, untilAt }: Span,
): Promise<readonly Addition[]> {
  const rows = await from.sql<{ id: string; grams: number | string }>`
    SELECT t."id", t."net_grams" - COALESCE(o."rest_grams", 0) AS "grams"
    FROM "hopper" h
    JOIN "hopper_period" p ON p."hopper_id" = h."id" AND p."voided_by" IS NULL
    JOIN "tip" t ON t."period_id" = p."id" AND t."voided_by" IS NULL
    LEFT JOIN "tip_off" o ON o."tip_id" = t."id" AND o."voided_by" IS NULL
    LEFT JOIN "proven_empty" e ON e."period_id" = p."id" AND e."voided_by" IS NULL
    WHERE h."site_id" = ${hopper.siteId} AND h."id" <> ${hopper.id} AND p."started_at" <= ${untilAt}
      AND (e."proven_at" IS NULL OR e."proven_at" >= ${fromAt})
      AND t."opened_at" >= ${fromAt} AND t."opened_at" <= ${untilAt}
    ORDER BY t."opened_at" DESC, t."id" DESC LIMIT ${mostTried}`;
  return rows.map(({ id, grams }) => ({ kind: 'addition', id, mass: exactMass(Math.max(0, Number(grams))) }));
}
