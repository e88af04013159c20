import { roles, type Role } from '../platform/actor.js';
import { toBoolean, toWhole } from '../platform/database/stored-values.js';
import type { Instant } from '../platform/clock.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { knownLanguage, type Language } from '../platform/sentences/language.js';

/** Somebody who is signed in, with all that the guard and the frame of a page need to know. */
export interface SignedIn {
  readonly tokenHash: string;
  readonly csrfSecret: string;
  readonly siteId: string;
  readonly siteName: string;
  readonly timeZone: string;
  /** The journal's last sequence when this was read: an open page follows the journal from here. */
  readonly journalSequence: number;
  readonly personId: string;
  readonly personCode: string;
  readonly name: string | null;
  readonly language: Language;
  readonly deviceId: string | null;
  readonly deviceCode: string | null;
  readonly proof: 'password' | 'badge' | 'pin';
  readonly endsAt: Instant;
  /** The person came in with a one-time password. */
  readonly mustChangePassword: boolean;
  readonly roles: readonly Role[];
}

interface SessionRow extends Omit<SignedIn, 'language' | 'mustChangePassword' | 'roles' | 'journalSequence'> {
  readonly journalSequence: number | string | null;
  readonly language: string | null;
  readonly mustChange: boolean | number | null;
  readonly role: string;
}

/** Who holds this session, or null when it is unknown or over, or the person has no role. One statement: all agrees. */
export async function findSignedIn(from: ReadFrom, tokenHash: string, now: Instant): Promise<SignedIn | null> {
  const rows = await from.sql<SessionRow>`
    SELECT se."token_hash" AS "tokenHash", se."csrf_secret" AS "csrfSecret", se."site_id" AS "siteId",
      COALESCE(sr."name", si."name") AS "siteName",
      COALESCE(sr."time_zone", si."time_zone") AS "timeZone", h."sequence" AS "journalSequence", se."person_id" AS "personId", p."code" AS "personCode",
      n."name" AS "name", n."language" AS "language", se."device_id" AS "deviceId", d."code" AS "deviceCode",
      se."proof" AS "proof",
      se."ends_at" AS "endsAt", c."must_change" AS "mustChange", r."role" AS "role"
    FROM "session" se
    JOIN "site" si ON si."id" = se."site_id"
    LEFT JOIN "site_revision" sr ON sr."id" = (
      SELECT MAX(x."id") FROM "site_revision" x WHERE x."site_id" = si."id")
    JOIN "person" p ON p."id" = se."person_id"
    LEFT JOIN "person_name" n ON n."person_id" = p."id"
    LEFT JOIN "journal_head" h ON h."site_id" = se."site_id"
    LEFT JOIN "device" d ON d."id" = se."device_id"
    LEFT JOIN "credential" c ON c."person_id" = p."id" AND c."kind" = 'password'
    JOIN "role_holding" r ON r."person_id" = p."id" AND r."voided_by" IS NULL
    WHERE se."token_hash" = ${tokenHash} AND se."ends_at" > ${now}`;
  const [first] = rows;
  if (first === undefined) return null;
  const { mustChange, language, journalSequence, ...session } = first;
  return {
    ...session,
    journalSequence: toWhole(journalSequence ?? 0),
    language: knownLanguage(language) ?? 'en',
    mustChangePassword: session.proof === 'password' && mustChange !== null && toBoolean(mustChange),
    roles: roles.filter((role) => rows.some((row) => row.role === role)),
  };
}

/** A device that showed its token. */
export interface KnownDevice {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly kind: 'shared-tablet' | 'desk' | 'handheld' | 'machine';
  readonly siteName: string;
  readonly timeZone: string;
}

/** The device whose token has this hash, or null. */
export async function findDeviceByToken(from: ReadFrom, tokenHash: string): Promise<KnownDevice | null> {
  const [row] = await from.sql<KnownDevice>`
    SELECT d."id" AS "id", d."site_id" AS "siteId", d."code" AS "code", d."kind" AS "kind",
      COALESCE(sr."name", si."name") AS "siteName", COALESCE(sr."time_zone", si."time_zone") AS "timeZone"
    FROM "device_token" t JOIN "device" d ON d."id" = t."device_id" JOIN "site" si ON si."id" = d."site_id"
    LEFT JOIN "site_revision" sr ON sr."id" = (
      SELECT MAX(x."id") FROM "site_revision" x WHERE x."site_id" = si."id")
    WHERE t."token_hash" = ${tokenHash}`;
  return row ?? null;
}
