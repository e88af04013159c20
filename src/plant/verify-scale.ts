import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { isTakenKey } from '../platform/database/constraint-errors.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { ofSite } from './of-site.js';
import { scaleStandingAt } from './plant-facts.js';
import { ScaleVerification } from './scale-verification.entity.js';
import type { VerifyScaleForm } from './scale.form.js';

/**
 * A scale was verified for trade, as the mark or certificate on it says: who verifies and how often is local law.
 * Refusals: `verification-ends-before-it-begins`, `verification-there-already`.
 */
@Injectable()
export class VerifyScale {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: VerifyScaleForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { scale } = await scaleStandingAt(tx, form.scaleId, change.recordedAt);
      ofSite(asked.actor, 'scale', scale);
      const { verifiedOn, verifiedUntilOn } = form;
      if (verifiedUntilOn < verifiedOn) {
        throw new Refusal('verification-ends-before-it-begins', { verifiedOn, verifiedUntilOn });
      }
      const id = this.ids.next();
      try {
        await tx.insert(ScaleVerification, { id, scaleId: scale.id, verifiedOn, verifiedUntilOn });
      } catch (error) {
        if (isTakenKey(error)) throw new Refusal('verification-there-already', { scale: scale.code, verifiedOn });
        throw error;
      }
      const after = { verificationId: id, verifiedOn, verifiedUntilOn };
      return { answer: { id }, entry: { action: 'verify-scale', subject: { kind: 'scale', id: scale.id }, after } };
    });
  }
}
