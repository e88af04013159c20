import { toBoolean } from '../platform/database/stored-values.js';
import type { Instant } from '../platform/clock.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import type { HandoverAnswer } from './handover-answer.entity.js';
import type { HandoverPoints } from './handover-points.js';

/** A signed handover with its answer; `answeredBy` null: nobody has taken the line over yet. */
export interface HandoverRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly lineCode: string;
  readonly productionOn: string;
  readonly shiftCode: string;
  readonly fromAt: Instant;
  readonly untilAt: Instant;
  readonly points: HandoverPoints;
  readonly notes: string | null;
  readonly outgoingPersonId: string;
  readonly signedAt: Instant;
  readonly answeredBy: string | null;
  readonly how: HandoverAnswer['how'] | null;
  readonly agrees: boolean | null;
  readonly disagreement: string | null;
  readonly answeredAt: Instant | null;
}

type StoredHandover = Omit<HandoverRow, 'points' | 'agrees'> & {
  readonly points: string;
  readonly agrees: boolean | number | null;
};

const columns = (): string => `
  h."id", h."site_id" AS "siteId", h."line_id" AS "lineId", l."code" AS "lineCode",
  h."production_on" AS "productionOn", h."shift_code" AS "shiftCode", h."from_at" AS "fromAt",
  h."until_at" AS "untilAt", h."points", h."notes", h."outgoing_person_id" AS "outgoingPersonId",
  h."signed_at" AS "signedAt", a."person_id" AS "answeredBy", a."how", a."agrees", a."disagreement",
  a."answered_at" AS "answeredAt"
  FROM "handover" h JOIN "packing_line" l ON l."id" = h."line_id"
  LEFT JOIN "handover_answer" a ON a."handover_id" = h."id" AND a."voided_by" IS NULL`;

/** @throws {NotFound} `handover`, also for one of another site */
export async function handoverOf(from: ReadFrom, siteId: string, id: string): Promise<HandoverRow> {
  const row = onlyRow(
    await from.sql<StoredHandover>`
      SELECT ${columns} WHERE h."id" = ${id} AND h."site_id" = ${siteId} AND h."voided_by" IS NULL`,
  );
  if (row === null) throw new NotFound('handover', id);
  return readRow(row);
}

/** The last handover of a line; null: it was never handed over. */
export async function lastHandoverOf(from: ReadFrom, lineId: string): Promise<HandoverRow | null> {
  const row = onlyRow(
    await from.sql<StoredHandover>`
      SELECT ${columns} WHERE h."line_id" = ${lineId} AND h."voided_by" IS NULL
      ORDER BY h."from_at" DESC, h."id" DESC LIMIT 1`,
  );
  return row === null ? null : readRow(row);
}

/** The handover of the shift that began at an instant; null: not signed yet. */
export async function handoverOfShift(from: ReadFrom, lineId: string, fromAt: Instant): Promise<HandoverRow | null> {
  const row = onlyRow(
    await from.sql<StoredHandover>`
      SELECT ${columns} WHERE h."line_id" = ${lineId} AND h."from_at" = ${fromAt} AND h."voided_by" IS NULL`,
  );
  return row === null ? null : readRow(row);
}

function readRow({ points, agrees, ...row }: StoredHandover): HandoverRow {
  return {
    ...row,
    points: JSON.parse(points) as HandoverPoints,
    agrees: agrees === null ? null : toBoolean(agrees),
  };
}
