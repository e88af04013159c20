import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { NotPermitted, Refusal } from '../platform/refusal.js';
import { findPerson } from './person-in-unit.js';
import { PersonName } from './person-name.entity.js';
import type { OwnLanguageForm } from './session.form.js';

/**
 * A person chooses the language that the pages speak to them, wherever they sign in. Machines have none.
 * Refusals: `name-was-removed`.
 */
@Injectable()
export class SetOwnLanguage {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, { language }: OwnLanguageForm): Promise<{ readonly language: string }> {
    const { siteId, personId } = asked.actor;
    if (personId === null) return Promise.reject(new NotPermitted('not-permitted'));
    return this.changes.run(asked, { personId, language }, async (tx) => {
      const person = await findPerson(tx, siteId, personId);
      const changed = await tx.update(PersonName, { personId }, { language });
      if (changed === 0) throw new Refusal('name-was-removed', { code: person.code });
      return {
        answer: { language },
        entry: { action: 'set-own-language', subject: { kind: 'person', id: personId }, after: { language } },
      };
    });
  }
}
