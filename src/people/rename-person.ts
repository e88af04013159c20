import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Refusal } from '../platform/refusal.js';
import { findPerson } from './person-in-unit.js';
import type { RenamePersonForm } from './person.form.js';
import { PersonName } from './person-name.entity.js';

/**
 * A person is called otherwise from now on. The journal holds that, not how.
 * Refusals: `name-was-removed`.
 */
@Injectable()
export class RenamePerson {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, personId: string, form: RenamePersonForm): Promise<{ id: string }> {
    return this.changes.run(asked, { personId, ...form }, async (tx) => {
      const person = await findPerson(tx, asked.actor.siteId, personId);
      const language = form.language ?? undefined;
      const changed = await tx.update(PersonName, { personId }, { name: form.name, language });
      if (changed === 0) throw new Refusal('name-was-removed', { code: person.code });
      return {
        answer: { id: personId },
        entry: { action: 'rename-person', subject: { kind: 'person', id: personId } },
      };
    });
  }
}
