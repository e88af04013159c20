import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { clearPoints } from '../open-points/raise-point.js';
import { Ids } from '../platform/ids.js';
import { signedAccountOf } from './accounts.js';
import { Account } from './account.entity.js';
import type { CorrectAccountForm } from './account.form.js';
import { causeOf } from './sign-account.js';

/**
 * A signed account is declared void. Its number and its lines stay, and another may be signed for the same time. What
 * was recorded wrongly of the sugar is corrected where it was recorded; a signed account is not made void for that.
 * Refusals: `already-corrected`.
 */
@Injectable()
export class CorrectAccount {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, accountId: string, form: CorrectAccountForm): Promise<{ id: string; number: string }> {
    return this.changes.run(asked, { accountId, ...form }, async (tx, change) => {
      const { siteId, personId } = asked.actor;
      const { id, number, hopperId, verdict } = await signedAccountOf(tx, siteId, accountId);
      await voidFact(tx, Account, id, change);
      const subject = { kind: 'account', id };
      await clearPoints(tx, {
        nextId: () => this.ids.next(),
        siteId,
        cause: causeOf(verdict),
        subject,
        personId,
        at: change.recordedAt,
      });
      return {
        answer: { id, number },
        entry: {
          action: 'correct-account',
          subject,
          touches: [{ kind: 'hopper', id: hopperId }],
          before: { number, verdict },
          after: { why: form.why },
          reason: form.reason,
        },
      };
    });
  }
}
