import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { toWhole } from '../platform/database/stored-values.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Refusal } from '../platform/refusal.js';
import { endSessionsOf } from './credentials.js';
import { findPerson } from './person-in-unit.js';
import type { RoleForm } from './person.form.js';
import { RoleHolding } from './role-holding.entity.js';

/**
 * A person no longer holds a role. Their sessions end; without any role they cannot sign in.
 * Refusals: `role-not-held`, `last-administrator`, `already-corrected` (somebody else ended it at the same moment).
 */
@Injectable()
export class EndRole {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, personId: string, form: RoleForm): Promise<{ id: string }> {
    return this.changes.run(asked, { personId, ...form }, async (tx, change) => {
      const { siteId } = asked.actor;
      const person = await findPerson(tx, siteId, personId);
      const held = await tx.findOne(RoleHolding, { personId, role: form.role, voidedBy: null });
      if (held === null) throw new Refusal('role-not-held', { code: person.code, role: form.role });
      if (form.role === 'administrator' && (await countAdministrators(tx, siteId)) === 1) {
        throw new Refusal('last-administrator', { code: person.code });
      }
      await voidFact(tx, RoleHolding, held.id, change);
      await endSessionsOf(tx, personId, change.recordedAt);
      return {
        answer: { id: held.id },
        entry: { action: 'end-role', subject: { kind: 'person', id: personId }, before: { role: form.role } },
      };
    });
  }
}

async function countAdministrators(tx: Tx, siteId: string): Promise<number> {
  const [row] = await tx.sql<{ count: number | string }>`
    SELECT COUNT(*) AS "count" FROM "role_holding" r JOIN "person" p ON p."id" = r."person_id"
    WHERE p."site_id" = ${siteId} AND r."role" = 'administrator' AND r."voided_by" IS NULL`;
  return toWhole(row?.count ?? 0);
}
