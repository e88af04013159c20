import type { Subject } from '../journal/entry-draft.js';
import type { Role } from '../platform/actor.js';
import { canonicalText } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import type { SentenceFacts } from '../platform/refusal.js';
import { endPoint } from './end-point.js';
import { OpenPoint } from './open-point.entity.js';
import { openPointIdOf } from './open-points.js';

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
  const { id, siteId, cause, subject } = point;
  await tx.sql`
    INSERT INTO "open_point_state" ("point_id", "site_id", "cause", "subject_kind", "subject_id")
    VALUES (${id}, ${siteId}, ${cause}, ${subject.kind}, ${subject.id}) ON CONFLICT DO NOTHING`;
  if ((await openPointIdOf(tx, { siteId, cause, subject })) !== id) return;
  await tx.insert(OpenPoint, {
    id,
    siteId,
    cause,
    facts: canonicalText(point.facts),
    subjectKind: subject.kind,
    subjectId: subject.id,
    role: point.role,
    personId: point.personId ?? null,
    raisedAt: point.at,
  });
}

/** Ends the open point of a cause on a subject, because the cause is gone; answers how many there were, 0 or 1. */
export async function clearPoints(tx: Tx, cleared: PointsCleared): Promise<number> {
  const pointId = await openPointIdOf(tx, cleared);
  if (pointId === null) return 0;
  const { personId, at: endedAt } = cleared;
  const end = { id: cleared.nextId(), pointId, how: 'cleared' as const, explanation: null, personId, endedAt };
  return (await endPoint(tx, end)) ? 1 : 0;
}
