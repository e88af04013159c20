import { canonicalText } from '../platform/canonical-text.js';
import type { Role } from '../platform/actor.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import type { SentenceFacts } from '../platform/refusal.js';
import type { Subject } from '../journal/entry-draft.js';
import { OpenPoint } from './open-point.entity.js';
import { OpenPointEnd } from './open-point-end.entity.js';

/** What a rule wants a person to look at. */
export interface PointDraft {
  readonly id: string;
  readonly siteId: string;
  /** Code of the sentence that says what is so and what to do. */
  readonly cause: string;
  readonly facts: SentenceFacts;
  readonly subject: Subject;
  readonly role: Role;
  /** Whom it concerns, where it is one person's. */
  readonly personId?: string | null;
  readonly at: Instant;
}

/** Which points a rule holds for dealt with, and who brought that about. */
export interface PointsCleared {
  readonly nextId: () => string;
  readonly siteId: string;
  readonly cause: string;
  readonly subject: Subject;
  readonly personId: string | null;
  readonly at: Instant;
}

/** Raises a point; where the same cause on the same subject is still open, nothing new comes. */
export async function raisePoint(tx: Tx, point: PointDraft): Promise<void> {
  const open = await openWith(tx, point);
  if (open.length > 0) return;
  await tx.insert(OpenPoint, {
    id: point.id,
    siteId: point.siteId,
    cause: point.cause,
    facts: canonicalText(point.facts),
    subjectKind: point.subject.kind,
    subjectId: point.subject.id,
    role: point.role,
    personId: point.personId ?? null,
    raisedAt: point.at,
  });
}

/** Ends the open points of a cause on a subject, because the cause is gone; answers how many. */
export async function clearPoints(tx: Tx, cleared: PointsCleared): Promise<number> {
  const open = await openWith(tx, cleared);
  for (const { id } of open) {
    await tx.insert(OpenPointEnd, {
      id: cleared.nextId(),
      pointId: id,
      how: 'cleared',
      explanation: null,
      personId: cleared.personId,
      endedAt: cleared.at,
    });
  }
  return open.length;
}

function openWith(
  tx: Tx,
  like: { readonly siteId: string; readonly cause: string; readonly subject: Subject },
): Promise<{ id: string }[]> {
  return tx.sql<{ id: string }>`
    SELECT p."id" FROM "open_point" p
    WHERE p."subject_kind" = ${like.subject.kind} AND p."subject_id" = ${like.subject.id}
      AND p."site_id" = ${like.siteId} AND p."cause" = ${like.cause} AND p."voided_by" IS NULL
      AND NOT EXISTS (SELECT 1 FROM "open_point_end" e WHERE e."point_id" = p."id" AND e."voided_by" IS NULL)`;
}
