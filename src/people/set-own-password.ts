import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Refusal } from '../platform/refusal.js';
import { Credential } from './credential.entity.js';
import { endSessionsOf } from './credentials.js';
import { OwnPassword, type Place, type ProvenPassword } from './own-password.js';
import { hashSecret } from './password-hash.js';
import { refuseEasyPassword } from './secret-rules.js';
import type { ChangePasswordForm } from './session.form.js';

/**
 * A person chooses a new password. All their sessions end.
 * Refusals: `password-wrong`, `too-many-attempts`, `password-not-new`, `password-too-short`, `password-has-code`,
 * `password-too-easy`, `password-changed-meanwhile`.
 */
@Injectable()
export class SetOwnPassword {
  constructor(
    private readonly changes: RecordChange,
    private readonly ownPassword: OwnPassword,
  ) {}

  /** Answers the password that was set, for the session that follows. */
  async execute(asked: Asked, form: ChangePasswordForm, place: Place): Promise<ProvenPassword> {
    const known = await this.ownPassword.confirm(asked.actor, form.oldPassword, place);
    if (form.newPassword === form.oldPassword) throw new Refusal('password-not-new');
    refuseEasyPassword(form.newPassword, known.personCode);
    const secretHash = await hashSecret(form.newPassword);
    // The content that a key stands for is kept hashed fast: no secret may be in it.
    const set = await this.changes.run(asked, { personId: known.personId }, async (tx, change) => {
      const old = { id: known.id, secretHash: known.secretHash };
      const changed = await tx.update(Credential, old, { secretHash, mustChange: false, setAt: change.recordedAt });
      if (changed === 0) throw new Refusal('password-changed-meanwhile');
      await endSessionsOf(tx, known.personId, change.recordedAt);
      return {
        answer: { personId: known.personId, credentialId: known.id },
        entry: { action: 'set-own-password', subject: { kind: 'person', id: known.personId } },
      };
    });
    return { ...set, secretHash };
  }
}
