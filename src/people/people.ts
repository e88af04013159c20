import type { Page } from '../platform/web/listed.js';
import { roles, type Role } from '../platform/roles.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';

/** A person as lists and pages show them. Without a name once it was removed. */
export interface PersonRow {
  readonly id: string;
  readonly code: string;
  readonly name: string | null;
  readonly language: string | null;
  readonly roles: readonly Role[];
  /** By what the person can prove who they are; never the secrets. */
  readonly proofs: readonly string[];
}

interface PersonOnly {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly name: string | null;
  readonly language: string | null;
}

/** The people of a site, newest first, those before an id; at most 200. */
export async function peopleOf(from: ReadFrom, siteId: string, page: Page): Promise<readonly PersonRow[]> {
  const people = await from.sql<PersonOnly>`
    SELECT p."id" AS "id", p."site_id" AS "siteId", p."code" AS "code", n."name" AS "name", n."language" AS "language"
    FROM "person" p LEFT JOIN "person_name" n ON n."person_id" = p."id"
    WHERE p."site_id" = ${siteId} AND p."id" < ${page.before ?? afterAllIds}
    ORDER BY p."id" DESC LIMIT ${page.limit}`;
  return withRoles(from, people);
}

/** Sorts after every id. */
const afterAllIds = 'g';

/** @throws {NotFound} for a person of another site, too */
export async function personOf(from: ReadFrom, siteId: string, personId: string): Promise<PersonRow> {
  const people = await from.sql<PersonOnly>`
    SELECT p."id" AS "id", p."site_id" AS "siteId", p."code" AS "code", n."name" AS "name", n."language" AS "language"
    FROM "person" p LEFT JOIN "person_name" n ON n."person_id" = p."id"
    WHERE p."site_id" = ${siteId} AND p."id" = ${personId}`;
  const [person] = await withRoles(from, people);
  if (person === undefined) throw new NotFound('person', personId);
  return person;
}

async function withRoles(from: ReadFrom, people: readonly PersonOnly[]): Promise<readonly PersonRow[]> {
  if (people.length === 0) return [];
  const ids = (): string[] => people.map((person) => person.id);
  const held = await from.sql<{ personId: string; role: string }>`
    SELECT "person_id" AS "personId", "role" AS "role" FROM "role_holding"
    WHERE "voided_by" IS NULL AND "person_id" IN (${ids})`;
  const proofs = await from.sql<{ personId: string; kind: string }>`
    SELECT "person_id" AS "personId", "kind" AS "kind" FROM "credential" WHERE "person_id" IN (${ids}) ORDER BY "kind"`;
  return people.map(({ id, code, name, language }) => ({
    id,
    code,
    name,
    language,
    roles: roles.filter((role) => held.some((row) => row.personId === id && row.role === role)),
    proofs: proofs.filter((row) => row.personId === id).map((row) => row.kind),
  }));
}

/** What to call these people on a page: the name, or the code where the name was removed. */
export async function namesOf(from: ReadFrom, personIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  if (personIds.length === 0) return new Map();
  const rows = await from.sql<{ id: string; code: string; name: string | null }>`
    SELECT p."id" AS "id", p."code" AS "code", n."name" AS "name"
    FROM "person" p LEFT JOIN "person_name" n ON n."person_id" = p."id"
    WHERE p."id" IN (${() => [...new Set(personIds)]})`;
  return new Map(rows.map((row) => [row.id, row.name ?? row.code]));
}

/** Those who may sign in by PIN on a tablet of the site: who has a PIN and a role, by name. */
export async function peopleWithPin(
  from: ReadFrom,
  siteId: string,
): Promise<readonly { readonly id: string; readonly name: string }[]> {
  const rows = await from.sql<{ id: string; code: string; name: string | null }>`
    SELECT p."id" AS "id", p."code" AS "code", n."name" AS "name"
    FROM "credential" c JOIN "person" p ON p."id" = c."person_id"
    LEFT JOIN "person_name" n ON n."person_id" = p."id"
    WHERE c."kind" = 'pin' AND p."site_id" = ${siteId} AND EXISTS (
      SELECT 1 FROM "role_holding" r WHERE r."person_id" = p."id" AND r."voided_by" IS NULL)`;
  return rows
    .map((row) => ({ id: row.id, name: row.name ?? row.code }))
    .sort((one, other) => one.name.localeCompare(other.name, 'en'));
}
