import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { replaceCredential } from './credentials.js';
import { hashSecret } from './password-hash.js';
import { findPerson } from './person-in-unit.js';
import { newOneTimePassword } from './secrets.js';

/** The one-time password; null where the same request had been answered before: it is shown once. */
export interface OneTimePassword {
  readonly personId: string;
  readonly password: string | null;
}

/** An administrator gives a person a password that must be changed at first use. The person's sessions end. */
@Injectable()
export class GiveOneTimePassword {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  async execute(asked: Asked, personId: string): Promise<OneTimePassword> {
    const password = newOneTimePassword();
    const secretHash = await hashSecret(password);
    const shown: { password: string | null } = { password: null };
    const answer = await this.changes.run(asked, { personId }, async (tx, change) => {
      const person = await findPerson(tx, asked.actor.siteId, personId);
      const made = {
        id: this.ids.next(),
        personId: person.id,
        kind: 'password',
        secretHash,
        mustChange: true,
      } as const;
      await replaceCredential(tx, { ...made, setAt: change.recordedAt });
      shown.password = password;
      return {
        answer: { personId: person.id },
        entry: { action: 'give-one-time-password', subject: { kind: 'person', id: person.id } },
      };
    });
    // Added outside, so that the stored answer of the request holds no secret.
    return { ...answer, ...shown };
  }
}
