import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { insertPerson } from './add-person.js';
import { replaceCredential } from './credentials.js';
import { hashSecret } from './password-hash.js';
import type { AdmitPersonForm } from './person.form.js';
import { PersonName } from './person-name.entity.js';
import { RoleHolding } from './role-holding.entity.js';
import { newOneTimePassword } from './secrets.js';

/** Who was admitted; the password is null where the same request had been answered before: it is shown once. */
export interface AdmittedPerson {
  readonly id: string;
  readonly code: string;
  readonly password: string | null;
}

/**
 * A person starts at the plant: code, name, a first role, and a one-time password, in one.
 * Refusals: `person-code-taken`.
 */
@Injectable()
export class AdmitPerson {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  async execute(asked: Asked, form: AdmitPersonForm): Promise<AdmittedPerson> {
    const password = newOneTimePassword();
    const secretHash = await hashSecret(password);
    const shown: { password: string | null } = { password: null };
    const answer = await this.changes.run(asked, form, async (tx, change) => {
      const code = form.code?.toLowerCase() ?? (await freeCodeOf(tx, form.name));
      const person = { id: this.ids.next(), siteId: asked.actor.siteId, code };
      const at = change.recordedAt;
      await insertPerson(tx, person);
      await tx.insert(PersonName, { personId: person.id, name: form.name, language: form.language ?? 'en' });
      const { role } = form;
      await tx.insert(RoleHolding, { id: this.ids.next(), personId: person.id, role, heldFrom: at });
      const made = { id: this.ids.next(), personId: person.id, kind: 'password', secretHash } as const;
      await replaceCredential(tx, { ...made, mustChange: true, setAt: at });
      shown.password = password;
      return {
        answer: { id: person.id, code },
        entry: { action: 'admit-person', subject: { kind: 'person', id: person.id }, after: { code, role } },
      };
    });
    // Added outside, so that the stored answer of the request holds no secret.
    return { ...answer, ...shown };
  }
}

/** A code that people guess right: the first letter and the last word of the name, a number where that is taken. */
async function freeCodeOf(tx: Tx, name: string): Promise<string> {
  const words = name
    .normalize('NFD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9\s-]/g, '')
    .split(/[\s-]+/)
    .filter((word) => word !== '');
  const [first = ''] = words;
  const last = words.length > 1 ? (words.at(-1) ?? '') : '';
  const stem = (last === '' ? first : first.charAt(0) + last).slice(0, 20);
  const usual = stem.length < 2 ? 'person' : stem;
  const rows = await tx.sql<{ code: string }>`SELECT "code" FROM "person" WHERE "code" LIKE ${`${usual}%`}`;
  const taken = new Set(rows.map(({ code }) => code));
  for (let number = 1; ; number += 1) {
    const code = number === 1 ? usual : `${usual}${number}`;
    if (!taken.has(code)) return code;
  }
}
