import { raisePoint } from '../open-points/raise-point.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';

/** A label was printed for a pallet and has not been scanned back on it. */
export const labelNotBackCause = 'label-not-scanned-back';

/** From printing on until it is scanned back, a label is an open point: it may stick on a neighbour. */
export async function pointAtLabel(
  tx: Tx,
  label: {
    readonly id: string;
    readonly siteId: string;
    readonly pallet: { readonly id: string; readonly sscc: string };
    readonly at: Instant;
  },
): Promise<void> {
  const { id, siteId, pallet, at } = label;
  const subject = { kind: 'pallet', id: pallet.id };
  const facts = { pallet: pallet.sscc };
  await raisePoint(tx, { id, siteId, cause: labelNotBackCause, facts, subject, role: 'line-lead', at });
}

/** A pallet of a line with what is known of its label. */
export interface PalletOnLine {
  readonly palletId: string;
  readonly sscc: string;
  readonly packCount: number;
  readonly builtAt: Instant;
  readonly status: string;
  /** Null: not scanned back. */
  readonly labelCheckedAt: Instant | null;
  /** A label was printed for it. */
  readonly hasLabel: boolean;
}

/** The pallets that hold packs of some runs, built in a time, the oldest first. */
export async function palletsOfRuns(
  from: ReadFrom,
  runIds: readonly string[],
  { fromAt, untilAt }: { readonly fromAt: Instant; readonly untilAt: Instant },
): Promise<PalletOnLine[]> {
  if (runIds.length === 0) return [];
  const rows = await from.sql<Omit<PalletOnLine, 'hasLabel'> & { paperCount: number | string }>`
    SELECT p."id" AS "palletId", p."sscc", p."pack_count" AS "packCount", p."built_at" AS "builtAt", s."status",
      (SELECT MAX(k."checked_at") FROM "pallet_label_check" k
        WHERE k."pallet_id" = p."id" AND k."voided_by" IS NULL) AS "labelCheckedAt",
      (SELECT COUNT(*) FROM "paper" a WHERE a."subject_kind" = 'pallet' AND a."subject_id" = p."id"
        AND a."voided_by" IS NULL) AS "paperCount"
    FROM "pallet" p JOIN "pallet_state" s ON s."pallet_id" = p."id"
    WHERE p."voided_by" IS NULL AND p."built_at" >= ${fromAt} AND p."built_at" < ${untilAt}
      AND p."id" IN (SELECT c."pallet_id" FROM "pallet_content" c
        WHERE c."run_id" IN (${() => [...runIds]}) AND c."voided_by" IS NULL)
    ORDER BY p."built_at", p."id"`;
  return rows.map(({ paperCount, ...row }) => ({ ...row, hasLabel: Number(paperCount) > 0 }));
}
