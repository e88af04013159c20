import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { voidFact } from '../journal/void-fact.js';
import { NotFound } from '../platform/refusal.js';
import { PackWeigher } from './pack-weigher.entity.js';
import type { WithdrawPackWeigherForm } from './pack-weigher.form.js';

/**
 * A pack weigher is taken off its line: its machine sends no weights any more. What it sent stays.
 * Refusals: `already-corrected`.
 */
@Injectable()
export class WithdrawPackWeigher {
  constructor(private readonly changes: RecordChange) {}

  execute(asked: Asked, weigherId: string, form: WithdrawPackWeigherForm): Promise<{ readonly id: string }> {
    return this.changes.run(asked, { weigherId, ...form }, async (tx, change) => {
      const weigher = await tx.findOne(PackWeigher, { id: weigherId, siteId: asked.actor.siteId });
      if (weigher === null) throw new NotFound('pack-weigher', weigherId);
      await voidFact(tx, PackWeigher, weigherId, change);
      return {
        answer: { id: weigherId },
        entry: {
          action: 'withdraw-pack-weigher',
          subject: { kind: 'pack-weigher', id: weigherId },
          touches: [{ kind: 'packing-line', id: weigher.lineId }],
          before: { code: weigher.code, deviceId: weigher.deviceId },
          reason: form.reason,
        },
      };
    });
  }
}
