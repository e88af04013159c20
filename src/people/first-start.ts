import type { INestApplicationContext } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import type { Role } from '../platform/actor.js';
import type { Environment } from '../platform/config.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Ids } from '../platform/ids.js';
import { BadForm, Refusal } from '../platform/refusal.js';
import { say } from '../platform/sentences/sentences.js';
import { AddSite } from '../plant/add-site.js';
import { AddSiteForm } from '../plant/site.form.js';
import { AddPerson } from './add-person.js';
import { GiveOneTimePassword } from './give-one-time-password.js';
import { GiveRole } from './give-role.js';
import { readForm } from './read-form.js';

/** The administrator of a first start. */
export interface FirstAdministrator {
  readonly siteId: string;
  readonly code: string;
  readonly password: string;
}

/** What the first site is made of where the settings do not say: the numbers are GS1's demonstration prefix 952. */
const firstSite = {
  code: { setting: 'SITE_CODE', usual: 'SITE' },
  name: { setting: 'SITE_NAME', usual: 'Packing house' },
  timeZone: { setting: 'SITE_TIME_ZONE', usual: 'UTC' },
  productionDayStart: { setting: 'SITE_DAY_START', usual: '06:00' },
  gln: { setting: 'SITE_GLN', usual: '9520123000011' },
  companyPrefix: { setting: 'SITE_COMPANY_PREFIX', usual: '9520123' },
} as const;

const toStandardOutput = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

/**
 * Opens an empty database to its first person: adds the site if there is none, and an administrator with a one-time
 * password if nobody can come in as one. Does nothing ever after. The password goes to `print` only, never to a log.
 *
 * @throws {Error} naming the setting that cannot be used
 */
export async function createFirstAdministrator(
  house: INestApplicationContext,
  environment: Environment,
  print: (line: string) => void = toStandardOutput,
): Promise<FirstAdministrator | null> {
  const reader = house.get<ReadFrom>(READER, { strict: false });
  if (await hasAdministrator(reader)) return null;
  const siteId = (await firstSiteId(reader)) ?? (await addFirstSite(house, environment, print));
  const asked = asHouse(siteId, ['administrator']);
  const name = say('role-administrator');
  const code = await freeCode(reader);
  const { id } = await house.get(AddPerson, { strict: false }).execute(asked, { code, name });
  const given = await house.get(GiveOneTimePassword, { strict: false }).execute(asked, id);
  const password = given.password ?? '';
  // Told before the role is given: if all stops here, the next start finds no administrator and makes another.
  print(say('first-administrator', { code, password }));
  await house.get(GiveRole, { strict: false }).execute(asked, id, { role: 'administrator' });
  return { siteId, code, password };
}

function asHouse(siteId: string, roles: readonly Role[]): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles }, route: 'first start', key: null };
}

async function hasAdministrator(from: ReadFrom): Promise<boolean> {
  const rows = await from.sql<{ id: string }>`
    SELECT r."id" AS "id" FROM "role_holding" r
    JOIN "credential" c ON c."person_id" = r."person_id" AND c."kind" = 'password'
    WHERE r."role" = 'administrator' AND r."voided_by" IS NULL LIMIT 1`;
  return rows.length > 0;
}

async function firstSiteId(from: ReadFrom): Promise<string | null> {
  const [site] = await from.sql<{ id: string }>`SELECT "id" AS "id" FROM "site" ORDER BY "id" LIMIT 1`;
  return site?.id ?? null;
}

/** Codes are never used twice: an administrator of before keeps theirs. */
async function freeCode(from: ReadFrom): Promise<string> {
  const rows = await from.sql<{ code: string }>`
    SELECT "code" AS "code" FROM "person" WHERE "code" LIKE 'administrator%'`;
  const taken = new Set(rows.map((row) => row.code));
  if (!taken.has('administrator')) return 'administrator';
  let number = 2;
  while (taken.has(`administrator-${number}`)) number += 1;
  return `administrator-${number}`;
}

async function addFirstSite(
  house: INestApplicationContext,
  environment: Environment,
  print: (line: string) => void,
): Promise<string> {
  const asked = asHouse(house.get(Ids, { strict: false }).next(), ['administrator']);
  const fields = Object.entries(firstSite).map(([field, { setting, usual }]) => {
    const given = environment[setting]?.trim();
    return {
      field,
      setting,
      isGiven: given !== undefined && given !== '',
      value: given === '' ? usual : (given ?? usual),
    };
  });
  const site = Object.fromEntries(fields.map(({ field, value }) => [field, value]));
  try {
    const form = await readForm(AddSiteForm, { ...site, ssccExtensionDigit: 0 });
    const { id } = await house.get(AddSite, { strict: false }).execute(asked, form);
    print(say('first-site', { code: form.code, name: form.name, timeZone: form.timeZone }));
    const settings = fields.filter((one) => !one.isGiven).map(({ setting, value }) => `${setting}=${value}`);
    if (settings.length > 0) print(say('first-site-by-default', { settings: settings.join(', ') }));
    return id;
  } catch (error) {
    throw inWordsOfSettings(error);
  }
}

function inWordsOfSettings(error: unknown): unknown {
  if (error instanceof Refusal) {
    return new Error(say('first-site-not-set', { setting: 'SITE_…', detail: say(error.code, error.facts) }));
  }
  const [problem] = error instanceof BadForm ? error.problems : [];
  if (problem === undefined) return error;
  const setting = firstSite[problem.field as keyof typeof firstSite].setting;
  return new Error(say('first-site-not-set', { setting, detail: say(problem.code, problem.facts) }));
}
