import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { Ids } from '../platform/ids.js';
import { replaceCredential } from './credentials.js';
import { OwnPassword, type Place, type ProvenPassword } from './own-password.js';
import { hashSecret } from './password-hash.js';
import { refuseEasyPin } from './secret-rules.js';
import type { SetPinForm } from './session.form.js';

/**
 * A person chooses the PIN for the shared tablets. Nobody else sets it, so that what is recorded by it is theirs.
 * All their sessions end. Refusals: `password-wrong`, `too-many-attempts`, `pin-too-easy`.
 */
@Injectable()
export class SetPin {
  constructor(
    private readonly changes: RecordChange,
    private readonly ownPassword: OwnPassword,
    private readonly ids: Ids,
  ) {}

  /** Answers the password that was shown, for the session that follows. */
  async execute(asked: Asked, form: SetPinForm, place: Place): Promise<ProvenPassword> {
    const known = await this.ownPassword.confirm(asked.actor, form.password, place);
    const { personId } = known;
    refuseEasyPin(form.pin, known.personCode);
    const secretHash = await hashSecret(form.pin);
    await this.changes.run(asked, { personId }, async (tx, change) => {
      const made = { id: this.ids.next(), personId, kind: 'pin', secretHash, mustChange: false } as const;
      await replaceCredential(tx, { ...made, setAt: change.recordedAt });
      return { answer: { personId }, entry: { action: 'set-pin', subject: { kind: 'person', id: personId } } };
    });
    return { personId, credentialId: known.id, secretHash: known.secretHash };
  }
}
