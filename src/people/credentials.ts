import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import type { Credential } from './credential.entity.js';
import { endSessions } from './end-sessions.js';

/** A credential with the person whom it proves. */
export interface KnownCredential {
  readonly id: string;
  readonly secretHash: string;
  readonly personId: string;
  readonly personCode: string;
  readonly siteId: string;
}

/** The password of the person with this code. A code is one person's in the whole house. */
export async function findPassword(from: ReadFrom, personCode: string): Promise<KnownCredential | null> {
  const [row] = await from.sql<KnownCredential>`
    SELECT c."id" AS "id", c."secret_hash" AS "secretHash", p."id" AS "personId", p."code" AS "personCode",
      p."site_id" AS "siteId"
    FROM "person" p JOIN "credential" c ON c."person_id" = p."id" AND c."kind" = 'password'
    WHERE p."code" = ${personCode} ORDER BY p."id" LIMIT 1`;
  return row ?? null;
}

/** The password or PIN of a person of this site. */
export async function findSecret(
  from: ReadFrom,
  siteId: string,
  personId: string,
  kind: 'password' | 'pin',
): Promise<KnownCredential | null> {
  const [row] = await from.sql<KnownCredential>`
    SELECT c."id" AS "id", c."secret_hash" AS "secretHash", p."id" AS "personId", p."code" AS "personCode",
      p."site_id" AS "siteId"
    FROM "person" p JOIN "credential" c ON c."person_id" = p."id" AND c."kind" = ${kind}
    WHERE p."id" = ${personId} AND p."site_id" = ${siteId}`;
  return row ?? null;
}

/** The badge with this hash, of a person of this site. */
export async function findBadge(from: ReadFrom, siteId: string, secretHash: string): Promise<KnownCredential | null> {
  const [row] = await from.sql<KnownCredential>`
    SELECT c."id" AS "id", c."secret_hash" AS "secretHash", p."id" AS "personId", p."code" AS "personCode",
      p."site_id" AS "siteId"
    FROM "credential" c JOIN "person" p ON p."id" = c."person_id"
    WHERE c."kind" = 'badge' AND c."secret_hash" = ${secretHash} AND p."site_id" = ${siteId}`;
  return row ?? null;
}

/** What a person is to prove themselves by from now on. */
export interface NewCredential {
  readonly id: string;
  readonly personId: string;
  readonly kind: Credential['kind'];
  readonly secretHash: string;
  readonly mustChange: boolean;
  readonly setAt: Instant;
}

/** Puts a credential in the place of the one of its kind, and ends the person's sessions. */
export async function replaceCredential(tx: Tx, made: NewCredential): Promise<void> {
  // One statement, so that two at once do not both find none. A credential keeps its id when its secret changes.
  await tx.sql`
    INSERT INTO "credential" ("id", "person_id", "kind", "secret_hash", "must_change", "set_at")
    VALUES (${made.id}, ${made.personId}, ${made.kind}, ${made.secretHash}, ${made.mustChange}, ${made.setAt})
    ON CONFLICT ("person_id", "kind") DO UPDATE SET "secret_hash" = excluded."secret_hash",
      "must_change" = excluded."must_change", "set_at" = excluded."set_at"`;
  await endSessionsOf(tx, made.personId, made.setAt);
}

/** Ends a person's sessions: what they may do, or how they prove who they are, has changed. */
export async function endSessionsOf(tx: Tx, personId: string, at: Instant): Promise<void> {
  await endSessions(tx, { personId }, at);
}
