import type { Subject } from '../journal/entry-draft.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound, type SentenceFacts } from '../platform/refusal.js';
import { withNames } from './facts-with-names.js';

/** A point as lists show it; `how` and what follows are null while it is open. */
export interface PointRow {
  readonly id: string;
  readonly siteId: string;
  readonly cause: string;
  readonly facts: SentenceFacts;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly role: string;
  readonly personId: string | null;
  readonly raisedAt: Instant;
  readonly how: 'cleared' | 'explained' | null;
  readonly explanation: string | null;
  readonly endedBy: string | null;
  readonly endedAt: Instant | null;
}

type StoredPoint = Omit<PointRow, 'facts'> & { readonly facts: string };

/** Which points a list shows. */
export interface PointChoice {
  readonly state: 'open' | 'ended';
  readonly role?: string | null;
  /** Only those raised before this one. */
  readonly before?: string | null;
  readonly limit: number;
}

/** The id of the point that is open for a cause on a subject; null where there is none. */
export async function openPointIdOf(
  from: ReadFrom,
  like: { readonly siteId: string; readonly cause: string; readonly subject: Subject },
): Promise<string | null> {
  const [row] = await from.sql<{ pointId: string }>`
    SELECT "point_id" AS "pointId" FROM "open_point_state"
    WHERE "site_id" = ${like.siteId} AND "cause" = ${like.cause}
      AND "subject_kind" = ${like.subject.kind} AND "subject_id" = ${like.subject.id}`;
  return row?.pointId ?? null;
}

/** The points of a site, newest first, open ones or ended ones. */
export async function openPointsOf(from: ReadFrom, siteId: string, choice: PointChoice): Promise<PointRow[]> {
  const { role = null, before = null } = choice;
  const rows = await from.sql<StoredPoint>`
    SELECT p."id", p."site_id" AS "siteId", p."cause", p."facts", p."subject_kind" AS "subjectKind",
      p."subject_id" AS "subjectId", p."role", p."person_id" AS "personId", p."raised_at" AS "raisedAt",
      e."how", e."explanation", e."person_id" AS "endedBy", e."ended_at" AS "endedAt"
    FROM "open_point" p
    LEFT JOIN "open_point_state" s ON s."point_id" = p."id"
    LEFT JOIN "open_point_end" e ON e."point_id" = p."id" AND e."voided_by" IS NULL
    WHERE p."site_id" = ${siteId} AND p."voided_by" IS NULL
      AND CASE WHEN s."point_id" IS NULL THEN 'ended' ELSE 'open' END = ${choice.state}
      AND p."role" = COALESCE(${role}, p."role") AND p."id" < COALESCE(${before}, 'g')
    ORDER BY p."id" DESC LIMIT ${choice.limit}`;
  return withNames(from, rows.map(withFacts));
}

/** @throws {NotFound} `open-point` */
export async function openPointOf(from: ReadFrom, siteId: string, pointId: string): Promise<PointRow> {
  const [row] = await from.sql<StoredPoint>`
    SELECT p."id", p."site_id" AS "siteId", p."cause", p."facts", p."subject_kind" AS "subjectKind",
      p."subject_id" AS "subjectId", p."role", p."person_id" AS "personId", p."raised_at" AS "raisedAt",
      e."how", e."explanation", e."person_id" AS "endedBy", e."ended_at" AS "endedAt"
    FROM "open_point" p LEFT JOIN "open_point_end" e ON e."point_id" = p."id" AND e."voided_by" IS NULL
    WHERE p."id" = ${pointId} AND p."site_id" = ${siteId} AND p."voided_by" IS NULL`;
  if (row === undefined) throw new NotFound('open-point', pointId);
  const [point = withFacts(row)] = await withNames(from, [withFacts(row)]);
  return point;
}

function withFacts(row: StoredPoint): PointRow {
  return { ...row, facts: JSON.parse(row.facts) as SentenceFacts };
}
