import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import type { Role } from '../platform/actor.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { endSessionsOf } from './credentials.js';
import { findPerson } from './person-in-unit.js';
import type { RoleForm } from './person.form.js';
import { RoleHolding } from './role-holding.entity.js';

/**
 * A person is given a role. Their sessions end, so that they see what they may do now.
 * Refusals: `role-already-held`.
 */
@Injectable()
export class GiveRole {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, personId: string, form: RoleForm): Promise<{ id: string; role: Role }> {
    return this.changes.run(asked, { personId, ...form }, async (tx, change) => {
      const person = await findPerson(tx, asked.actor.siteId, personId);
      const { role } = form;
      const alreadyHeld = new Refusal('role-already-held', { code: person.code, role });
      if ((await tx.findOne(RoleHolding, { personId, role, voidedBy: null })) !== null) throw alreadyHeld;
      const id = this.ids.next();
      try {
        await tx.insert(RoleHolding, { id, personId, role, heldFrom: change.recordedAt });
      } catch (error) {
        throw isTakenKey(error) ? alreadyHeld : error;
      }
      await endSessionsOf(tx, personId, change.recordedAt);
      return {
        answer: { id, role },
        entry: { action: 'give-role', subject: { kind: 'person', id: personId }, after: { role } },
      };
    });
  }
}
