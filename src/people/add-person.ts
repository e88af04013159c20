import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { Person } from './person.entity.js';
import type { AddPersonForm } from './person.form.js';
import { PersonName } from './person-name.entity.js';

export interface AddedPerson {
  readonly id: string;
  readonly code: string;
}

/**
 * A person starts at the plant: a code for the records, and a name that stands apart from them.
 * Refusals: `person-code-taken`.
 */
@Injectable()
export class AddPerson {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: AddPersonForm): Promise<AddedPerson> {
    return this.changes.run(asked, form, async (tx) => {
      const person = { id: this.ids.next(), siteId: asked.actor.siteId, code: form.code.toLowerCase() };
      await insertPerson(tx, person);
      await tx.insert(PersonName, { personId: person.id, name: form.name, language: form.language ?? 'en' });
      return {
        answer: { id: person.id, code: person.code },
        entry: { action: 'add-person', subject: { kind: 'person', id: person.id }, after: { code: person.code } },
      };
    });
  }
}

/** A code is one person's in the whole house, since it is typed where no site is known yet. */
export async function insertPerson(tx: Tx, person: { id: string; siteId: string; code: string }): Promise<void> {
  const taken = await tx.findOne(Person, { code: person.code });
  if (taken !== null) throw new Refusal('person-code-taken', { code: person.code });
  try {
    await tx.insert(Person, person);
  } catch (error) {
    if (isTakenKey(error)) throw new Refusal('person-code-taken', { code: person.code });
    throw error;
  }
}
