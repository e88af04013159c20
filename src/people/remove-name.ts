import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Refusal } from '../platform/refusal.js';
import { Credential } from './credential.entity.js';
import { endSessionsOf } from './credentials.js';
import { findPerson } from './person-in-unit.js';
import { PersonName } from './person-name.entity.js';
import { RoleHolding } from './role-holding.entity.js';

/**
 * The time of a name is up: it goes, with all by which the person could sign in. Id and code stay in the records.
 * Refusals: `person-holds-role` (someone who still works here keeps the name), `name-was-removed`.
 */
@Injectable()
export class RemoveName {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, personId: string): Promise<{ id: string }> {
    return this.changes.run(asked, { personId }, async (tx, change) => {
      const person = await findPerson(tx, asked.actor.siteId, personId);
      const held = await tx.find(RoleHolding, { personId, voidedBy: null });
      if (held.length > 0) throw new Refusal('person-holds-role', { code: person.code });
      const removed = await tx.remove(PersonName, { personId });
      if (removed === 0) throw new Refusal('name-was-removed', { code: person.code });
      await tx.remove(Credential, { personId });
      await endSessionsOf(tx, personId, change.recordedAt);
      return { answer: { id: personId }, entry: { action: 'remove-name', subject: { kind: 'person', id: personId } } };
    });
  }
}
