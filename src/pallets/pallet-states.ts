import type { ReadFrom } from '../platform/database/reading.js';
import type { Instant } from '../platform/clock.js';

/** Where a pallet is by the facts of this room alone; what is loaded or gone is added by `dispatch`, which knows deliveries. */
export interface PalletStateByFacts {
  readonly palletId: string;
  readonly status: 'in-store' | 'taken-apart';
  readonly placeId: string | null;
  readonly changedAt: Instant;
}

/** The states of all pallets that are not on or behind a delivery, as the facts say them. */
export async function palletStatesByFacts(from: ReadFrom): Promise<readonly PalletStateByFacts[]> {
  const rows = await from.sql<{
    palletId: string;
    builtAt: Instant;
    takenApartAt: Instant | null;
    placeId: string | null;
    movedAt: Instant | null;
  }>`
    SELECT p."id" AS "palletId", p."built_at" AS "builtAt", t."taken_apart_at" AS "takenApartAt",
      m."place_id" AS "placeId", m."moved_at" AS "movedAt"
    FROM "pallet" p
    LEFT JOIN "pallet_taken_apart" t ON t."pallet_id" = p."id" AND t."voided_by" IS NULL
    LEFT JOIN (
      SELECT "pallet_id", "place_id", "moved_at",
        ROW_NUMBER() OVER (PARTITION BY "pallet_id" ORDER BY "moved_at" DESC, "id" DESC) AS "place"
      FROM "pallet_move" WHERE "voided_by" IS NULL
    ) m ON m."pallet_id" = p."id" AND m."place" = 1
    WHERE p."voided_by" IS NULL ORDER BY p."id"`;
  return rows.map(({ palletId, builtAt, takenApartAt, placeId, movedAt }) =>
    takenApartAt === null
      ? { palletId, status: 'in-store', placeId, changedAt: movedAt ?? builtAt }
      : { palletId, status: 'taken-apart', placeId: null, changedAt: takenApartAt },
  );
}
